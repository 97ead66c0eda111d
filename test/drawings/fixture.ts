import { createKernel } from '../../src/geom/kernel.js';
import type { Axis, Face } from '../../src/geom/axis.js';
import type { Box3 } from '../../src/geom/box.js';
import { byAxis } from '../../src/geom/box.js';
import { shifted } from '../../src/geom/placement.js';
import type { Placement } from '../../src/geom/placement.js';
import type { Recipe } from '../../src/geom/recipe.js';
import type { Kernel } from '../../src/geom/solid.js';
import type { Layout } from '../../src/layout/layout.js';
import { inches, nm } from '../../src/lengths/length.js';
import type { Drawer, Hardware, Joint, Part, Piece, Status } from '../../src/piece/piece.js';
import type { Solids } from '../../src/solids/solids.js';
import { makeLists } from '../../src/making/making.js';
import type { Making } from '../../src/making/making.js';
import { given } from '../../src/value/sized.js';

/** A tall chest typed by hand, without joints cut: invented, only to draw from. Inches in, nm out. */
type Spans = readonly [readonly [number, number], readonly [number, number], readonly [number, number]];
interface Shape {
  readonly recipe?: Recipe;
  readonly status?: Status;
  readonly drawer?: string;
}
const words: Record<Face, string> = {
  left: 'LEFT',
  right: 'RIGHT',
  front: 'FRONT',
  back: 'BACK',
  bottom: 'BOTTOM',
  top: 'TOP',
};

export function partOf(
  id: string,
  mark: string,
  name: string,
  at: Spans,
  grain: Axis,
  stock: string,
  shape: Shape = {},
): Part {
  const size = byAxis((a) => given(inches(at[a][1] - at[a][0]), 'typed'));
  const by = ([0, 1, 2] as Axis[]).sort((a, b) => size[a].value - size[b].value);
  const thickness = by[0] as Axis;
  const length = grain === thickness ? (by[2] as Axis) : grain;
  const width = (3 - thickness - length) as Axis;
  return {
    id,
    mark,
    name,
    stock,
    size,
    thickness,
    width,
    length,
    grain,
    place: shifted([inches(at[0][0]), inches(at[1][0]), inches(at[2][0])]),
    growth: [
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    show: [],
    faceWords: words,
    reference: { face: 'front', edge: 'bottom', end: 'left' },
    cuts: [],
    status: shape.status ?? 'cut now',
    statusWhy: '',
    notes: [],
    ...(shape.drawer ? { drawer: shape.drawer } : {}),
  };
}

/** Tips what was drawn lying (x, y; thickness up) so that it stands in the front elevation, its back face at `back`. */
const tipped = (x: number, back: number, z: number): Placement => ({
  rotation: [
    [1, 0, 0],
    [0, 0, -1],
    [0, 1, 0],
  ],
  origin: [inches(x), inches(back), inches(z)],
});
const ROWS = [5.25, 7, 8, 9];
const RAILS = (() => {
  const tops = [41.125];
  for (const row of ROWS) tops.push((tops.at(-1) as number) - 0.75 - row);
  return tops;
})();

interface Built {
  readonly parts: Part[];
  readonly recipes: Map<string, Recipe>;
  readonly drawers: Drawer[];
  readonly hardware: Hardware[];
}

function drawer(built: Built, n: number, x: readonly [number, number], z: readonly [number, number]): void {
  const id = `d_${n}`;
  const mark = `D${n}`;
  const top = n < 3 ? 1 / 16 : 5 / 64;
  const add = (k: number, name: string, at: Spans, grain: Axis, stock: string, status: Status): void => {
    built.parts.push(partOf(`${id}.p${k}`, `${mark}.${k}`, name, at, grain, stock, { drawer: id, status }));
  };
  const front: Spans = [
    [x[0] + 1 / 16, x[1] - 1 / 16],
    [0, 13 / 16],
    [z[0] + 1 / 16, z[1] - top],
  ];
  const box: Spans = [
    [x[0] + 33 / 64, x[1] - 33 / 64],
    [13 / 16, 13 / 16 + 16],
    [z[0] + 0.5, z[1] - 3 / 8],
  ];
  const [bx, by, bz] = box;
  add(1, 'drawer front', front, 0, 'oak', 'fit to the piece');
  add(2, 'box side, left', [[bx[0], bx[0] + 0.5], by, bz], 1, 'poplar', 'cut now');
  add(3, 'box side, right', [[bx[1] - 0.5, bx[1]], by, bz], 1, 'poplar', 'cut now');
  add(4, 'box front', [[bx[0] + 0.5, bx[1] - 0.5], [by[0], by[0] + 0.5], bz], 0, 'poplar', 'fit to the piece');
  add(5, 'box back', [[bx[0] + 0.5, bx[1] - 0.5], [by[1] - 0.5, by[1]], bz], 0, 'poplar', 'fit to the piece');
  add(
    6,
    'bottom',
    [
      [bx[0] + 0.25, bx[1] - 0.25],
      [by[0] + 0.25, by[1] - 0.25],
      [bz[0] + 0.25, bz[0] + 0.25 + 0.375],
    ],
    1,
    'ply',
    'fit to the piece',
  );
  const sized = (v: number, rule: string) => given(inches(v), rule);
  built.drawers.push({
    id,
    mark,
    front: `${id}.p1`,
    opening: { across: sized(x[1] - x[0], 'opening'), up: sized(z[1] - z[0], 'opening'), deep: sized(18, 'depth') },
    gaps: {
      left: sized(1 / 16, 'gap'),
      right: sized(1 / 16, 'gap'),
      bottom: sized(1 / 16, 'gap'),
      top: sized(top, 'gap'),
    },
    parts: built.parts.filter((p) => p.drawer === id).map((p) => p.id),
  });
  for (const at of n < 3 ? [0.5] : [0.25, 0.75]) {
    const px = x[0] + (x[1] - x[0]) * at;
    const pz = (z[0] + z[1]) / 2;
    const profile = [
      [0, 1],
      [0.6, 1],
      [0.6, 0.7],
      [0.35, 0.4],
      [0.35, 0],
      [0, 0],
    ] as const;
    const body: Recipe = {
      op: 'placed',
      by: tipped(px, 0, pz),
      of: {
        op: 'turned',
        axis: 2,
        centre: [0, 0, 0],
        profile: profile.map(([r, h]) => [inches(r), inches(h)] as const),
      },
    };
    built.hardware.push({
      id: `${id}.pull_${at}`,
      kind: 'pull',
      name: 'pull 1 1/4',
      body,
      into: [`${id}.p1`],
      drawer: id,
    });
  }
}

function chest(): Built {
  const built: Built = { parts: [], recipes: new Map(), drawers: [], hardware: [] };
  const add = (
    id: string,
    mark: string,
    name: string,
    at: Spans,
    grain: Axis,
    stock = 'oak',
    status: Status = 'cut now',
  ): void => {
    built.parts.push(partOf(id, mark, name, at, grain, stock, { status }));
  };
  add(
    'side_left',
    'A1',
    'left side',
    [
      [0, 0.875],
      [0, 19],
      [0, 41.125],
    ],
    2,
  );
  add(
    'side_right',
    'A2',
    'right side',
    [
      [35.125, 36],
      [0, 19],
      [0, 41.125],
    ],
    2,
  );
  add(
    'top',
    'A3',
    'top',
    [
      [-0.75, 36.75],
      [-0.75, 19.25],
      [41.125, 42],
    ],
    0,
    'oak',
    'leave long',
  );
  add(
    'rail_1',
    'A4',
    'top rail, front',
    [
      [0.875, 35.125],
      [0, 2.5],
      [40.375, 41.125],
    ],
    0,
  );
  add(
    'divider',
    'A5',
    'divider',
    [
      [17.625, 18.375],
      [0, 18.75],
      [35.125, 40.375],
    ],
    2,
    'oak',
    'fit to the piece',
  );
  add(
    'apron',
    'A6',
    'apron',
    [
      [0.875, 35.125],
      [0.0625, 0.8125],
      [4.625, 8.125],
    ],
    0,
    'oak',
    'leave long',
  );
  add(
    'back',
    'A7',
    'back',
    [
      [0.5, 35.5],
      [18.75, 19],
      [8, 41.125],
    ],
    2,
    'ply',
    'fit to the piece',
  );
  add(
    'rail_back',
    'A8',
    'top rail, back',
    [
      [0.875, 35.125],
      [16.25, 18.75],
      [40.375, 41.125],
    ],
    0,
  );
  for (let i = 1; i <= 4; i++) {
    const top = RAILS[i] as number;
    add(
      `front_rail_${i}`,
      `R${i}`,
      'front rail',
      [
        [0.875, 35.125],
        [0, 2.5],
        [top - 0.75, top],
      ],
      0,
    );
    add(
      `back_rail_${i}`,
      `B${i}`,
      'back rail',
      [
        [0.875, 35.125],
        [16.25, 18.75],
        [top - 0.75, top],
      ],
      0,
    );
  }
  const between = (i: number): readonly [number, number] => [RAILS[i] as number, (RAILS[i - 1] as number) - 0.75];
  drawer(built, 1, [0.875, 17.625], between(1));
  drawer(built, 2, [18.375, 35.125], between(1));
  for (let i = 2; i <= 4; i++) drawer(built, i + 1, [0.875, 35.125], between(i));
  const apron = built.parts.find((p) => p.id === 'apron') as Part;
  built.recipes.set('apron', {
    op: 'placed',
    by: tipped(0, 0.75, 0),
    of: {
      op: 'prism',
      axis: 2,
      from: 0,
      to: apron.size[1].value,
      outlines: [
        [
          { to: [0, inches(3.5)] },
          { to: [0, 0] },
          { to: [inches(34.25), 0], bulge: -0.1 },
          { to: [inches(34.25), inches(3.5)] },
        ],
      ],
    },
  });
  return built;
}

export function chestPiece(built: Built = chest()): Piece {
  const joints: Joint[] = [1, 2, 3, 4].flatMap((i) =>
    (['left', 'right'] as const).map((side): Joint => ({
      id: `rails.${i}.${side}`,
      joint: 'rails',
      kind: 'sliding-dovetail',
      words: 'sliding dovetail',
      entering: `front_rail_${i}`,
      receiving: `side_${side}`,
      sizes: { depth: given(inches(0.375), 'typed'), stop: given(inches(0.375), 'typed') },
      way: ['front'],
      traits: {
        insertion: ['right'],
        holds: 'holds',
        glue: 'by shape',
        resists: { tension: 3, shear: 2, racking: 1, twist: 1 },
        freedom: 'fixed',
        shows: false,
      },
    })),
  );
  return {
    header: {
      title: 'Tall chest',
      number: 'C-021',
      revision: 'A',
      date: '2027-02-01',
      client: 'sample',
      maker: 'sample',
      woods: 'White oak, yellow-poplar inside',
    },
    units: 'in',
    step: nm(396_875),
    measures: {},
    stocks: {
      oak: { id: 'oak', kind: 'lumber', material: 'oak-white', name: 'white oak', quarter: '5/4', cut: 'quartered' },
      poplar: { id: 'poplar', kind: 'lumber', material: 'yellow-poplar', name: 'yellow-poplar', quarter: '4/4' },
      ply: {
        id: 'ply',
        kind: 'sheet',
        material: 'plywood-birch',
        name: 'birch plywood',
        thickness: inches(0.205),
        nominal: '1/4',
        size: [inches(96), inches(48)],
        grain: 'length',
      },
    },
    parts: [...built.parts].sort((a, b) => (a.id < b.id ? -1 : 1)),
    joints,
    hardware: built.hardware,
    drawers: built.drawers,
    finish: 'penetrating oil, 3 coats',
    shop: { kerf: inches(0.125), trim: inches(0.25), allowance: [inches(0.25), inches(0.5), inches(1)] },
  };
}

export function solidsOf(piece: Piece, kernel: Kernel, recipes: ReadonlyMap<string, Recipe> = new Map()): Solids {
  return {
    parts: piece.parts.map((p) => {
      const at: Box3 = byAxis((a) => [0, p.size[a].value] as const);
      const recipe = recipes.get(p.id) ?? ({ op: 'box', at } as const);
      const bounds = kernel.bounds(recipe);
      if (!bounds) throw new Error(p.id);
      return {
        id: p.id,
        recipe,
        key: kernel.key(recipe),
        mesh: kernel.mesh(recipe),
        volume: kernel.volume(recipe),
        bounds,
      };
    }),
    hardware: piece.hardware.map((h) => ({ id: h.id, recipe: h.body, mesh: kernel.mesh(h.body) })),
  };
}

/** One sheet of plywood laid out by hand: two strips, kerf 1/8, trim 1/4. Inches. */
export function sheetLayout(): Layout {
  const i = inches;
  const cut = (
    number: number,
    kind: 'trim' | 'rip' | 'cross',
    stage: number,
    from: [number, number],
    to: [number, number],
    fence: number,
    against: string,
    leaves: string,
  ) => ({
    number,
    kind,
    stage,
    from: [i(from[0]), i(from[1])] as const,
    to: [i(to[0]), i(to[1])] as const,
    fence: i(fence),
    against,
    leaves,
  });
  const box = (x: number, y: number, w: number, h: number) => ({ x: i(x), y: i(y), w: i(w), h: i(h) });
  return {
    sheets: [
      {
        stock: 'ply',
        index: 1,
        of: 1,
        length: i(96),
        width: i(48),
        kerf: i(0.125),
        trim: i(0.25),
        grain: 'length',
        pieces: [
          { part: 'back', ...box(0, 0, 33, 34.9375), turned: false },
          { part: 'd_1.p6', ...box(33.125, 0, 15.4375, 15.15625), turned: false },
          { part: 'd_2.p6', ...box(33.125, 15.28125, 15.4375, 15.15625), turned: false },
        ],
        offcuts: [
          { name: 'O1', ...box(0, 35.0625, 33, 12.6875), keep: true },
          { name: 'O2', ...box(33.125, 30.5625, 15.4375, 17.1875), keep: true },
          { name: 'O3', ...box(48.6875, 0, 47.0625, 47.75), keep: true },
        ],
        cuts: [
          cut(1, 'trim', 1, [0, -0.0625], [95.75, -0.0625], 0.25, '', 'edge 1'),
          cut(2, 'trim', 1, [-0.0625, 0], [-0.0625, 47.75], 0.25, 'edge 1', 'end 2'),
          cut(3, 'cross', 1, [33.0625, 0], [33.0625, 47.75], 33, 'end 2', 'strip of A7'),
          cut(4, 'cross', 1, [48.625, 0], [48.625, 47.75], 15.4375, 'the edge left by cut 3', 'strip of D1.6 D2.6'),
          cut(5, 'rip', 2, [0, 35], [33, 35], 34.9375, 'edge 1', 'A7, leaves O1'),
          cut(6, 'rip', 2, [33.125, 15.21875], [48.5625, 15.21875], 15.15625, 'edge 1', 'D1.6'),
          cut(7, 'rip', 2, [33.125, 30.5], [48.5625, 30.5], 15.15625, 'the edge left by cut 6', 'D2.6'),
        ],
      },
    ],
    counts: [{ stock: 'ply', used: 1, bound: 1, proved: true }],
    unplaced: [],
  };
}

export async function chestFixture(): Promise<{
  lists: Making;
  piece: Piece;
  solids: Solids;
  kernel: Kernel;
  layout: Layout;
}> {
  const kernel = await createKernel();
  const built = chest();
  const piece = chestPiece(built);
  const solids = solidsOf(piece, kernel, built.recipes);
  const lists = makeLists(piece, solids.parts).value;
  if (!lists) throw new Error('no lists');
  return { piece, solids, kernel, layout: sheetLayout(), lists };
}
