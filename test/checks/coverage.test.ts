import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CheckInput } from '../../src/checks/check.js';
import { runChecks } from '../../src/checks/index.js';
import { byAxis } from '../../src/geom/box.js';
import { inches } from '../../src/lengths/length.js';
import type { Hardware } from '../../src/piece/piece.js';
import { codesIn } from '../diag/codes.js';
import { chestDef } from './chest.js';
import {
  batten,
  bench,
  board,
  cap,
  drawerOnWood,
  frame,
  lid,
  onFrame,
  pegged,
  slotsOf,
  underTop,
  wardrobe,
} from './pieces.js';
import { inputOf, shippedInput } from './run.js';

/** A piece to be judged: a definition, or one as it is read and changed. */
type Fixture = object | (() => Promise<CheckInput>);
type Pair = readonly [found: Fixture, silent: Fixture];

/** Made, driest, wettest: %. */
const year =
  (piece: () => Promise<CheckInput>, made: number, driest: number, wettest: number) =>
  async (): Promise<CheckInput> => ({
    ...(await piece()),
    season: { made, driest, wettest },
  });
const changed =
  (piece: () => Promise<CheckInput>, change: (input: CheckInput) => CheckInput) => async (): Promise<CheckInput> =>
    change(await piece());
const withPiece = (input: CheckInput, piece: Partial<CheckInput['piece']>): CheckInput => ({
  ...input,
  piece: { ...input.piece, ...piece },
});
const hardware =
  (change: (h: Hardware) => Hardware) =>
  (input: CheckInput): CheckInput =>
    withPiece(input, { hardware: input.piece.hardware.map(change) });
const chest = (): Promise<CheckInput> => shippedInput('tall-chest');
const oak = { oak: { lumber: 'oak-white', quarter: '8/4' } };
const block = (long: string, wide: string, thick: string, more: object = {}): object => ({
  stock: oak,
  parts: {
    top: {
      mark: 'T1',
      stock: 'oak',
      grain: 'across',
      across: ['0', long],
      deep: ['0', wide],
      up: ['30', `30 + ${thick}`],
    },
  },
  ...more,
});
const flat = (cut: string): (() => Promise<CheckInput>) =>
  year(
    () => inputOf({ ...block('40', '24', '1'), stock: { oak: { lumber: 'hard-maple', quarter: '8/4', cut } } }),
    8,
    6,
    12,
  );
const glued = (deep: string): (() => Promise<CheckInput>) =>
  year(() => batten({ on: { kind: 'butt', part: 'batten', into: 'top', glue: true } }, deep), 8, 6, 11);
const cherry = (season: readonly [number, number, number], front: object = {}): (() => Promise<CheckInput>) =>
  year(() => drawerOnWood(board('cherry', 'flat'), '7 3/32', front), ...season);
const shelf = (free: string): object => ({
  stock: { pine: { lumber: 'pine-eastern-white', quarter: '4/4' } },
  parts: {
    l: { mark: 'A1', stock: 'pine', grain: 'up', across: ['0', '3/4'], deep: ['0', '10'], up: ['0', '30'] },
    r: { mark: 'A2', mirror: 'l', about: `(${free}) / 2 + 3/4` },
    s: {
      mark: 'S1',
      stock: 'pine',
      grain: 'across',
      across: ['l', 'r'],
      deep: ['0', '10'],
      up: { from: '12', size: '3/4' },
    },
  },
  joints: { housed: { kind: 'dado', part: 's', into: ['l', 'r'] } },
  use: { kind: 'books' },
});
const sheet = (nominal: string, thickness: string, shop: object = {}): object => ({
  stock: { ply: { sheet: 'plywood-birch', nominal, thickness, size: ['96', '48'] } },
  parts: {
    s: { mark: 'S1', stock: 'ply', grain: 'across', across: ['0', '20'], deep: ['0', '10'], up: { from: '0' } },
  },
  shop,
});
const shop = (machines: object): object => bench({ machines });
const profile =
  (tallest: number, stroke: number) =>
  (input: CheckInput): CheckInput =>
    withPiece(input, {
      profile: {
        machines: { routerTable: { tallest: inches(tallest) }, drillPress: { stroke: inches(stroke) } },
        clamps: [],
      },
    });
const clamps = (opening: string, count: number): object => bench({ clamps: [{ opening, count }] });
const shortSlides = hardware((h) =>
  h.kind === 'slide' && h.body.op === 'box'
    ? { ...h, body: { ...h.body, at: [h.body.at[0], [h.body.at[1][0], h.body.at[1][0] + inches(4)], h.body.at[2]] } }
    : h,
);
const stubs = hardware((h) => {
  if (!h.screw || !h.drawer) return h;
  const { from, to } = h.screw;
  const end = byAxis((a) => (a === 0 ? from[a] + Math.sign(to[a] - from[a]) * inches(0.1) : to[a]));
  return { ...h, screw: { ...h.screw, length: inches(0.1), to: end } };
});
const weak = hardware((h) => (h.carries ? { ...h, carries: { ...h.carries, kg: 14 } } : h));
const leaning = (input: CheckInput): CheckInput =>
  withPiece(input, {
    parts: input.piece.parts.map((p) =>
      p.id === 'top'
        ? {
            ...p,
            place: {
              ...p.place,
              rotation: [
                [1, 0, 0],
                [0, 0.8, -0.6],
                [0, 0.6, 0.8],
              ] as const,
            },
          }
        : p,
    ),
  });
const strange = (input: CheckInput): CheckInput =>
  withPiece(input, {
    stocks: Object.fromEntries(
      Object.entries(input.piece.stocks).map(([id, { wood: _known, ...s }]) => [id, { ...s, material: 'own-wood' }]),
    ),
  });
const heavy = (input: CheckInput): CheckInput => ({
  ...input,
  making: {
    ...input.making,
    weights: { ...input.making.weights, parts: input.making.weights.parts.map((p) => ({ ...p, kg: 300 })) },
  },
});
const top =
  (screw: object, wood?: string): (() => Promise<CheckInput>) =>
  () =>
    underTop({ sink: '1/8', ...screw }, wood);
const shallow = chestDef({ D: '12', H: '60', rows: ['8', '8', '8', '8', '8'] });
const deep = changed(() => inputOf(chestDef({ D: '24' })), shortSlides);
const clothes = (kind: string): object => chestDef({ more: { use: { kind } } });
const door = (width: string): object => wardrobe({ doors: [{ name: 'door', width, height: '80' }] });
const corner = (w: string): object => wardrobe({ corners: [{ name: 'hall', widths: [w, w] }], ceiling: '96' });
const stair = (headroom: string): object => wardrobe({ stairs: [{ name: 'stair', width: '48', headroom, pitch: 35 }] });
const accepts = (finding: string): object =>
  chestDef({
    more: { use: { kind: 'office' }, accepted: [{ finding, why: 'sample', by: 'sample', on: '2027-02-01' }] },
  });

/** Every code that a check can give: a piece in which it is found, and its twin in which it is not. */
const PAIRS: Readonly<Record<string, Pair>> = {
  'accepted-nothing': [accepts('held-apart'), accepts('tip-child')],
  'board-cups': [flat('flat'), flat('quartered')],
  'carry-heavy': [block('84', '38', '1 1/4'), block('30', '12', '1')],
  'clamps-panel': [clamps('50', 4), clamps('50', 5)],
  'clamps-short': [clamps('43', 9), clamps('44', 9)],
  'deeper-than-drill': [changed(chest, profile(60, 0.25)), changed(chest, profile(60, 4))],
  'delivery-ceiling': [wardrobe({ ceiling: '74' }), wardrobe({ ceiling: '96' })],
  'delivery-corner': [corner('20'), corner('40')],
  'delivery-door': [door('16'), door('30')],
  'delivery-stair': [stair('24'), stair('80')],
  'delivery-vehicle': [
    wardrobe({ vehicle: { length: '60', width: '40', height: '30' } }),
    wardrobe({ vehicle: { length: '120', width: '60', height: '60' } }),
  ],
  'drawer-heavy': [
    chestDef({ W: '60', D: '26', H: '30', rows: ['24'], drawerWood: 'oak-white', front: '2' }),
    chestDef(),
  ],
  'drawer-sticks': [cherry([8, 6, 11], { reveal: '0.003' }), cherry([8, 6, 11])],
  'front-binds': [cherry([8, 6, 14]), cherry([8, 6, 11])],
  'front-moves-much': [cherry([8, 6, 14]), cherry([8, 6, 11])],
  'held-apart': [year(() => onFrame({}), 8, 6, 11), year(() => onFrame({ hole: 'slotted' }), 8, 6, 11)],
  'longer-than-bench': [shop({ bench: { length: '36' } }), shop({ bench: { length: '72' } })],
  'movement-unjudged': [changed(flat('flat'), strange), flat('flat')],
  'outside-checks': [
    block('30', '12', '1', { use: { kind: 'crib' } }),
    block('30', '12', '1', { use: { kind: 'desk' } }),
  ],
  'panel-leaves-groove': [
    year(() => frame('29.75', { depth: '3/16', slack: '0.05' }), 10, 6, 10),
    year(() => frame('29.75', { depth: '7/16' }), 8, 7, 9),
  ],
  'panel-presses': [
    year(() => frame('14', { depth: '3/8', slack: '1/64' }), 7, 6, 13),
    year(() => frame('13.466', { depth: '3/8', slack: '0.108' }), 8, 6, 12),
  ],
  'panel-thickness-odd': [sheet('1/4', '1/4'), sheet('1/4', '0.205')],
  'part-heavy': [block('84', '38', '1 1/4'), block('30', '12', '1')],
  'sag-later': [shelf('60'), shelf('20')],
  'sag-now': [shelf('60'), shelf('20')],
  'screw-bite': [top({ sink: '0', screw: '#8 x 1' }), top({})],
  'screw-end-grain': [() => cap('up'), () => cap('across')],
  'screw-pilot': [top({}, 'yellow-poplar'), top({})],
  'screw-tip': [top({ screw: '#8 x 1 9/32' }), top({})],
  'screw-unjudged': [changed(top({}), leaning), top({})],
  'sheet-not-alone': [
    sheet('1/4', '0.205', { alone: { length: '60', width: '30' } }),
    sheet('1/4', '0.205', { alone: { length: '96', width: '48' } }),
  ],
  'shop-door': [
    wardrobe({}, { shop: { door: { width: '18', height: '84' } } }),
    wardrobe({}, { shop: { door: { width: '36', height: '84' } } }),
  ],
  'shorter-than-planer': [
    shop({ planer: { width: '20', shortest: '18' } }),
    shop({ planer: { width: '20', shortest: '9' } }),
  ],
  'slide-load': [changed(chest, weak), chest],
  'slide-screw-bears': [changed(chest, stubs), chest],
  'slide-screw-draws': [changed(chest, stubs), chest],
  'slot-short': [
    changed(
      year(() => pegged({}), 8, 6, 12),
      (i) => slotsOf(i, 1 / 2),
    ),
    year(() => pegged({}), 8, 6, 11),
  ],
  'small-at-machines': [block('11', '4', '1'), block('13', '4', '1')],
  'taller-than-router-table': [changed(chest, profile(24, 4)), changed(chest, profile(60, 4))],
  'thicker-than-saw': [shop({ tableSaw: { height: '1/2' } }), shop({ tableSaw: { height: '3' } })],
  'thinner-than-planer': [
    shop({ planer: { width: '20', thinnest: '7/8' } }),
    shop({ planer: { width: '20', thinnest: '1/4' } }),
  ],
  'tied-across': [glued('7'), glued('4')],
  'tied-unlike': [year(() => lid('quartered'), 8, 6, 11), year(() => lid('flat'), 8, 6, 11)],
  'tip-child': [chestDef(), deep],
  'tip-full': [shallow, deep],
  'tip-open': [chestDef({ caseWood: 'yellow-poplar', drawerWood: 'oak-white', front: '2' }), chestDef()],
  'tip-push': [shallow, deep],
  'tip-scope': [clothes('clothes'), clothes('office')],
  'top-fixings-far': [top({ count: 2, inset: '2' }), top({ count: 4, inset: '2' })],
  'top-fixings-few': [top({ count: 1 }), top({ count: 4, inset: '2' })],
  'top-lifts-off': [changed(top({ count: 4, inset: '2' }), heavy), top({ count: 4, inset: '2' })],
  'wider-than-crosscut': [shop({ tableSaw: { crosscut: '12' } }), shop({ tableSaw: { crosscut: '24' } })],
  'wider-than-jointer': [shop({ jointer: { width: '6' } }), shop({ jointer: { width: '8' } })],
  'wider-than-planer': [shop({ planer: { width: '15' } }), shop({ planer: { width: '20' } })],
  'wider-than-rip': [shop({ tableSaw: { rip: '12' } }), shop({ tableSaw: { rip: '24' } })],
};

const inputFor = (f: Fixture): Promise<CheckInput> =>
  typeof f === 'function' ? (f as () => Promise<CheckInput>)() : inputOf(f);
const found = async (f: Fixture): Promise<readonly string[]> =>
  runChecks(await inputFor(f)).findings.map((x) => x.code);

describe('every finding of a check has a piece in which it is found, and a silent twin', () => {
  it('no code of the checks is without', () => {
    const given = codesIn(join(import.meta.dirname, '../../src')).filter((u) => u.room === 'checks');
    expect([...new Set(given.map((u) => u.code))].sort()).toEqual(Object.keys(PAIRS).sort());
  });
  it.each(Object.entries(PAIRS))('%s', async (code, [guilty, twin]) => {
    expect(await found(guilty)).toContain(code);
    expect(await found(twin)).not.toContain(code);
  });
});
