import { width } from '../../geom/box.js';
import { toMm } from '../../lengths/length.js';
import type { Hardware, Piece } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { drawnAllowed, lateral, lateralFigure } from '../../wood/screws.js';
import { woodOf } from '../../wood/material.js';
import { drawerPath } from '../bodies.js';
import type { Input, Judgement } from '../check.js';
import { FILL, FILL_SOURCE, type DrawerRoom } from '../drawerRoom.js';
import { ratio, type Single } from '../grouped.js';
import type { Bite } from './bite.js';

const GRAVITY = 9.80665;

/** Full drawer, kg: its wood and what it is filled with. */
export const loaded = (room: DrawerRoom): number => room.kg + FILL * room.volume;

const loadInputs = (room: DrawerRoom): Input[] => [
  { name: 'drawer', quantity: quantity('mass', room.kg) },
  { name: 'room in it', quantity: quantity('volume', room.volume) },
  { name: 'filled with', quantity: quantity('mass', FILL * room.volume), source: FILL_SOURCE },
];
const common = (room: DrawerRoom, more: readonly string[] = []): Pick<Single, 'marks' | 'touches' | 'path'> => ({
  marks: [room.drawer.mark],
  touches: [room.drawer.id, room.drawer.front, ...more],
  path: drawerPath(room.drawer),
});

/** A full drawer against what a pair of its slides carries. */
export function slideLoad(room: DrawerRoom, piece: Piece): Single[] {
  const slide = piece.hardware.find((h) => h.carries && h.drawer === room.drawer.id);
  if (!slide?.carries) return [];
  const { kg, source } = slide.carries;
  const load = loaded(room);
  const verdict = load <= kg ? 'pass' : 'fail';
  return [
    {
      code: 'slide-load',
      verdict,
      about: 'full, weighs on its slides',
      figure: quantity('mass', load),
      limit: quantity('mass', kg),
      margin: ratio(kg, load),
      ...(verdict === 'pass'
        ? {}
        : {
            remedy: `Take slides that carry ${sayQuantity(quantity('mass', load), piece.units)} at least, or make the drawer smaller.`,
          }),
      worked: {
        rule: 'drawer + 8.5 lb/ft³ × room in it, against what a pair carries',
        sources: [`what a pair carries: ${source}`],
        inputs: loadInputs(room),
      },
      ...common(room),
    },
  ];
}

/** Figures of one slide pulled out: mm and N. */
interface Pulled {
  readonly first: Bite;
  readonly sideways: number;
  readonly outwards: number;
  readonly inputs: readonly Input[];
}

/**
 * The first screw of the case with the drawer right out and full: half its weight on each side, at the middle of its room,
 * which stands ahead of that screw; the couple is taken by the first and the last screw. The slide stands off the wood by
 * its thickness and bears on its lower edge, so that the same force also draws the screw out. The couple is by statics, our
 * own model: slides share the load between more screws.
 */
function pulled(room: DrawerRoom, slide: Hardware, bites: readonly Bite[]): Pulled | undefined {
  const own = bites
    .filter((b) => b.screw.clamps === slide.id && !room.drawer.parts.includes(b.screw.holds))
    .sort((p, q) => p.screw.from[1] - q.screw.from[1]);
  const [first, last] = [own[0], own.at(-1)];
  if (!first || !last || first === last || slide.body.op !== 'box') return undefined;
  const [steel, , high] = slide.body.at;
  const front = toMm(first.screw.from[1]);
  const apart = toMm(last.screw.from[1]) - front;
  const middle = (room.room[1][0] + room.room[1][1]) / 2 - room.travel;
  const ahead = Math.max(0, front - middle);
  const half = (loaded(room) * GRAVITY) / 2;
  const sideways = half * (1 + ahead / apart);
  const arm = toMm(width(steel));
  const heel = toMm(width(high)) / 2;
  const length = (name: string, v: number): Input => ({ name, quantity: quantity('length', Math.round(v * 1e6)) });
  return {
    first,
    sideways,
    outwards: (sideways * arm) / heel,
    inputs: [
      ...loadInputs(room),
      length('middle of the load ahead of the first screw', ahead),
      length('first screw to last', apart),
      length('thickness of the slide', arm),
      length('screw to the lower edge of the slide', heel),
    ],
  };
}

const MODEL = 'couple by statics, our own model, an estimate';

/** The screws of the case under a full drawer that is pulled right out: drawn out, and pressed sideways. */
export function slideScrews(room: DrawerRoom, piece: Piece, bites: readonly Bite[]): Single[] {
  const slides = piece.hardware.filter((h) => h.kind === 'slide' && h.drawer === room.drawer.id);
  return slides.flatMap((slide): Single[] => {
    const p = pulled(room, slide, bites);
    if (!p || p.first.endGrain) return [];
    const shank = toMm(p.first.screw.diameter);
    const thread = toMm(p.first.inside);
    const stock = piece.stocks[p.first.holds.part.stock];
    const wood = woodOf(stock);
    const drawn = drawnAllowed(stock, p.first.through, shank, thread);
    if (!drawn) return [];
    const inputs: Input[] = [
      ...p.inputs,
      {
        name: 'specific gravity',
        quantity: quantity('ratio', drawn.gravity.value),
        source: drawn.gravity.source,
        ...(drawn.gravity.memory ? { memory: true } : {}),
      },
      { name: 'shank', quantity: quantity('fine', p.first.screw.diameter), source: 'ASME B18.6.1' },
      { name: 'thread in the wood', quantity: quantity('fine', p.first.inside) },
    ];
    const side = wood && lateral(wood, shank, thread);
    const rest = { ...common(room, [p.first.holds.part.id]), on: [p.first.holds.part.mark] };
    const one = (
      about: string,
      force: number,
      allowed: number,
      remedy: string,
    ): Omit<Judgement, 'code' | 'subject' | 'worked' | 'touches' | 'path'> => ({
      verdict: force <= allowed ? 'pass' : 'fail',
      about,
      figure: quantity('force', force),
      limit: quantity('force', allowed),
      margin: ratio(allowed, force),
      ...(force <= allowed ? {} : { remedy }),
    });
    const longer = 'Take a longer or a thicker screw in front, or two screws there.';
    return [
      {
        code: 'slide-screw-draws',
        ...one('full and right out, draws on the first screw with', p.outwards, drawn.newtons, longer),
        worked: {
          rule: `sideways force × thickness of the slide / screw to its lower edge, against ${drawn.rule}`,
          sources: [drawn.source, MODEL],
          inputs,
        },
        ...rest,
      },
      ...(side === undefined
        ? []
        : [
            {
              code: 'slide-screw-bears',
              ...one('full and right out, bears on the first screw with', p.sideways, side, longer),
              worked: {
                rule: 'half the load × (1 + how far it stands ahead / screws apart), against K D², less where the thread is shorter than 7 D',
                sources: [(wood && lateralFigure(wood)?.source) ?? '', 'Wood Handbook, equation 8-13', MODEL],
                inputs,
              },
              ...rest,
            },
          ]),
    ];
  });
}
