import { need } from '../../data/printed.js';
import { CABINET_LOADS, SHELF_LOADS, SHELF_MOST } from '../../data/tables/shelves.js';
import { meet, width, type Box3, type Span } from '../../geom/box.js';
import { inches, mm } from '../../lengths/length.js';
import type { Piece, Use } from '../../piece/piece.js';
import { densityOf } from '../../wood/mass.js';
import type { PartBody } from '../bodies.js';
import { FILL, type DrawerRoom } from '../drawerRoom.js';
import { contactOf } from '../standing.js';
import { GRAVITY } from '../tipping.js';
import type { Input } from '../check.js';
import { quantity } from '../../value/quantity.js';
import { LEVEL, nmBox, type Frame, type Member } from './frame.js';
import { FOOT_M, POUND_KG } from '../../lengths/units.js';

const PSF = (POUND_KG * GRAVITY) / FOOT_M ** 2;
/** Shelves: for books, for all else, and the most on one shelf. */
const SHELF = {
  books: need(SHELF_LOADS, 'books', 'load', PSF),
  other: need(SHELF_LOADS, 'other', 'load', PSF),
  most: need(SHELF_MOST, 'shelf', 'load', POUND_KG * GRAVITY),
};
/** Books and paper fill the room over a shelf at about this density at most, kg/m3: 50 lb/ft3, our default: 12 in high is the load of books. */
const STUFF = (50 * POUND_KG) / FOOT_M ** 3;
/** Bottoms of drawers. */
const BOTTOM = need(CABINET_LOADS, 'drawer', 'load', PSF);
/** Somebody who sits down: our default. */
const SITTER = 100;
/** A flat part narrower than this bears nothing of its own, unless it is said: our default. */
const NARROW = inches(4);
/** What lies this close over a part covers it, nm: our default. */
const COVER = mm(25);

/** A load on a member: over a plan region (nm), how much of it (N), and how much of that stays for years. */
export interface Load {
  readonly region: Box3;
  readonly newtons: number;
  readonly lasting: number;
  /** It is put on the part itself, not handed on by another. */
  readonly put?: true;
  readonly input: Input;
}

const planArea = (m: Member): number => width(m.box[0]) * width(m.box[1]) * 1e-18;

/** Its own weight, as a load over all of it. */
export function selfWeight(piece: Piece, m: Member): Load {
  const stock = piece.stocks[m.part.stock];
  const rho = (stock && densityOf(stock)) ?? 0;
  const newtons = planArea(m) * width(m.box[2]) * 1e-9 * rho * GRAVITY;
  return {
    region: m.box,
    newtons,
    lasting: newtons,
    input: { name: 'its own weight', quantity: quantity('force', newtons) },
  };
}

/** What covers a member from close above: another part that lies, or a drawer. */
function covers(f: Frame, m: Member, rooms: readonly DrawerRoom[]): boolean {
  const over = (box: Box3): boolean => {
    const gap = box[2][0] - m.box[2][1];
    if (gap < -COVER / 5 || gap > COVER) return false;
    const shared = LEVEL.map((a) => Math.min(box[a][1], m.box[a][1]) - Math.max(box[a][0], m.box[a][0]));
    return shared.every((s) => s > 0) && (shared[0] as number) * (shared[1] as number) * 1e-18 > planArea(m) / 2;
  };
  const lying = f.members.filter((o) => o !== m && o.lies === 'flat' && o.part.drawer === undefined);
  return lying.some((o) => over(o.box)) || rooms.some((r) => over(nmBox(r.bounds)));
}

/** What is put on a part by use: as said, else the published figure for what it is. */
export function useLoads(f: Frame, m: Member, rooms: readonly DrawerRoom[]): Load[] {
  const { use } = f.piece;
  if (m.part.drawer !== undefined) return m.lies === 'flat' ? [bottomLoad(m, rooms)] : [];
  const said = use?.loads[m.part.id];
  if (said) return saidLoads(m, said);
  const wide = Math.min(width(m.box[0]), width(m.box[1])) >= NARROW;
  if (m.lies !== 'flat' || !wide || covers(f, m, rooms)) return [];
  if (use?.kind === 'seat') return [pointLoad(m, SITTER, 0, 'somebody sits down', 'our default')];
  const usual = use?.kind === 'books' ? SHELF.books : SHELF.other;
  const room = roomOver(f, m) * 1e-9 * STUFF * GRAVITY;
  const pascals = Math.min(usual.value, room);
  const newtons = Math.min(SHELF.most.value, pascals * planArea(m));
  const full = pascals < usual.value;
  const stays = use?.kind !== 'table' && use?.kind !== 'desk';
  const input: Input =
    newtons === SHELF.most.value
      ? { name: 'load, the most on one shelf', quantity: quantity('force', newtons), source: SHELF.most.source }
      : {
          name: full ? 'load, the room over it full' : use?.kind === 'books' ? 'load, books' : 'load',
          quantity: quantity('area load', pascals),
          source: full ? 'our default, 50 lb/ft³' : usual.source,
        };
  return [{ region: m.box, newtons, lasting: stays ? newtons : 0, input }];
}
/** Clear height to what lies over a member, nm. */
function roomOver(f: Frame, m: Member): number {
  const over = f.members
    .filter((o) => o !== m && o.lies === 'flat' && o.part.drawer === undefined && o.box[2][0] >= m.box[2][1])
    .filter((o) => LEVEL.every((a) => meet(o.box[a], m.box[a]) !== undefined))
    .filter((o) => LEVEL.every((a) => width(meet(o.box[a], m.box[a]) ?? [0, 0]) >= width(m.box[a]) / 2));
  return Math.min(Infinity, ...over.map((o) => o.box[2][0] - m.box[2][1]));
}
const pointLoad = (m: Member, kg: number, lasting: number, name: string, source: string): Load => {
  const at = (s: Span): Span => [(s[0] + s[1]) / 2, (s[0] + s[1]) / 2];
  return {
    region: [at(m.box[0]), at(m.box[1]), m.box[2]],
    newtons: kg * GRAVITY,
    lasting: lasting * kg * GRAVITY,
    input: { name, quantity: quantity('mass', kg), source },
  };
};
function saidLoads(m: Member, said: Use['loads'][string]): Load[] {
  const { pascals, kilograms } = said;
  const newtons = (pascals ?? 0) * planArea(m);
  return [
    ...(pascals === undefined
      ? []
      : [
          {
            region: m.box,
            newtons,
            lasting: newtons,
            input: { name: 'load, as said', quantity: quantity('area load', pascals), source: 'definition' },
          },
        ]),
    ...(kilograms === undefined ? [] : [pointLoad(m, kilograms, 1, 'load at its middle, as said', 'definition')]),
  ];
}
/** A drawer's bottom: 15 lb/ft2, or what its room holds where that is more. */
function bottomLoad(m: Member, rooms: readonly DrawerRoom[]): Load {
  const room = rooms.find((r) => r.drawer.id === m.part.drawer);
  const fill = room ? FILL * room.volume * GRAVITY : 0;
  const plain = BOTTOM.value * planArea(m);
  const newtons = Math.max(fill, plain);
  const input: Input =
    fill > plain
      ? { name: 'clothes, 8.5 lb/ft³ of drawer', quantity: quantity('force', fill) }
      : { name: 'load in a drawer', quantity: quantity('area load', BOTTOM.value), source: BOTTOM.source };
  return { region: m.box, newtons, lasting: Math.min(newtons, fill), input };
}

/** Drawers, full, on what bears them: slides on the part that they are screwed to, others on the part below. */
export function drawerLoads(f: Frame, rooms: readonly DrawerRoom[]): (readonly [Member, Load])[] {
  const still = f.members.filter((m) => m.part.drawer === undefined);
  return rooms.flatMap((r) => {
    const newtons = (r.kg + FILL * r.volume) * GRAVITY;
    const slides = f.piece.hardware.flatMap((h) =>
      h.kind === 'slide' && h.drawer === r.drawer.id && h.body.op === 'box' ? [h.body.at] : [],
    );
    const share = (region: Box3, n: number): Load => ({
      region,
      newtons: n,
      lasting: n,
      input: { name: `of ${r.drawer.mark}, full`, quantity: quantity('force', n) },
    });
    if (slides.length > 0)
      return slides.flatMap((box) => {
        const on = still.find((m) => contactOf(box, m.box)?.normal?.axis === 0);
        return on ? [[on, share(box, newtons / slides.length)] as const] : [];
      });
    const box = nmBox(r.bounds);
    const under = still.find((m) => {
      const c = contactOf([box[0], box[1], [box[2][0] - COVER / 25, box[2][0]]], m.box);
      return m.lies === 'flat' && c !== undefined && m.box[2][1] <= box[2][0] + COVER / 25;
    });
    return under ? [[under, share(box, newtons)] as const] : [];
  });
}

/** Weight of what stands upright, to be borne by what it stands on. */
export const uprightWeights = (f: Frame, bodies: readonly PartBody[]): (readonly [Member, Load])[] =>
  f.members.flatMap((m) => {
    if (m.lies !== 'upright' || m.part.drawer !== undefined) return [];
    const kg = bodies.find((b) => b.part.id === m.part.id)?.kg ?? 0;
    const newtons = kg * GRAVITY;
    return [
      [
        m,
        {
          region: m.box,
          newtons,
          lasting: newtons,
          input: { name: m.part.mark, quantity: quantity('force', newtons) },
        },
      ] as const,
    ];
  });
