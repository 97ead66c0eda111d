/** Sets text for a sheet: words at their own places, stacked fractions as outlines over a hidden run of the plain text. */
import { FIGURE_HEIGHT, figureText, figuresIn, linePitch, stackOf, type Figure } from '../type/fraction.js';
import { glyphOf, textWidth } from '../type/measure.js';
import type { Face, Faces } from '../type/type.js';
import type { Item, Seg, TextItem, Tone } from './picture.js';

export type FaceName = 'regular' | 'semibold';
/** Text of one face. `plain` keeps every solidus; U+00A0 joins words that never part at the end of a line; \n starts a new line. */
export interface Run {
  readonly string: string;
  readonly face?: FaceName;
  readonly plain?: boolean;
}
/** A plain string is one run of the face given in the setting (Regular unless it says so). */
export type Text = string | readonly Run[];
export interface Setting {
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  /** mm em. */
  readonly size: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly tone?: Tone;
  /** Face of runs that name none. */
  readonly face?: FaceName;
}
export interface SetText {
  readonly items: readonly Item[];
  readonly width: number;
}

/** `em`: width in ems, of a word or of a space. */
type Atom =
  | { readonly kind: 'word'; readonly string: string; readonly face: FaceName; readonly em: number }
  | { readonly kind: 'figure'; readonly figure: Figure; readonly face: FaceName; readonly ems: FigureEms }
  /** A space; it may be where a line ends, unless it is a no-break space. */
  | { readonly kind: 'space'; readonly face: FaceName; readonly breaks: boolean; readonly em: number }
  | { readonly kind: 'return'; readonly face: FaceName };
/** Widths in ems of a figure's three numbers. */
interface FigureEms {
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

export const round3 = (v: number): number => Math.round(v * 1000) / 1000 + 0;

/** Text as words, figures and spaces. Neighbouring spaces become one; spaces at either end are dropped. */
function atomsOf(faces: Faces, text: Text, face: FaceName): readonly Atom[] {
  if (typeof text === 'string') return trim(runAtoms(faces, text, face, false));
  const atoms: Atom[] = [];
  for (const run of text)
    for (const atom of runAtoms(faces, run.string, run.face ?? face, run.plain === true))
      if (atom.kind !== 'space' || atoms.at(-1)?.kind !== 'space') atoms.push(atom);
  return trim(atoms);
}
/** Runs told apart before, for as long as the typeface is used: a sheet is measured before it is drawn. */
const KNOWN = new WeakMap<Faces, Map<string, readonly Atom[]>>();
function runAtoms(faces: Faces, string: string, face: FaceName, plain: boolean): readonly Atom[] {
  const known = KNOWN.get(faces) ?? new Map<string, readonly Atom[]>();
  KNOWN.set(faces, known);
  const key = `${face}${plain ? '/' : ' '}${string}`;
  const before = known.get(key);
  if (before) return before;
  const atoms: Atom[] = [];
  const em = (part: string): number => textWidth(faces[face], part, 1);
  const add = (words: string): void => {
    for (const part of words.split(/([ \u00a0\n])/)) {
      if (part === '') continue;
      if (part === '\n') atoms.push({ kind: 'return', face });
      else if (part !== ' ' && part !== '\u00a0') atoms.push({ kind: 'word', string: part, face, em: em(part) });
      else if (atoms.at(-1)?.kind !== 'space') atoms.push({ kind: 'space', face, breaks: part === ' ', em: em(' ') });
    }
  };
  let at = 0;
  for (const figure of plain ? [] : figuresIn(string)) {
    add(string.slice(at, figure.from));
    const ems = { whole: em(figure.whole), numerator: em(figure.numerator), denominator: em(figure.denominator) };
    atoms.push({ kind: 'figure', figure, face, ems });
    at = figure.to;
  }
  add(string.slice(at));
  known.set(key, atoms);
  return atoms;
}
function trim(atoms: readonly Atom[]): readonly Atom[] {
  let [from, to] = [0, atoms.length];
  while (atoms[from]?.kind === 'space') from++;
  while (to > from && atoms[to - 1]?.kind === 'space') to--;
  return from === 0 && to === atoms.length ? atoms : atoms.slice(from, to);
}

/** Where the numbers of a figure stand: width of the whole number with its air, and of all, mm. */
function figureWidths({ figure, ems }: Atom & { kind: 'figure' }, size: number): { whole: number; all: number } {
  const s = stackOf(size);
  const whole = figure.whole === '' ? 0 : ems.whole * size + s.afterWhole;
  return { whole, all: whole + Math.max(ems.numerator * s.digits, ems.denominator * s.digits) + s.overhang };
}
function atomWidth(atom: Atom, size: number): number {
  if (atom.kind === 'return') return 0;
  return atom.kind === 'figure' ? figureWidths(atom, size).all : atom.em * size;
}
/** Air between a figure and text that touches it. */
function between(a: Atom | undefined, b: Atom, size: number): number {
  const touching = (a?.kind === 'figure' && b.kind === 'word') || (a?.kind === 'word' && b.kind === 'figure');
  return touching ? stackOf(size).beforeText : 0;
}
function lineWidth(atoms: readonly Atom[], size: number): number {
  let width = 0;
  atoms.forEach((atom, i) => (width = width + between(atoms[i - 1], atom, size) + atomWidth(atom, size)));
  return width;
}

/** Width of a line of text in mm, fractions stacked. */
export const widthOf = (faces: Faces, text: Text, size: number, face: FaceName = 'regular'): number =>
  lineWidth(atomsOf(faces, text, face), size);

/** Sets one line of text. Every word is a text item of its own at its own x, anchored at its start. */
export function setText(faces: Faces, text: Text, setting: Setting): SetText {
  const atoms = atomsOf(faces, text, setting.face ?? 'regular');
  return setAtoms(faces, atoms, lineWidth(atoms, setting.size), setting);
}
function setAtoms(faces: Faces, atoms: readonly Atom[], width: number, setting: Setting): SetText {
  const { size, anchor = 'start' } = setting;
  let x = setting.x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
  const items: Item[] = [];
  let space = '';
  atoms.forEach((atom, i) => {
    x += between(atoms[i - 1], atom, size);
    const last = items.at(-1);
    if (atom.kind === 'space') {
      // A space belongs to the word before it, so that reading the text back finds it; after a figure, to the word that follows.
      if (last?.kind === 'text' && last.hidden === undefined)
        items[items.length - 1] = wordItem(last, `${last.string} `, last.x, setting);
      else space = ' ';
    } else if (atom.kind === 'word') {
      const before = space === '' ? 0 : textWidth(faces[atom.face], ' ', size);
      items.push(wordItem(atom, space + atom.string, x - before, setting));
      space = '';
    } else if (atom.kind === 'figure') {
      items.push(...figureItems(faces[atom.face], atom, x, setting));
      space = '';
    }
    x += atomWidth(atom, size);
  });
  return { items, width };
}
function wordItem(atom: { readonly face: FaceName }, string: string, x: number, setting: Setting): TextItem {
  const [left, y, size, { face }] = [round3(x), round3(setting.y), round3(setting.size), atom];
  const { tone } = setting;
  return tone === undefined || tone === 'black'
    ? { kind: 'text', x: left, y, size, face, anchor: 'start', turn: 0, string }
    : { kind: 'text', x: left, y, size, face, anchor: 'start', turn: 0, string, tone };
}

/**
 * A figure as outlines, and the hidden run of its plain text over the same width. The outlines are made whenever they are
 * asked for: thousands of figures are set, most of them only to see whether they fit, and their outlines are large.
 */
function figureItems(face: Face, atom: Atom & { kind: 'figure' }, x: number, setting: Setting): readonly Item[] {
  const { size, y, tone = 'black' } = setting;
  const hidden = wordItem(atom, figureText(atom.figure), x, { ...setting, tone: 'black' });
  return [
    {
      kind: 'fill',
      tone,
      figure: true,
      get d() {
        return figureOutlines(face, atom, x, y, size);
      },
    },
    { ...hidden, hidden: round3(figureWidths(atom, size).all) },
  ];
}
function figureOutlines(face: Face, atom: Atom & { kind: 'figure' }, x: number, y: number, size: number): Seg[] {
  const { figure: f, ems } = atom;
  const s = stackOf(size);
  const { whole, all } = figureWidths(atom, size);
  const bar = { left: x + whole, right: x + all, top: y - s.middle - s.bar / 2, foot: y - s.middle + s.bar / 2 };
  const centre = (bar.left + bar.right) / 2;
  const d: Seg[] = [
    ['M', round3(bar.left), round3(bar.top)],
    ['L', round3(bar.right), round3(bar.top)],
    ['L', round3(bar.right), round3(bar.foot)],
    ['L', round3(bar.left), round3(bar.foot)],
    ['Z'],
  ];
  const below = bar.foot + s.gap + FIGURE_HEIGHT * s.digits;
  addOutlines(d, face, f.whole, x, y, size);
  addOutlines(d, face, f.numerator, centre - (ems.numerator * s.digits) / 2, bar.top - s.gap, s.digits);
  addOutlines(d, face, f.denominator, centre - (ems.denominator * s.digits) / 2, below, s.digits);
  return d;
}
/** The outlines of a string at a baseline, as cubics (a quadratic is raised exactly). */
function addOutlines(out: Seg[], face: Face, string: string, x: number, y: number, size: number): void {
  const scale = size / face.unitsPerEm;
  let at = x;
  const px = (u: number): number => round3(at + u * scale);
  const py = (v: number): number => round3(y - v * scale);
  for (const character of string) {
    const glyph = glyphOf(face, character.codePointAt(0) ?? 0x20);
    for (const s of cubicsOf(face, glyph)) {
      if (s[0] === 'C') out.push(['C', px(s[1]), py(s[2]), px(s[3]), py(s[4]), px(s[5]), py(s[6])]);
      else if (s[0] === 'Z') out.push(s);
      else if (s[0] !== 'A') out.push([s[0], px(s[1]), py(s[2])]);
    }
    at += face.advance(glyph) * scale;
  }
}
const CUBICS = new WeakMap<Face, Map<number, readonly Seg[]>>();
/** A glyph's outline as lines and cubics, in font units; kept for as long as the face is. */
function cubicsOf(face: Face, glyph: number): readonly Seg[] {
  const known = CUBICS.get(face) ?? new Map<number, readonly Seg[]>();
  CUBICS.set(face, known);
  const before = known.get(glyph);
  if (before) return before;
  const third = (p: number, q: number): number => p + (2 / 3) * (q - p);
  let [u, v] = [0, 0];
  const made = face.outline(glyph).map((c): Seg => {
    if (c[0] === 'Z') return ['Z'];
    const [p, q] = [u, v];
    if (c[0] !== 'Q') {
      [, u, v] = c;
      return [c[0], u, v];
    }
    const [, a, b] = c;
    [, , , u, v] = c;
    return ['C', third(p, a), third(q, b), third(u, a), third(v, b), u, v];
  });
  known.set(glyph, made);
  return made;
}

/** A line of wrapped text: `drop` is the distance in mm from the baseline before it (0 for the first). */
export interface Line {
  readonly atoms: readonly Atom[];
  readonly width: number;
  readonly tall: boolean;
  readonly drop: number;
}
/**
 * Breaks text into lines not wider than `width` mm, at spaces only; a word that is wider alone keeps a line to itself.
 * Line pitch 1.32 em; a line that has a stacked fraction, or follows one, keeps the taller pitch of the stack.
 */
export function wrap(
  faces: Faces,
  text: Text,
  width: number,
  size: number,
  face: FaceName = 'regular',
): readonly Line[] {
  const lines: Line[] = [];
  let line: Atom[] = [];
  let used = 0;
  const close = (): void => {
    const atoms = trim(line);
    const tall = atoms.some((a) => a.kind === 'figure');
    const before = lines.at(-1);
    const drop = before ? linePitch(size, tall && before.tall ? 2 : tall || before.tall ? 1 : 0) : 0;
    lines.push({ atoms, width: used, tall, drop });
    [line, used] = [[], 0];
  };
  for (const word of wordsOf(atomsOf(faces, text, face))) {
    if (word[0]?.kind === 'return') close();
    else {
      let longer = widthWith(line, used, word, size);
      if (line.length > 0 && longer > width + 1e-9) {
        close();
        longer = widthWith(line, used, word, size);
      }
      line.push(...word);
      used = longer;
    }
  }
  close();
  return lines;
}
/** Width of a line with a word more, without spaces at either end; `used` is the width without the word. */
function widthWith(line: readonly Atom[], used: number, word: readonly Atom[], size: number): number {
  // A line ends in a word or a figure, unless it holds spaces alone.
  let width = used;
  let end = used;
  let last: Atom | undefined = line.findLast((a) => a.kind !== 'space');
  for (const atom of word) {
    if (atom.kind === 'space' && last === undefined) continue;
    width = width + between(last, atom, size) + atomWidth(atom, size);
    if (atom.kind !== 'space') end = width;
    last = atom;
  }
  return end;
}
/** Groups atoms that are never parted: each group begins with its breaking space, if it has one. */
function wordsOf(atoms: readonly Atom[]): readonly (readonly Atom[])[] {
  const words: Atom[][] = [];
  for (const atom of atoms) {
    const word = words.at(-1);
    const starts = atom.kind === 'return' || (atom.kind === 'space' && atom.breaks) || word?.[0]?.kind === 'return';
    if (!word || starts) words.push([atom]);
    else word.push(atom);
  }
  return words;
}

export interface SetBlock {
  readonly items: readonly Item[];
  readonly lines: number;
  /** Baseline of the last line. */
  readonly y: number;
  /** Whether the last line has a stacked fraction. */
  readonly tall: boolean;
  /** Widest line. */
  readonly width: number;
}
/** Sets text in a column `width` mm wide; `y` of the setting is the first baseline, its x the column's edge of the anchor. */
export function setBlock(faces: Faces, text: Text, setting: Setting & { readonly width: number }): SetBlock {
  const lines = wrap(faces, text, setting.width, setting.size, setting.face);
  return setLines(faces, lines, setting);
}
/** Sets lines that were wrapped before. */
export function setLines(faces: Faces, lines: readonly Line[], setting: Setting): SetBlock {
  let y = setting.y;
  const items = lines.flatMap((line) => {
    y += line.drop;
    return setAtoms(faces, line.atoms, line.width, { ...setting, y }).items;
  });
  return {
    items,
    lines: lines.length,
    y,
    tall: lines.at(-1)?.tall ?? false,
    width: Math.max(0, ...lines.map((l) => l.width)),
  };
}
/** Height in mm from the first baseline to the last. */
export const blockDrop = (lines: readonly Line[]): number => lines.reduce((sum, line) => sum + line.drop, 0);
