import type { Length } from '../lengths/length.js';

/** How a figure came about. `explain` prints exactly this record. */
export type How = 'given' | 'by rule' | 'derived' | 'frozen';

/** A figure with its history. `source` names a published table or handbook, `common practice`, `our default` or `from memory`. */
export interface Sized {
  readonly value: Length;
  readonly how: How;
  /** The expression as typed, or the rule in words. */
  readonly rule?: string;
  readonly source?: string;
  /** What it was made from, by name (`W`, `side_left.right`, `rail_1.up.from`). */
  readonly inputs?: readonly { readonly name: string; readonly value: Length }[];
  /** JSON path in the definition, where there is one. */
  readonly path?: readonly (string | number)[];
}

export const given = (value: Length, rule: string, path?: readonly (string | number)[]): Sized => ({
  value,
  how: 'given',
  rule,
  ...(path ? { path } : {}),
});
export const byRule = (value: Length, rule: string, source: string, inputs: Sized['inputs'] = []): Sized => ({
  value,
  how: 'by rule',
  rule,
  source,
  ...(inputs.length > 0 ? { inputs } : {}),
});
export const derived = (value: Length, rule: string, inputs: Sized['inputs'] = []): Sized => ({
  value,
  how: 'derived',
  rule,
  ...(inputs.length > 0 ? { inputs } : {}),
});

/** Names of figures that are counted and not measured: printed as plain numbers. */
export const COUNTED: ReadonlySet<string> = new Set(['staves']);
