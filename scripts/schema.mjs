// node scripts/schema.mjs [folder] (after npm run build): writes the published schemas in templates/ from those that files
// are read by. `folder` is the built program, dist when left out. A test holds them equal.
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const built =
  process.argv[2] === undefined ? new URL('../dist/', import.meta.url) : pathToFileURL(`${resolve(process.argv[2])}/`);
const { boardsJsonSchema, definitionJsonSchema, shopJsonSchema } = await import(
  new URL('definition/jsonSchema.js', built).href
);
const { JOINTS } = await import(new URL('joints/index.js', built).href);
const write = (name, schema) =>
  writeFileSync(new URL(`../templates/${name}`, import.meta.url), `${JSON.stringify(schema, null, 2)}\n`);
write('piece.schema.json', definitionJsonSchema(JOINTS));
write('shop.schema.json', shopJsonSchema());
write('boards.schema.json', boardsJsonSchema());
