import { plural } from '../lengths/counted.js';
import type { Cut, CutCommon } from './cut.js';
import type { Frame } from './frame.js';
import type { Reader } from './reader.js';

/** A piece of text on a card; bold stands for a name or a figure that pairs with a mate. */
export interface Piece {
  readonly text: string;
  readonly bold?: boolean;
}
/** What a printer of one shape says: the name (bold) and the rest of its geometry, ending in a full stop. */
export interface Said {
  readonly name: string;
  readonly runs: readonly Piece[];
  /** Its places are those of another callout, by number: mates cannot stand beside them. */
  readonly asAnother?: true;
}
/** A cut as it is read back: no ids, no history; mates by their marks. */
export type Bare<C> = C extends Cut ? Omit<C, keyof CutCommon> & { readonly mates: readonly string[] } : never;
export type BareCut = Bare<Cut>;

export interface SayContext {
  /** The mark written on the wood of a part, by id. */
  readonly markOf: (id: string) => string;
  /** All cuts of the part: an eased socket is told by the socket that it passes again. */
  readonly cuts?: readonly Cut[];
  /** The number of a cut's callout on the card, by the cut's id. */
  readonly numberOf?: (id: string) => number;
}
/** One shape's words: `print` and `parse` stand beside each other so that neither changes alone. */
export interface ShapeWords<C extends Cut> {
  /** Cuts with equal keys share one callout. */
  key(cut: C, frame: Frame): string;
  /** Takes a group apart where its members cannot be said together. */
  split?(group: readonly C[], frame: Frame): readonly (readonly C[])[];
  print(group: readonly C[], frame: Frame, ctx: SayContext): Said;
  /** Reads from the name to the full stop of the geometry; undefined when it is another shape's. */
  parse(r: Reader): readonly Bare<C>[] | undefined;
}

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');
/** A count in words up to twelve. */
export const count = (n: number): string => NUMBERS[n] ?? String(n);
/** A count back from words or digits. */
export const readCount = (r: Reader): number | undefined => {
  const word = r.match(/[a-z]+\b|\d+(?! ?\/)/y);
  if (word === undefined) return undefined;
  const i = NUMBERS.indexOf(word);
  return i > 0 ? i : /^\d+$/.test(word) ? Number(word) : undefined;
};
/** `Mortise,` or `Mortises, two,`. */
export const heading = (name: string, n: number): string => (n === 1 ? `${name},` : `${plural(name)}, ${count(n)},`);
/** Reads what `heading` printed for one of several names. */
export function readHeading<T extends string>(r: Reader, names: Readonly<Record<T, string>>): T | undefined {
  for (const key of Object.keys(names).sort((a, b) => names[b as T].length - names[a as T].length) as T[]) {
    const found = r.attempt(() => {
      if (r.take(`${names[key]},`)) return key;
      if (!r.take(`${plural(names[key])},`)) return undefined;
      return readCount(r) !== undefined && r.take(',') ? key : undefined;
    });
    if (found) return found;
  }
  return undefined;
}
/** A mark as printed beside a figure: one that does not begin with a capital says `part`, but for `slide of D5`. */
export const mark = (text: string): string => {
  if (/^slide of \S+$/.test(text)) return text;
  const one = text.replace(/\s+/g, '-');
  return /^[A-Z]/.test(one) ? one : `part ${one}`;
};
export const marks = (ids: readonly string[], ctx: SayContext): string =>
  ids.map((id) => mark(ctx.markOf(id))).join(' ');
/** Joins runs; neighbours of one weight become one. */
export const merged = (runs: readonly Piece[]): Piece[] => {
  const out: Piece[] = [];
  for (const run of runs) {
    const last = out[out.length - 1];
    if (last && (last.bold ?? false) === (run.bold ?? false))
      out[out.length - 1] = { ...last, text: last.text + run.text };
    else if (run.text !== '') out.push(run);
  }
  return out;
};
export const t = (text: string): Piece => ({ text });
export const b = (text: string): Piece => ({ text, bold: true });
