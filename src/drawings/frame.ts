/** Paper, frame, title strip and headings, which all sheets share. Fields after ISO 7200; strip and tab our default. */
import type { Faces } from '../type/type.js';
import type { Header } from '../piece/piece.js';
import { label, line, MIDDLE, rect, thirdAngleSymbol } from './draw.js';
import { SIZE } from './pens.js';
import type { Item, Tone } from './picture.js';
import { setText, widthOf, type FaceName, type Run, type Text } from './text.js';

/** A paper and the frame on it, mm; written in templates/sheets, where `io` reads it. */
export interface Paper {
  readonly id: string;
  readonly name: string;
  readonly size: readonly [number, number];
  /** Left, top, width, height: the largest multiple of 5 that leaves 10 all round and 18 at the left for binding (after ISO 5457). */
  readonly frame: readonly [number, number, number, number];
}
/** Letter, the paper of the shop's sheets unless the definition asks for another. */
export const LETTER: Paper = { id: 'letter', name: 'Letter', size: [279.4, 215.9], frame: [18.4, 10.45, 250, 195] };
/** Height of the title strip, and the margin inside the frame. */
export const STRIP = 11;
export const MARGIN = 7;

export interface FrameText {
  readonly faces: Faces;
  readonly header: Pick<Header, 'title' | 'number' | 'revision' | 'date' | 'maker'> & { readonly woods?: string };
  /** Title of the sheet. */
  readonly title: string;
  /** `1:10`, `as noted`, `none`. */
  readonly scale: string;
  /** Draws the projection symbol; where a sheet has aligned views. */
  readonly projection?: boolean;
  /** `1/32`, `0.5 mm`: what printed sizes are rounded to. */
  readonly roundTo: string;
  readonly n: number;
  readonly of: number;
  /** Short hash of the inputs. */
  readonly hash: string;
  /** In a black bar over the frame, e.g. `NOT FOR WORKSHOP: what fails`. */
  readonly stamp?: string;
  readonly paper?: Paper;
}
/** The live field inside frame and margin, above the strip: left, top, right, bottom. */
export function fieldOf(paper: Paper = LETTER): { left: number; top: number; right: number; bottom: number } {
  const [x, y, w, h] = paper.frame;
  return { left: x + MARGIN, top: y + MARGIN, right: x + w - MARGIN, bottom: y + h - STRIP };
}

/** Frame, title strip and number tab of a sheet. */
export function sheetFrame(text: FrameText): Item[] {
  const { faces, paper = LETTER } = text;
  const [x, y, w, h] = paper.frame;
  const top = y + h - STRIP;
  const tab = x + w - 26;
  return [
    ...rect('W', x, y, w, h),
    ...line('W', x, top, x + w, top),
    ...stripFields(text, x, top, w),
    ...rect(undefined, tab, top, 26, STRIP, 'black'),
    ...label(faces, String(text.n), tab + 2, top + 8.6, { size: SIZE.finished, face: 'semibold', tone: 'white' }),
    ...label(faces, `of ${text.of}`, x + w - 2, top + 8.6, { size: SIZE.figure, anchor: 'end', tone: 'white' }),
    ...(text.stamp === undefined ? [] : stampBar(faces, text.stamp, x, w)),
  ];
}
/** Top and height of the stamp's bar, mm: over the frame, within what printers reach. */
const STAMP = [4.4, 5.4] as const;
/** A black bar over a sheet or card: `NOT FOR WORKSHOP` large, what fails beside it. */
export function stampBar(faces: Faces, stamp: string, x: number, w: number): Item[] {
  const [strong = '', rest = ''] = stamp.split(/: (.*)/s);
  const y = STAMP[0] + STAMP[1] / 2 + MIDDLE * SIZE.mark;
  const set = setText(faces, strong, { x: x + 3, y, size: SIZE.mark, face: 'semibold', tone: 'white' });
  const at = x + 3 + set.width + 5;
  return [
    ...rect(undefined, x, STAMP[0], w, STAMP[1], 'black'),
    ...set.items,
    ...fitted(faces, rest, at, y - 0.3, SIZE.figure, x + w - 3 - at, 'regular', 'white'),
  ];
}
/** One field of the strip: where it starts from the frame's left, the label, the value. */
type Field = readonly [at: number, label: string, value: string];
function stripFields(text: FrameText, x: number, top: number, w: number): Item[] {
  const { faces, header } = text;
  const more = w - 250;
  const about = pieceLine(faces, header, 55 + more);
  const fields: readonly Field[] = [
    [0, 'Piece', header.number],
    [16, about, text.title],
    [74 + more, 'Maker', header.maker],
    [93 + more, 'Date', header.date],
    [116 + more, 'Approved', ''],
    [147 + more, 'Scale', text.scale],
    [180 + more, 'Round to', text.roundTo],
    [199 + more, 'Revision', `${header.revision} · ${text.hash}`],
  ];
  const ends = [...fields.slice(1).map(([at]) => at), 224 + more];
  const drawn = fields.flatMap(([at, name, value], i) => {
    const room = (ends[i] ?? at) - at - 3;
    return [
      ...(i === 0 ? [] : line('N', x + at, top + 1.6, x + at, top + STRIP - 1.6)),
      ...fitted(faces, name, x + at + 2, top + 4, SIZE.text, room, 'regular'),
      ...fitted(faces, value, x + at + 2, top + 8.7, SIZE.figure, room, 'semibold'),
    ];
  });
  return text.projection === true ? [...drawn, ...thirdAngleSymbol(x + 161 + more, top + 5.5)] : drawn;
}
/** Title of the piece and its woods, as many of them as fit in `room` mm. */
function pieceLine(faces: Faces, header: FrameText['header'], room: number): string {
  const woods = (header.woods ?? '').split(', ').filter((wood) => wood !== '');
  const lines = woods.map((_, i) => [header.title, lower(woods.slice(0, woods.length - i).join(', '))].join(', '));
  return lines.find((line) => widthOf(faces, line, SIZE.text) <= room) ?? header.title;
}
const lower = (words: string): string => words.slice(0, 1).toLowerCase() + words.slice(1);
/** A label cut short with an ellipsis where it would run into the next field. */
export function fitted(
  faces: Faces,
  string: string,
  x: number,
  y: number,
  size: number,
  room: number,
  face: FaceName,
  tone: Tone = 'black',
): Item[] {
  let shown = string;
  while (shown.length > 1 && widthOf(faces, shown, size, face) > room)
    shown = `${shown.replace(/…$/, '').slice(0, -1).trimEnd()}…`;
  return shown === '' ? [] : label(faces, shown, x, y, { size, face, tone });
}

/** The headline of a sheet that one acts on: verb sentence 18 pt, kind of sheet 12 pt at the right, rule at 15. */
export function headline(faces: Faces, sentence: Text, kind: string, paper: Paper = LETTER): Item[] {
  const { left, right } = fieldOf(paper);
  const y = paper.frame[1];
  return [
    ...setText(faces, sentence, { x: left, y: y + 11, size: SIZE.headline, face: 'semibold' }).items,
    ...label(faces, kind, right, y + 11, { size: SIZE.name, anchor: 'end' }),
    ...line('W', left, y + 15, right, y + 15),
  ];
}
/** Block heading 10 pt SemiBold over a rule 2.3 below; an optional remark at the right. `y` is its baseline. */
export function blockHeading(
  faces: Faces,
  text: Text,
  x: number,
  y: number,
  width: number,
  remark?: Text,
  pen: 'N' | 'W' = 'N',
): Item[] {
  return [
    ...setText(faces, text, { x, y, size: SIZE.figure, face: 'semibold' }).items,
    ...(remark === undefined ? [] : setText(faces, remark, { x: x + width, y, size: SIZE.text, anchor: 'end' }).items),
    ...line(pen, x, y + 2.3, x + width, y + 2.3),
  ];
}
/** Labels and values in two columns: `down END L`. Returns the items and the baseline of the last row. */
export function postureList(
  faces: Faces,
  rows: readonly (readonly [string, Text])[],
  x: number,
  y: number,
  indent = 12,
  pitch = 4.9,
): { items: Item[]; y: number } {
  const items = rows.flatMap(([name, value], i) => [
    ...label(faces, name, x, y + i * pitch),
    ...setText(faces, value, { x: x + indent, y: y + i * pitch, size: SIZE.text, face: 'semibold' }).items,
  ]);
  return { items, y: y + Math.max(0, rows.length - 1) * pitch };
}

/** Words of a sentence in SemiBold, then the rest in Regular. */
export const lead = (strong: string, rest: string): readonly Run[] => [
  { string: strong, face: 'semibold' },
  { string: rest.startsWith(' ') || rest === '' ? rest : ` ${rest}`, face: 'regular' },
];
