import { z } from 'zod';
import type { JointFields } from './schema.js';
import { definitionSchema } from './schema.js';
import { BoardsFile } from './boards.js';
import { ShopFile } from './shop.js';

/** The published JSON Schema (draft 2020-12) of a definition with joints of these kinds, as plain data. */
export function definitionJsonSchema(kinds: readonly JointFields[]): unknown {
  return z.toJSONSchema(definitionSchema(kinds), { io: 'input', target: 'draft-2020-12' });
}
/** The published JSON Schema of a shop file. */
export const shopJsonSchema = (): unknown => z.toJSONSchema(ShopFile, { io: 'input', target: 'draft-2020-12' });
/** The published JSON Schema of a boards file. */
export const boardsJsonSchema = (): unknown => z.toJSONSchema(BoardsFile, { io: 'input', target: 'draft-2020-12' });
