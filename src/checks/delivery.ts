import { rectangleInside, squareHeadroom, tippedHeight, widestRoundCorner } from '../geom/passage.js';
import { width, type Box3 } from '../geom/box.js';
import { inches, mm, nm, snap, snapUp } from '../lengths/length.js';
import type { Delivery, Piece } from '../piece/piece.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import { compareMarks } from '../words/markOrder.js';
import { boundsOf, partBodies, type PartBody } from './bodies.js';
import type { Check, CheckInput, Input, Judgement, Pass } from './check.js';

/** Room that hands and the frame of a door take: common practice. */
const HANDS = inches(1);
const GEOMETRY = 'plane geometry of a rigid box';
const RECTANGLES = 'rectangle in rectangle (Carver 1957), from memory, borne out by calculation';
const PRACTICE = 'common practice';

/** What is carried in one go: its name, its bodies and its wrapped sizes across, deep, up, nm. */
interface Load {
  readonly name: string;
  readonly bodies: readonly PartBody[];
  readonly size: readonly [number, number, number];
}
const sizeOf = (bodies: readonly PartBody[], wrap: number): Load['size'] => {
  const box: Box3 = boundsOf(bodies);
  const [x, y, z] = box.map((s) => Math.round(width(s) * 1e6)) as [number, number, number];
  return [x + 2 * wrap, y + 2 * wrap, z + 2 * wrap];
};
function loadsOf(piece: Piece, bodies: readonly PartBody[]): Load[] {
  const wrap = piece.delivery?.wrap ?? 0;
  const apart = new Set(piece.delivery?.apart ?? []);
  const rest = bodies.filter((b) => !apart.has(b.part.id));
  const off = bodies.filter((b) => apart.has(b.part.id)).sort((a, b) => compareMarks(a.part.mark, b.part.mark));
  const load = (name: string, of: readonly PartBody[]): Load => ({ name, bodies: of, size: sizeOf(of, wrap) });
  return [
    ...(rest.length > 0
      ? [load(off.length > 0 ? `The piece without ${off.map((b) => b.part.mark).join(' ')}` : 'The piece', rest)]
      : []),
    ...off.map((b) => load(b.part.mark, [b])),
  ];
}

/** One way through: what it needs, what there is, and how the load is held. */
interface Way {
  readonly needs: number;
  readonly has: number;
  readonly turn: number;
  readonly held: string;
  /** Round a corner: long and short side in plan. */
  readonly plan?: readonly [number, number];
}
const passes = (w: Way): boolean => w.needs <= w.has;
/** The way that is easiest: one that passes without a turn, then one that passes, then the nearest miss. */
const easiest = (ways: readonly Way[]): Way =>
  [...ways].sort(
    (a, b) =>
      Number(passes(b)) - Number(passes(a)) ||
      (passes(a) ? Number(a.turn > 0) - Number(b.turn > 0) : 0) ||
      a.needs / a.has - b.needs / b.has,
  )[0] as Way;

const AXES = [
  { along: 1, held: 'upright, front first', p: 0, q: 2 },
  { along: 0, held: 'upright, end first', p: 1, q: 2 },
  { along: 2, held: 'on its back, top first', p: 0, q: 1 },
] as const;
function throughDoor(size: Load['size'], door: readonly [number, number]): Way {
  const [w, h] = door;
  return easiest(
    AXES.map(({ held, p, q }) => {
      const [a, b] = [size[p], size[q]];
      // Upright: the first side level, the second plumb; else leant.
      if (a <= w && b <= h) return { needs: a, has: w, turn: 0, held };
      if (b <= w && a <= h) return { needs: b, has: w, turn: 90, held: `${held}, on its side` };
      const inside = rectangleInside(a, b, w, h);
      const has = Math.min(w, h);
      return {
        needs: inside.needs,
        has,
        turn: inside.turn,
        held: `${held}, leant`,
      };
    }),
  );
}
function roundCorner(size: Load['size'], widths: readonly [number, number], height: number): Way {
  const [a, b] = widths;
  return easiest(
    AXES.flatMap(({ held, along, p, q }): Way[] => {
      // Plumb is q for the upright ones; lying on its back the depth is plumb.
      const plumb = size[q];
      if (plumb > height) return [{ needs: plumb, has: height, turn: 0, held }];
      const [long, short] = size[along] >= size[p] ? [size[along], size[p]] : [size[p], size[along]];
      const round = widestRoundCorner(long, a, b);
      const sideways = (short <= a && long <= b) || (short <= b && long <= a);
      if (sideways)
        return [{ needs: short, has: Math.min(a, b), turn: 0, held: `${held}, not turned`, plan: [long, short] }];
      return [{ needs: short, has: Math.max(1, round.width), turn: round.turn, held, plan: [long, short] }];
    }),
  );
}

interface Asked {
  readonly code: string;
  readonly name: string;
  readonly kind: Pass['kind'];
  readonly clear: readonly number[];
  readonly about: string;
  readonly rule: string;
  readonly sources: readonly string[];
  readonly path: Judgement['path'];
  way(size: Load['size']): Way;
}

const TALL = 1e12;
function asked(piece: Piece, d: Delivery | undefined): Asked[] {
  const out: Asked[] = [];
  const door = (x: Pick<Asked, 'code' | 'name' | 'path'>, clear: readonly [number, number]): void => {
    const room = [clear[0] - HANDS, clear[1] - HANDS] as const;
    out.push({
      ...x,
      kind: 'door',
      clear,
      about: `through ${x.name}`,
      rule: 'cross-section in the clear opening less room for hands, straight or leant',
      sources: [RECTANGLES, PRACTICE],
      way: (size) => throughDoor(size, room),
    });
  };
  const own = piece.profile?.door;
  if (own) door({ code: 'shop-door', name: "the shop's own door", path: ['shop', 'door'] }, own);
  if (!d) return out;
  d.doors.forEach(({ name, width: w, height: h }, i) =>
    door({ code: 'delivery-door', name, path: ['delivery', 'doors', i] }, [w, h]),
  );
  d.corners.forEach((x, i) =>
    out.push({
      code: 'delivery-corner',
      name: x.name,
      kind: 'corner',
      clear: x.widths,
      about: `round the corner of ${x.name}`,
      rule: 'w ≤ least over t of a cos t + b sin t − L sin t cos t',
      sources: [GEOMETRY, PRACTICE],
      path: ['delivery', 'corners', i],
      way: (size) =>
        roundCorner(size, [x.widths[0] - HANDS, x.widths[1] - HANDS], (x.height ?? d.ceiling ?? TALL) - HANDS),
    }),
  );
  d.stairs.forEach((x, i) =>
    out.push({
      code: 'delivery-stair',
      name: x.name,
      kind: 'stair',
      clear: [x.width, x.headroom],
      about: `up ${x.name}, long side along the slope`,
      rule: 'cross-section in width and headroom × cos pitch, less room for hands; the landing as a corner',
      sources: [GEOMETRY, PRACTICE],
      path: ['delivery', 'stairs', i],
      way: (size) => upStair(size, x),
    }),
  );
  if (d.ceiling !== undefined) {
    const ceiling = d.ceiling;
    out.push({
      code: 'delivery-ceiling',
      name: 'the ceiling',
      kind: 'ceiling',
      clear: [ceiling],
      about: 'tipped up on end under the ceiling',
      rule: '√(height² + depth²) ≤ ceiling − 1 in',
      sources: [GEOMETRY, PRACTICE],
      path: ['delivery', 'ceiling'],
      way: ([x, y, z]) => ({
        needs: tippedHeight(Math.min(x, y), z),
        has: ceiling - HANDS,
        turn: 0,
        held: 'tipped up',
      }),
    });
  }
  if (d.vehicle) {
    const room = [...d.vehicle].sort((a, b) => b - a);
    out.push({
      code: 'delivery-vehicle',
      name: 'the vehicle',
      kind: 'vehicle',
      clear: d.vehicle,
      about: 'in the vehicle',
      rule: 'every side in the room of the vehicle, turned as it will',
      sources: [GEOMETRY],
      path: ['delivery', 'vehicle'],
      way: (size) => {
        const sides = [...size].sort((a, b) => b - a);
        const tightest = sides
          .map((s, i) => ({ needs: s, has: room[i] as number, turn: 0, held: 'packed' }))
          .sort((a, b) => b.needs / b.has - a.needs / a.has);
        return tightest[0] as Way;
      },
    });
  }
  return out;
}
function upStair(size: Load['size'], x: Delivery['stairs'][number]): Way {
  const [w, h] = [x.width - HANDS, squareHeadroom(x.headroom, x.pitch) - HANDS];
  const [long, middle, short] = [...size].sort((a, b) => b - a) as [number, number, number];
  const flat: Way = { needs: middle, has: w, turn: 0, held: 'long side along the slope' };
  const leant = rectangleInside(middle, short, w, h);
  const slope: Way =
    middle <= w && short <= h
      ? flat
      : short <= w && middle <= h
        ? { needs: short, has: w, turn: 90, held: 'long side along the slope, on edge' }
        : {
            needs: leant.needs,
            has: Math.min(w, h),
            turn: leant.turn,
            held: 'leant',
          };
  if (x.landing === undefined || !passes(slope)) return slope;
  const turned = widestRoundCorner(long, w, x.landing - HANDS);
  return { needs: short, has: Math.max(1, turned.width), turn: turned.turn, held: 'turned on the landing' };
}

function judge(load: Load, a: Asked, all: readonly PartBody[], piece: Piece): Judgement {
  const way = a.way(load.size);
  const good = passes(way);
  const step = piece.units === 'in' ? inches(1 / 8) : mm(1);
  const size = (v: number): Input['quantity'] => quantity('length', snap(nm(Math.round(v)), step));
  const names = ['wide', 'deep', 'high'] as const;
  return {
    code: a.code,
    verdict: good ? 'pass' : 'fail',
    subject: load.name,
    about: `${a.about}, ${good ? way.held : 'every way it is held'}`,
    figure: size(way.needs),
    limit: size(way.has),
    margin: way.has / way.needs,
    worked: {
      rule: a.rule,
      sources: a.sources,
      inputs: [
        ...load.size.map((v, i): Input => ({ name: `${names[i] as string}, wrapped`, quantity: size(v) })),
        ...a.clear.map((v, i): Input => ({
          name: `${a.name}, clear${a.clear.length > 1 ? ` ${i + 1}` : ''}`,
          quantity: size(v),
        })),
        { name: 'room for hands', quantity: size(HANDS), source: PRACTICE },
        ...(way.turn > 0 ? [{ name: 'turned by', quantity: quantity('angle', way.turn) }] : []),
      ],
    },
    ...(good ? {} : { remedy: remedy(load, a, all, piece) }),
    touches: load.bodies.length === 1 ? load.bodies.map((b) => b.part.id) : [],
    path: a.path,
  };
}

/** The one part that would let the rest through when it comes off, if there is one that is not glued; else what is missing. */
function remedy(load: Load, a: Asked, all: readonly PartBody[], piece: Piece): string {
  const glued = new Set(piece.joints.flatMap((j) => (j.traits.glue === 'none' ? [] : [j.entering, j.receiving])));
  const wrap = piece.delivery?.wrap ?? 0;
  const off = load.bodies
    .filter((b) => !glued.has(b.part.id) && load.bodies.length > 1)
    .find((b) =>
      passes(
        a.way(
          sizeOf(
            all.filter((o) => o !== b && load.bodies.includes(o)),
            wrap,
          ),
        ),
      ),
    );
  if (off) return `With ${off.part.mark} off it passes: let it come off for the carry (delivery.apart).`;
  const way = a.way(load.size);
  const step = piece.units === 'in' ? inches(1 / 8) : mm(1);
  const by = sayQuantity(quantity('length', snapUp(nm(Math.round(way.needs - way.has)), step)), piece.units);
  return `It is ${by} too large there: build it in two, or find another way in.`;
}

/** Whether the piece gets out of the shop, into the vehicle and through the house, wrapped. */
export const delivery: Check = {
  key: 'delivery',
  title: 'Delivery',
  run(input: CheckInput) {
    const { piece } = input;
    const bodies = partBodies(input);
    const loads = loadsOf(piece, bodies);
    const list = asked(piece, piece.delivery);
    const step = piece.units === 'in' ? inches(1 / 8) : mm(1);
    const say = (v: number): string => sayQuantity(quantity('length', snap(nm(v), step)), piece.units);
    const ways = loads.flatMap((load) => list.map((a) => ({ load, a, way: a.way(load.size) })));
    return {
      judgements: loads.flatMap((load) => list.map((a) => judge(load, a, bodies, piece))),
      tables: [
        {
          id: 'delivery',
          columns: [
            { id: 'unit', label: piece.delivery?.wrap ? 'Unit, wrapped' : 'Unit', align: 'left' },
            { id: 'wide', label: 'Wide', align: 'right' },
            { id: 'deep', label: 'Deep', align: 'right' },
            { id: 'high', label: 'High', align: 'right' },
          ],
          rows: loads.map((l) => [l.name, ...l.size.map(say)]),
        },
      ],
      diagrams: ways.some(({ a }) => a.kind === 'corner')
        ? [
            {
              kind: 'corridor' as const,
              passes: ways
                .filter(({ a }) => a.kind === 'corner')
                .map(({ load, a, way }) => ({
                  name: `${load.name}, ${a.name}`,
                  kind: a.kind,
                  clear: a.clear,
                  piece: load.size,
                  turn: way.turn,
                  ...(way.plan ? { plan: way.plan } : {}),
                  passes: passes(way),
                })),
            },
          ]
        : [],
    };
  },
};
