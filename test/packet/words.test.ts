import { beforeAll, describe, expect, it } from 'vitest';
import type { Item, Sheet, TextItem } from '../../src/drawings/picture.js';
import { boundsOf } from '../../src/report/paint.js';
import { overlaps } from '../report/overlaps.js';
import { drawn, faces, SHIPPED, SMALL } from './packet.js';
import type { Packet } from './packet.js';

/** What is set must be readable: no words over others, none across the frame or off the paper, on any sheet of any piece. */
type Box = readonly [number, number, number, number];
interface Word {
  readonly string: string;
  readonly box: Box;
}
/** Height of a capital of IBM Plex Sans Condensed, em: from the outlines of the font. */
const CAPITAL = 0.698;
/**
 * Letter. Sheets: frame 250 by 195 from (18.4, 10.45), the largest multiple of 5 that leaves 10 all round and 18 for binding
 * (after ISO 5457). Cards, which have no frame: 10 from the edge of the paper, which every printer reaches.
 */
const PAPER = [279.4, 215.9] as const;
const FRAME: Box = [18.4, 10.45, 268.4, 205.45];
const CARD: Box = [10, 10, PAPER[0] - 10, PAPER[1] - 10];
/** Air on each side of the cut between two half cards, mm. */
const AIR = 5;

const words = (items: readonly Item[], x = 0, y = 0): Word[] =>
  items.flatMap((item): Word[] => {
    if (item.kind === 'group') return words(item.items, x + (item.at?.[0] ?? 0), y + (item.at?.[1] ?? 0));
    if (item.kind !== 'text' || item.string.trim() === '') return [];
    const string = item.string.trimEnd();
    const box = boundsOf(faces, [{ ...item, string } satisfies TextItem]);
    return box ? [{ string, box: [x + box[0], y + item.y - CAPITAL * item.size, x + box[2], y + item.y] }] : [];
  });
const where = (sheet: Sheet, { string, box }: Word): string =>
  `${sheet.id}: "${string}" at ${box.map((v) => v.toFixed(1)).join(' ')}`;
function outside(sheet: Sheet): string[] {
  const frame = sheet.folder === 'cards' ? CARD : FRAME;
  return words(sheet.picture)
    .filter(({ box }) => box[0] < frame[0] || box[1] < frame[1] || box[2] > frame[2] || box[3] > frame[3])
    .map((word) => where(sheet, word));
}
/** Where two cards share a page, nothing but the word that says so lies on the line between them. */
function acrossTheCut(sheet: Sheet): string[] {
  const all = words(sheet.picture);
  const half = sheet.folder === 'cards' && all.some(onCut);
  const middle = PAPER[0] / 2;
  return all
    .filter((w) => half && !onCut(w) && w.box[0] < middle + AIR && w.box[2] > middle - AIR)
    .map((word) => where(sheet, word));
}
const onCut = ({ string, box }: Word): boolean =>
  string === 'cut' && Math.abs((box[0] + box[2]) / 2 - PAPER[0] / 2) < 0.1;
const over = (sheet: Sheet): string[] =>
  overlaps(faces, sheet.picture).map((o) => `${sheet.id}: "${o.one}" and "${o.other}" at ${o.at.join(' ')}`);

describe.each([...SHIPPED, ...SMALL])('%s', (name) => {
  let packet: Packet;
  beforeAll(async () => {
    packet = await drawn(name);
  });
  it('has words on every sheet', () => {
    for (const sheet of packet.sheets) expect(words(sheet.picture).length, sheet.id).toBeGreaterThan(8);
  });
  it('prints no words over others', () => expect(packet.sheets.flatMap(over)).toEqual([]));
  it('is on Letter, with all words inside the frame', () => {
    for (const sheet of packet.sheets) expect(sheet.size).toEqual(PAPER);
    expect(packet.sheets.flatMap(outside)).toEqual([]);
  });
  it('keeps each half card on its own half', () => {
    expect(packet.sheets.flatMap(acrossTheCut)).toEqual([]);
  });
});

it('words that lie over others, run over the frame or across the cut are found', async () => {
  const { sheets } = await drawn('corner-box');
  const [drawing, card] = [sheets.find((s) => s.id === 'elevations'), sheets.find((s) => words(s.picture).some(onCut))];
  const put = (sheet: Sheet | undefined, x: number, y: number): Sheet => {
    if (!sheet) throw new Error('no such sheet');
    const text = { kind: 'text', x, y, size: 3, face: 'regular', anchor: 'start', turn: 0, string: 'astray' } as const;
    return { ...sheet, picture: [...sheet.picture, { kind: 'group', id: 'astray', at: [0, 1], items: [text] }] };
  };
  expect(outside(put(drawing, 262, 100))).toEqual([expect.stringContaining('elevations: "astray" at 262.0')]);
  expect(outside(put(card, 5, 100))).toHaveLength(1);
  expect(acrossTheCut(put(card, PAPER[0] / 2, 30))).toHaveLength(1);
  expect(over(put(drawing, 22, 200))).not.toEqual([]);
});
