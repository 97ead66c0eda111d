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

type Atom =
  | { readonly kind: 'word'; readonly string: string; readonly face: FaceName }
  | { readonly kind: 'figure'; readonly figure: Figure; readonly face: FaceName }
  /** A space; it may be where a line ends, unless it is a no-break space. */
  | { readonly kind: 'space'; readonly face: FaceName; readonly breaks: boolean }
  | { readonly kind: 'return'; readonly face: FaceName };

export const round3 = (v: number): number => Math.round(v * 1000) / 1000 + 0;

/** Text as words, figures and spaces. Neighbouring spaces become one; spaces at either end are dropped. */
function atomsOf(text: Text, face: FaceName): readonly Atom[] {
  const runs: readonly Run[] = typeof text === 'string' ? [{ string: text }] : text;
  const atoms: Atom[] = [];
  const add = (string: string, of: FaceName): void => {
    for (const part of string.split(/([ \u00a0\n])/)) {
      if (part === '') continue;
      if (part === '\n') atoms.push({ kind: 'return', face: of });
      else if (part !== ' ' && part !== '\u00a0') atoms.push({ kind: 'word', string: part, face: of });
      else if (atoms.at(-1)?.kind !== 'space') atoms.push({ kind: 'space', face: of, breaks: part === ' ' });
    }
  };
  for (const run of runs) {
    const of = run.face ?? face;
    let at = 0;
    for (const figure of run.plain === true ? [] : figuresIn(run.string)) {
      add(run.string.slice(at, figure.from), of);
      atoms.push({ kind: 'figure', figure, face: of });
      at = figure.to;
    }
    add(run.string.slice(at), of);
  }
  return trim(atoms);
}
function trim(atoms: readonly Atom[]): readonly Atom[] {
  let [from, to] = [0, atoms.length];
  while (atoms[from]?.kind === 'space') from++;
  while (to > from && atoms[to - 1]?.kind === 'space') to--;
  return atoms.slice(from, to);
}

function figureWidth(face: Face, f: Figure, size: number): number {
  const s = stackOf(size);
  const whole = f.whole === '' ? 0 : textWidth(face, f.whole, size) + s.afterWhole;
  return (
    whole + Math.max(textWidth(face, f.numerator, s.digits), textWidth(face, f.denominator, s.digits)) + s.overhang
  );
}
function atomWidth(faces: Faces, atom: Atom, size: number): number {
  if (atom.kind === 'return') return 0;
  if (atom.kind === 'space') return textWidth(faces[atom.face], ' ', size);
  if (atom.kind === 'word') return textWidth(faces[atom.face], atom.string, size);
  return figureWidth(faces[atom.face], atom.figure, size);
}
/** Air between a figure and text that touches it. */
function between(a: Atom | undefined, b: Atom, size: number): number {
  const touching = (a?.kind === 'figure' && b.kind === 'word') || (a?.kind === 'word' && b.kind === 'figure');
  return touching ? stackOf(size).beforeText : 0;
}
function lineWidth(faces: Faces, atoms: readonly Atom[], size: number): number {
  return atoms.reduce((w, atom, i) => w + between(atoms[i - 1], atom, size) + atomWidth(faces, atom, size), 0);
}

/** Width of a line of text in mm, fractions stacked. */
export const widthOf = (faces: Faces, text: Text, size: number, face: FaceName = 'regular'): number =>
  lineWidth(faces, atomsOf(text, face), size);

/** Sets one line of text. Every word is a text item of its own at its own x, anchored at its start. */
export function setText(faces: Faces, text: Text, setting: Setting): SetText {
  return setAtoms(faces, atomsOf(text, setting.face ?? 'regular'), setting);
}
function setAtoms(faces: Faces, atoms: readonly Atom[], setting: Setting): SetText {
  const { size, anchor = 'start' } = setting;
  const width = lineWidth(faces, atoms, size);
  let x = setting.x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
  const items: Item[] = [];
  let space = '';
  atoms.forEach((atom, i) => {
    x += between(atoms[i - 1], atom, size);
    const last = items.at(-1);
    if (atom.kind === 'space') {
      // A space belongs to the word before it, so that reading the text back finds it; after a figure, to the word that follows.
      if (last?.kind === 'text' && last.hidden === undefined)
        items[items.length - 1] = { ...last, string: `${last.string} ` };
      else space = ' ';
    } else if (atom.kind === 'word') {
      const before = space === '' ? 0 : textWidth(faces[atom.face], ' ', size);
      items.push(wordItem(atom, space + atom.string, x - before, setting));
      space = '';
    } else if (atom.kind === 'figure') {
      items.push(...figureItems(faces[atom.face], atom, x, setting));
      space = '';
    }
    x += atomWidth(faces, atom, size);
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

/** A figure as outlines, and the hidden run of its plain text over the same width. */
function figureItems(face: Face, atom: Atom & { kind: 'figure' }, x: number, setting: Setting): readonly Item[] {
  const { size, y, tone = 'black' } = setting;
  const { figure: f } = atom;
  const s = stackOf(size);
  const width = figureWidth(face, f, size);
  const whole = f.whole === '' ? 0 : textWidth(face, f.whole, size) + s.afterWhole;
  const bar = { left: x + whole, right: x + width, top: y - s.middle - s.bar / 2, foot: y - s.middle + s.bar / 2 };
  const centre = (bar.left + bar.right) / 2;
  const half = (string: string): number => textWidth(face, string, s.digits) / 2;
  const d: Seg[] = [
    ['M', round3(bar.left), round3(bar.top)],
    ['L', round3(bar.right), round3(bar.top)],
    ['L', round3(bar.right), round3(bar.foot)],
    ['L', round3(bar.left), round3(bar.foot)],
    ['Z'],
    ...outlineText(face, f.whole, x, y, size),
    ...outlineText(face, f.numerator, centre - half(f.numerator), bar.top - s.gap, s.digits),
    ...outlineText(
      face,
      f.denominator,
      centre - half(f.denominator),
      bar.foot + s.gap + FIGURE_HEIGHT * s.digits,
      s.digits,
    ),
  ];
  const hidden = wordItem(atom, figureText(f), x, { ...setting, tone: 'black' });
  return [
    { kind: 'fill', tone, d },
    { ...hidden, hidden: round3(width) },
  ];
}
/** The outlines of a string at a baseline, as cubics (a quadratic is raised exactly). */
export function outlineText(face: Face, string: string, x: number, y: number, size: number): readonly Seg[] {
  const scale = size / face.unitsPerEm;
  const out: Seg[] = [];
  let at = x;
  for (const character of string) {
    const glyph = glyphOf(face, character.codePointAt(0) ?? 0x20);
    const px = (u: number): number => round3(at + u * scale);
    const py = (v: number): number => round3(y - v * scale);
    let [u, v] = [0, 0];
    for (const c of face.outline(glyph)) {
      if (c[0] === 'Z') out.push(['Z']);
      else if (c[0] === 'Q') {
        const [, a, b, e, f] = c;
        const third = (p: number, q: number): number => p + (2 / 3) * (q - p);
        out.push(['C', px(third(u, a)), py(third(v, b)), px(third(e, a)), py(third(f, b)), px(e), py(f)]);
        [u, v] = [e, f];
      } else {
        out.push([c[0], px(c[1]), py(c[2])]);
        [u, v] = [c[1], c[2]];
      }
    }
    at += face.advance(glyph) * scale;
  }
  return out;
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
  const close = (): void => {
    const atoms = trim(line);
    const tall = atoms.some((a) => a.kind === 'figure');
    const before = lines.at(-1);
    const drop = before ? linePitch(size, tall && before.tall ? 2 : tall || before.tall ? 1 : 0) : 0;
    lines.push({ atoms, width: lineWidth(faces, atoms, size), tall, drop });
    line = [];
  };
  for (const word of wordsOf(atomsOf(text, face))) {
    if (word[0]?.kind === 'return') close();
    else {
      if (line.length > 0 && lineWidth(faces, trim([...line, ...word]), size) > width + 1e-9) close();
      line.push(...word);
    }
  }
  close();
  return lines;
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
    return setAtoms(faces, line.atoms, { ...setting, y }).items;
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
