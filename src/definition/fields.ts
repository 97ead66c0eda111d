import { z } from 'zod';

/** Ids: small letters and digits joined by single underscores; `{i}` forms where an `each` makes many. */
export const ID = '[a-z][a-z0-9]*(?:_[a-z0-9]+)*';
/** `{i}`, `{i-1}`, `{i+1}`. */
const LETTER = '\\{[a-z](?:[+-][0-9]{1,3})?\\}';
/** An id as a key: each stretch after the first underscore may be a letter in braces (`rail_{i}`, `tail_{i}_{j}`). */
const WITH_LETTERS = `[a-z][a-z0-9]*(?:_(?:[a-z0-9]+|${LETTER}))*`;
export const KEY = new RegExp(`^${WITH_LETTERS}$`);
/** A key under `parts`: an id, or a part that a drawer makes (`short_1.front`), about which more is said. */
export const PART_KEY = new RegExp(`^(?:${WITH_LETTERS}|${ID}\\.${ID})$`);
/** A key under `joints`: an id, or joints that drawers make (`short_1.corner_front_left`, `short_*.corner_*`). */
export const JOINT_KEY = new RegExp(`^(?:${WITH_LETTERS}|[a-z*][a-z0-9_*]*\\.[a-z*][a-z0-9_*]*)$`);
/** A measure: as an id, capitals allowed (`W`, `row_2`). */
export const MEASURE = /^[A-Za-z][A-Za-z0-9]*(?:_[A-Za-z0-9]+)*$/;
/** A stock, shop or data key: no letters in braces. */
export const PLAIN_ID = new RegExp(`^${ID}$`);

/** A key of a table of woods or panels: `oak-white`. */
export const DATA_KEY = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
/** Parts by a pattern as a key: `shelf_1`, `shelf_{1..3}`, `shelf_*`, `short_*.front`. What it names is looked up later. */
export const PATTERN_KEY = /^[a-z*][a-z0-9_*.{}+-]*$/;

/** A length: an expression, or a bare number in the file's units. The one schema object that marks a length. */
export const Length = z.union([z.string(), z.number()]).meta({
  id: 'Length',
  description: 'a length: an expression, or a bare number in the units of the file',
  examples: ['30 1/2', 'W - 2 * side', 19],
});

export const length = (description: string, example: string) => Length.meta({ description, examples: [example] });
export const text = (description: string, example: string) => z.string().meta({ description, examples: [example] });
export const words = (description: string, example: readonly string[]) =>
  z.array(z.string()).meta({ description, examples: [[...example]] });
export const count = (description: string, example: number) =>
  z
    .int()
    .min(0)
    .meta({ description, examples: [example] });
export const number = (description: string, example: number, unit: string) =>
  z.number().meta({ description, unit, examples: [example] });
export const choice = <const T extends readonly [string, ...string[]]>(words: T, description: string) =>
  z.enum(words).meta({ description, examples: [words[0]] });
export const pattern = (description: string, example: string) =>
  z
    .string()
    .regex(PATTERN_KEY)
    .meta({ description, examples: [example] });
/** Two numbers in one unit. */
export const pairOf = (description: string, example: readonly [number, number], unit: string) =>
  z.tuple([z.number(), z.number()]).meta({ description, unit, examples: [[...example]] });
/** Words or one word: a part id, a list of them, patterns. */
export const ids = (description: string, example: string | readonly string[]) =>
  z.union([z.string(), z.array(z.string())]).meta({ description, examples: [example] });
export const pair = (description: string, example: readonly [string, string]) =>
  z.tuple([Length, Length]).meta({ description, examples: [[...example]] });
export const triple = (description: string, example: readonly [string, string, string]) =>
  z.tuple([Length, Length, Length]).meta({ description, examples: [[...example]] });

export const FACE_WORDS = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;
export const AXIS_WORDS = ['across', 'deep', 'up'] as const;
export const Face = (description: string, example: (typeof FACE_WORDS)[number]) =>
  z.enum(FACE_WORDS).meta({ description, examples: [example] });
