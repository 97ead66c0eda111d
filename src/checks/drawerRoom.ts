import { need } from '../data/printed.js';
import { CLOTHES_TESTS } from '../data/tables/clothing-storage.js';
import type { Span, Vec3 } from '../geom/box.js';
import { byAxis, middle, width, type Box3 } from '../geom/box.js';
import type { Drawer, Piece } from '../piece/piece.js';
import { toMm } from '../lengths/length.js';
import { boundsOf, centreOf, massOf, type PartBody } from './bodies.js';
import { FOOT_M, POUND_KG } from '../lengths/units.js';

/** A drawer as it is weighed and pulled out. mm, kg, m3, piece axes. */
export interface DrawerRoom {
  readonly drawer: Drawer;
  readonly bodies: readonly PartBody[];
  readonly kg: number;
  readonly centre: Vec3;
  readonly bounds: Box3;
  /** What can be filled: between its sides, front and back, from the bottom to the top of its lowest wall. */
  readonly room: Box3;
  readonly volume: number;
  /** How far it comes out, and what says so. */
  readonly travel: number;
  readonly why: string;
  readonly slides: boolean;
}

/** Share of its box that a drawer without slides comes out: nothing holds it, so this is where a test would stop. */
export const LOOSE_TRAVEL = 2 / 3;

export function drawerRooms(piece: Piece, bodies: readonly PartBody[]): DrawerRoom[] {
  return piece.drawers.flatMap((drawer): DrawerRoom[] => {
    const own = bodies.filter((b) => drawer.parts.includes(b.part.id));
    if (own.length === 0) return [];
    const room = roomOf(own);
    const out = travelOf(piece, drawer, own);
    return [
      {
        drawer,
        bodies: own,
        kg: massOf(own),
        centre: centreOf(own),
        bounds: boundsOf(own),
        room,
        volume: byAxis((a) => Math.max(0, width(room[a])) / 1000).reduce((x, y) => x * y, 1),
        ...out,
      },
    ];
  });
}

/** Upright walls by which way they face; the bottom is what lies flat. */
function roomOf(own: readonly PartBody[]): Box3 {
  const all = boundsOf(own);
  const walls = (axis: 0 | 1): readonly PartBody[] => own.filter((b) => b.part.thickness === axis);
  const between = (axis: 0 | 1): Span => {
    const centre = middle(all[axis]);
    const low = walls(axis).filter((b) => middle(b.bounds[axis]) < centre);
    const high = walls(axis).filter((b) => middle(b.bounds[axis]) >= centre);
    return [
      Math.max(all[axis][0], ...low.map((b) => b.bounds[axis][1])),
      Math.min(all[axis][1], ...high.map((b) => b.bounds[axis][0])),
    ];
  };
  const floors = own.filter((b) => b.part.thickness === 2).map((b) => b.bounds[2][1]);
  const tops = [...walls(0), ...walls(1)].map((b) => b.bounds[2][1]);
  const up: Span = [
    Math.min(...(floors.length > 0 ? floors : [all[2][0]])),
    Math.min(...(tops.length > 0 ? tops : [all[2][1]])),
  ];
  return [between(0), between(1), up[1] > up[0] ? up : [up[0], up[0]]];
}

function travelOf(
  piece: Piece,
  drawer: Drawer,
  own: readonly PartBody[],
): Pick<DrawerRoom, 'travel' | 'why' | 'slides'> {
  const slides = piece.hardware.flatMap((h) =>
    h.kind === 'slide' && h.drawer === drawer.id && h.body.op === 'box' ? [toMm(width(h.body.at[1]))] : [],
  );
  if (slides.length > 0)
    return {
      travel: Math.max(...slides),
      why: 'slides of full extension: it comes out by their length',
      slides: true,
    };
  const box = own.filter((b) => b.part.thickness !== 1);
  return {
    travel: LOOSE_TRAVEL * width(boundsOf(box.length > 0 ? box : own)[1]),
    why: 'no slides: two thirds of its box',
    slides: false,
  };
}

const fill = need(CLOTHES_TESTS, 'fill', 'value', POUND_KG / FOOT_M ** 3);
/** Clothes in a drawer, kg/m3: 8.5 lb/ft3. */
export const FILL = fill.value;
export const FILL_SOURCE = `${fill.source}: 8.5 lb/ft³ of drawer`;
