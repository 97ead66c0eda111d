import { faceAxis } from '../geom/axis.js';
import type { Face } from '../geom/axis.js';
import { FIGURE, readFigure } from './figure.js';
import { facesByWord } from './frame.js';
import type { Frame } from './frame.js';
import type { BareCut } from './say.js';

const escape = (s: string): string => s.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** One line of plain text, whatever its line breaks were, with no blank before a stop or after an opening bracket. */
export const normalise = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/ ([,;:)°])/g, '$1')
    .replace(/ \.(?!\d)/g, '.')
    .replace(/\( /g, '(')
    .trim();

/** Walks a normalised text. Every method that finds nothing leaves the place as it was. */
export class Reader {
  at = 0;
  readonly #words: RegExp;
  readonly #faces: readonly Face[];
  /** True once a callout was read that says its places by another's number. */
  asAnother = false;
  constructor(
    readonly text: string,
    readonly frame: Frame,
    /** The cuts of a callout before this one, by its number on the card. */
    readonly earlier: (n: number) => readonly BareCut[] | undefined = () => undefined,
  ) {
    this.#faces = facesByWord(frame);
    this.#words = new RegExp(`(${this.#faces.map((f) => escape(frame.words[f])).join('|')})(?![A-Za-z0-9])`, 'y');
  }
  #space(): void {
    while (this.text[this.at] === ' ') this.at += 1;
  }
  /** A pattern (sticky) at this place. */
  match(pattern: RegExp): string | undefined {
    this.#space();
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (!found) return undefined;
    this.at += found[0].length;
    return found[0];
  }
  /** Literal words; true when they stand here. A word must end where it ends in the text. */
  take(literal: string): boolean {
    this.#space();
    if (!this.text.startsWith(literal, this.at)) return false;
    const next = this.text[this.at + literal.length];
    if (/\w$/.test(literal) && next !== undefined && /\w/.test(next)) return false;
    this.at += literal.length;
    return true;
  }
  /** The first of several literals that stands here. */
  oneOf<T extends string>(literals: readonly T[]): T | undefined {
    return literals.find((l) => this.take(l));
  }
  /** A figure in nm. */
  figure(): number | undefined {
    return this.attempt(() => {
      const text = this.match(FIGURE);
      return text === undefined ? undefined : readFigure(text, this.frame.units);
    });
  }
  /** A plain decimal number. */
  number(): number | undefined {
    const text = this.match(/-?\d*\.?\d+/y);
    return text === undefined ? undefined : Number(text);
  }
  /** A face by its word, with or without `face`, `edge` or `end` after it. */
  face(): Face | undefined {
    const word = this.match(this.#words);
    if (word === undefined) return undefined;
    this.match(/(?:face|edge|end)\b/y);
    return this.#faces.find((f) => this.frame.words[f] === word);
  }
  /** A face that figures may be measured from; any other is a slip and is not read. */
  datum(): Face | undefined {
    return this.attempt(() => {
      const face = this.face();
      return face !== undefined && this.frame.datum[faceAxis(face)] === face ? face : undefined;
    });
  }
  /** Marks of mates that stand here, until a stop. */
  mates(): string[] {
    const out: string[] = [];
    for (;;) {
      const before = this.at;
      const word = this.match(/(?:part |slide of )?[^\s;·,]+?(?=[.;,]?(?: |$))/y);
      if (word === undefined || !/^(part |slide of |[A-Z])/.test(word)) {
        this.at = before;
        return out;
      }
      out.push(word.replace(/^part /, ''));
    }
  }
  /** Tries a reading; the place is given back when it fails. */
  attempt<T>(read: () => T | undefined): T | undefined {
    const before = this.at;
    const got = read();
    if (got === undefined) this.at = before;
    return got;
  }
  rest(): string {
    return this.text.slice(this.at).trim();
  }
}
