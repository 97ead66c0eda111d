// node scripts/schema.mjs (after npm run build): writes templates/piece.schema.json from the schema that definitions are
// read by. A test holds the two equal.
import { writeFileSync } from 'node:fs';
import { definitionJsonSchema } from '../dist/definition/jsonSchema.js';
import { JOINTS } from '../dist/joints/index.js';

const file = new URL('../templates/piece.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(definitionJsonSchema(JOINTS), null, 2)}\n`);
