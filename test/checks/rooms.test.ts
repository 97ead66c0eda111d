import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { CheckInput, Judgement } from '../../src/checks/check.js';
import { runChecks } from '../../src/checks/index.js';
import { season } from '../../src/wood/moisture.js';
import { inputOf } from './run.js';

const ROOMS = { dry: [20, 40], ordinary: [30, 60], damp: [45, 75] } as const;
type RoomName = keyof typeof ROOMS;
const NAMES = Object.keys(ROOMS) as RoomName[];
const PIECES = ['letter-cabinet', 'nightstand', 'tall-chest'] as const;
type PieceName = (typeof PIECES)[number];

const textOf = (piece: PieceName): string =>
  readFileSync(new URL(`../../templates/pieces/${piece}.jsonc`, import.meta.url), 'utf8');
/** A shipped piece worked out for a room. */
const madeFor = (piece: PieceName, room: RoomName): Promise<CheckInput> =>
  inputOf(textOf(piece).replace('"humidity": [30, 60]', `"humidity": [${ROOMS[room].join(', ')}]`));
/** The same wood, made for one room and put into another. */
function movedTo(input: CheckInput, room: RoomName): CheckInput {
  const { units } = input.piece;
  const degrees = units === 'in' ? 70 : 21;
  const { made } = input.season;
  return { ...input, season: { ...season({ humidity: ROOMS[room], temperature: degrees }, made, units), made } };
}

const judged = (input: CheckInput): readonly Judgement[] =>
  (runChecks(input).value?.checks ?? []).flatMap((c) => c.judged).filter((j) => !j.about.startsWith('at the worst'));
const least = (list: readonly Judgement[], code: string): number =>
  Math.min(...list.filter((j) => j.code === code).map((j) => j.figure.value));
const most = (list: readonly Judgement[], code: string): number =>
  Math.max(...list.filter((j) => j.code === code).map((j) => j.figure.value));
const fails = (list: readonly Judgement[]): string[] =>
  [...new Set(list.filter((j) => j.verdict === 'fail' && !j.code.startsWith('tip-')).map((j) => j.code))].sort();

describe('three rooms: dry 20 to 40 %, ordinary 30 to 60 %, damp 45 to 75 %', () => {
  const home = new Map<PieceName, CheckInput>();
  const moved = new Map<string, readonly Judgement[]>();
  const built = new Map<string, CheckInput>();
  beforeAll(async () => {
    for (const piece of PIECES) {
      const input = await madeFor(piece, 'ordinary');
      home.set(piece, input);
      for (const room of NAMES) {
        moved.set(`${piece} ${room}`, judged(movedTo(input, room)));
        built.set(`${piece} ${room}`, await madeFor(piece, room));
      }
    }
  }, 120_000);
  const at = (piece: PieceName, room: RoomName): readonly Judgement[] => moved.get(`${piece} ${room}`) ?? [];
  const rooms = (piece: PieceName, of: (list: readonly Judgement[]) => number): number[] =>
    NAMES.map((r) => of(at(piece, r)));

  describe.each(PIECES)('%s, made for the ordinary room and put into another', (piece) => {
    it('the least gap of its fronts falls as the room is damper, by more than a tenth of a millimetre each time', () => {
      const [dry = 0, ordinary = 0, damp = 0] = rooms(piece, (l) => least(l, 'front-binds'));
      expect(dry - ordinary).toBeGreaterThan(100_000);
      expect(ordinary - damp).toBeGreaterThan(100_000);
    });
    it('what stays of its panels in their grooves falls as the room is drier', () => {
      const [dry = 0, ordinary = 0, damp = 0] = rooms(piece, (l) => least(l, 'panel-leaves-groove'));
      expect(dry).toBeLessThanOrEqual(ordinary);
      expect(ordinary).toBeLessThanOrEqual(damp);
    });
    it('its weight, sag and fixings are no matter of the room', () => {
      const other = (room: RoomName): unknown =>
        at(piece, room)
          .filter((j) => /^(sag|part|carry|drawer-heavy|screw|slide|top-|tip)/.test(j.code))
          .map((j) => [j.code, j.subject, j.figure.value]);
      expect(other('dry')).toEqual(other('damp'));
    });
  });
  it('no shipped piece fails in the room that it is made for; in a damp one fronts bind and a panel presses', () => {
    expect(PIECES.flatMap((p) => fails(at(p, 'ordinary')))).toEqual([]);
    expect(PIECES.flatMap((p) => fails(at(p, 'dry')))).toEqual([]);
    expect(fails(at('tall-chest', 'damp'))).toEqual(['front-binds']);
    expect(fails(at('nightstand', 'damp'))).toEqual(['panel-presses']);
  });

  describe('worked out for the room', () => {
    const of = (piece: PieceName, room: RoomName): CheckInput => {
      const found = built.get(`${piece} ${room}`);
      if (!found) throw new Error(`${piece} ${room}`);
      return found;
    };
    it.each(PIECES)('%s fails in none of the three', (piece) => {
      for (const room of NAMES) expect(fails(judged(of(piece, room)))).toEqual([]);
    });
    it('the chest for a damp room has lower fronts under wider gaps, and longer slots', () => {
      const front = (room: RoomName): number =>
        of('tall-chest', room).piece.parts.find((p) => p.id === 'long_3.front')?.size[2].value ?? NaN;
      const slot = (room: RoomName): number => most(judged(of('tall-chest', room)), 'slot-short');
      expect(front('dry')).toBeGreaterThan(front('ordinary'));
      expect(front('ordinary')).toBeGreaterThan(front('damp'));
      expect(slot('dry')).toBeLessThanOrEqual(slot('ordinary'));
      expect(slot('ordinary')).toBeLessThan(slot('damp'));
    });
    it('its fronts keep about the same least gap in all three', () => {
      const gaps = NAMES.map((r) => least(judged(of('tall-chest', r)), 'front-binds') / 25.4e6);
      // 1/32 in, to the step of 1/64 that sizes are rounded to.
      for (const g of gaps) expect(Math.abs(g - 1 / 32)).toBeLessThan(1 / 64);
    });
  });
});
