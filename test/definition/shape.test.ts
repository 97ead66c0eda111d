import { expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import type { Definition } from '../../src/definition/definition.js';
import type { DefinitionSchema } from '../../src/definition/schema.js';

/** A type without readonly and undefined, which the two sides write differently; lists, tuples and records kept. */
type Plain<T> = T extends string | number | boolean ? T : { -readonly [K in keyof T]: Plain<Exclude<T[K], undefined>> };
type Without<T, K extends string> = Omit<T, K>;
type Open = 'joints' | 'groups' | 'parts' | 'drawers' | 'stock' | 'runs' | 'measures';

type Read = Plain<z.infer<DefinitionSchema>>;
type Typed = Plain<Definition>;

// checked by the compiler (npm run check); the joints' own fields are open in the type and closed in the schema
test('the type of a definition is what the schema takes', () => {
  expectTypeOf<Without<Read, Open>>().toEqualTypeOf<Without<Typed, Open>>();
  // faces are words of their own in the schema, plain text in the type
  expectTypeOf<Read['parts'][string]>().toExtend<Typed['parts'][string]>();
  expectTypeOf<keyof Read['parts'][string]>().toEqualTypeOf<keyof Typed['parts'][string]>();
  expectTypeOf<Read['stock'][string]>().toEqualTypeOf<Typed['stock'][string]>();
  type Drawers<T extends { drawers?: unknown }> = NonNullable<T['drawers']>;
  expectTypeOf<Drawers<Read>>().toEqualTypeOf<Drawers<Typed>>();
  type Measures<T extends { measures?: unknown }> = NonNullable<T['measures']>;
  expectTypeOf<Measures<Read>>().toEqualTypeOf<Measures<Typed>>();
  type Runs<T extends { runs?: unknown }> = NonNullable<T['runs']>;
  expectTypeOf<Runs<Read>>().toEqualTypeOf<Runs<Typed>>();
});
