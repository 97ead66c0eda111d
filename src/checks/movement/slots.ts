import { AXIS_NAMES, faceOf } from '../../geom/axis.js';
import { snapUp } from '../../lengths/length.js';
import type { Table } from '../../making/table.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { compareMarks, markRanges } from '../../words/markOrder.js';
import { columns, mergedRows } from '../columns.js';
import type { Verdict } from '../check.js';
import { familyOf, jointPath, ratio, type Single } from '../grouped.js';
import type { Meeting } from '../standing.js';
import { heldAlong, slotsOf, type Moving, type Slot } from './context.js';
import { coefficientInput, MOVEMENT_SOURCE, seasonInputs } from './strain.js';

/** Which way and how far a screw goes in its slot, and what it is measured from. nm. */
interface Travel {
  readonly dry: number;
  readonly wet: number;
  /** From the line on which the two are fixed. */
  readonly from: number;
  readonly fixed: boolean;
  readonly by: readonly string[];
}

/** The part that moves more along the slot. */
function mover(m: Meeting, slot: Slot, moving: Moving): string {
  const { made, driest, wettest } = moving.season;
  const by = (id: string): number =>
    Math.max(...[driest, wettest].map((to) => Math.abs(moving.strain(id, slot.axis, made, to))));
  return by(m.r.part.id) >= by(m.e.part.id) ? m.r.part.id : m.e.part.id;
}

function travelOf(m: Meeting, slot: Slot, others: readonly Slot[], moving: Moving): Travel {
  const { made, driest, wettest } = moving.season;
  const { axis, at } = slot;
  const other = slot.in === m.e ? m.r : m.e;
  const shift = (to: number): number | undefined => {
    const field = moving.field(axis, made, to);
    if (!field.tied(other.part.id, slot.in.part.id)) return undefined;
    return field.shift(other.part.id, at) - field.shift(slot.in.part.id, at) + 0;
  };
  const [dry, wet] = [shift(driest), shift(wettest)];
  if (dry !== undefined && wet !== undefined) {
    const main = mover(m, slot, moving);
    const ties = moving.meetings.filter(
      (x) => (x.e.part.id === main || x.r.part.id === main) && heldAlong(x).includes(axis),
    );
    const lines = moving.ties[axis].filter((t) => ties.some((x) => x.joint.id === t.id));
    const line = lines[0]?.at ?? at;
    const by = ties.map((x) => (x.e.part.id === main ? x.r.part.mark : x.e.part.mark));
    return { dry, wet, from: at - line, fixed: true, by: [...new Set(by)].sort() };
  }
  // Nothing fixes it: it goes about the middle of all its slots.
  const middle = (Math.min(...others.map((s) => s.at)) + Math.max(...others.map((s) => s.at))) / 2;
  const free = (to: number): number =>
    (moving.strain(other.part.id, axis, made, to) - moving.strain(slot.in.part.id, axis, made, to)) * (at - middle) + 0;
  return { dry: free(driest), wet: free(wettest), from: at - middle, fixed: false, by: [] };
}

/** Slots with what their screws travel to the driest and to the wettest, from where they stand as made. */
export function slotSeasons(moving: Moving): Table {
  const { piece } = moving;
  const all = moving.meetings.map((m) => ({ m, own: slotsOf(m) })).filter(({ own }) => own.length > 0);
  const fine = (v: number): string => sayQuantity(quantity('fine', Math.abs(v)), piece.units);
  const rows = all.flatMap(({ m, own }) => {
    const main = own[0] && mover(m, own[0], moving);
    const others = all.filter((x) => [x.m.e.part.id, x.m.r.part.id].includes(main ?? '')).flatMap((x) => x.own);
    return own.map((slot) => {
      const t = travelOf(m, slot, others, moving);
      const length = sayQuantity(quantity('length', slot.length), piece.units);
      const cells = [m.r.part.mark, AXIS_NAMES[slot.axis], length, fine(t.dry), fine(t.wet)];
      return { mark: m.e.part.mark, cells };
    });
  });
  return {
    id: 'slots-through-the-year',
    columns: columns(
      ['part', 'Part<'],
      ['on', 'On<'],
      ['way', 'Runs<'],
      ['slot', 'Slot'],
      ['dry', 'To driest'],
      ['wet', 'To wettest'],
    ),
    rows: mergedRows(
      rows.sort((p, q) => compareMarks(p.mark, q.mark)),
      (marks) => markRanges([...new Set(marks)]),
    ),
  };
}

/** Every slot of every joint: the travel that the season asks of it, each way, against the room it gives. */
export function slots(moving: Moving): Single[] {
  const all = moving.meetings.map((m) => ({ m, own: slotsOf(m) })).filter(({ own }) => own.length > 0);
  return all.flatMap(({ m, own }): Single[] => {
    const main = own[0] && mover(m, own[0], moving);
    const others = all.filter((x) => [x.m.e.part.id, x.m.r.part.id].includes(main ?? '')).flatMap((x) => x.own);
    const singles = own.map((slot) => judge(m, slot, travelOf(m, slot, others, moving), moving));
    // One for the joint: its tightest slot.
    const tightest = [...singles].sort((p, q) => (p.margin ?? 0) - (q.margin ?? 0))[0];
    return tightest ? [tightest] : [];
  });
}

function judge(m: Meeting, slot: Slot, t: Travel, moving: Moving): Single {
  const { piece } = moving;
  const shank = slot.cut.diameter;
  const [most, least] = [Math.max(t.dry, t.wet, 0), Math.min(t.dry, t.wet, 0)];
  const centred = snapUp(shank + 2 * Math.max(most, -least), piece.step);
  const both = snapUp(shank + most - least, piece.step);
  // Where the screw stands as made so that the least slot will do: as much further one way as the other way is longer.
  const off = (most + least) / 2;
  const room: Verdict = slot.length >= centred ? 'pass' : slot.length >= both ? 'warning' : 'fail';
  const verdict: Verdict = room === 'pass' && !t.fixed ? 'note' : room;
  const fig = (of: 'length' | 'fine', v: number): string => sayQuantity(quantity(of, v), piece.units);
  const back = faceOf(slot.axis, off > 0 ? -1 : 1).toUpperCase();
  const remedy =
    verdict === 'note'
      ? 'Fix it along one line by round holes, in front or in the middle, so that it does not wander.'
      : verdict === 'warning'
        ? `Cut the slot ${fig('length', centred)} long, or set the screw ${fig('fine', Math.abs(off))} from the middle of it towards ${back}.`
        : `Cut the slot ${fig('length', centred)} long, the screw in the middle of it.`;
  return {
    code: 'slot-short',
    verdict,
    marks: [m.e.part.mark],
    on: [m.r.part.mark],
    of: familyOf(m.joint),
    about: t.fixed
      ? `slides ${AXIS_NAMES[slot.axis]} in slots of`
      : `slides ${AXIS_NAMES[slot.axis]}, nothing fixes it, in slots of`,
    figure: quantity('length', slot.length),
    limit: quantity('length', centred),
    margin: ratio(slot.length, centred),
    ...(verdict === 'pass' ? {} : { remedy }),
    worked: {
      rule: t.fixed
        ? `screw + 2 × the larger travel; travel = shift of the one part − shift of the other, from the line where they are fixed${t.by.length > 0 ? ` (${t.by.join(' ')})` : ''}`
        : 'screw + 2 × the larger travel, about the middle of all slots: no joint fixes the part',
      sources: [MOVEMENT_SOURCE, 'slot as long as the movement and the screw: common practice'],
      inputs: [
        { name: 'hole for the screw', quantity: quantity('length', shank) },
        { name: 'from the fixed line', quantity: quantity('length', t.from) },
        ...[m.e, m.r].flatMap((s) => coefficientInput(piece, s.part, s.own[slot.axis])),
        ...seasonInputs(moving.season),
        { name: 'travel to the driest', quantity: quantity('fine', t.dry) },
        { name: 'travel to the wettest', quantity: quantity('fine', t.wet) },
        { name: 'screw off the middle for the shortest slot', quantity: quantity('fine', 0 - off + 0) },
        { name: 'shortest slot', quantity: quantity('length', both) },
      ],
    },
    touches: [m.joint.id, m.e.part.id, m.r.part.id],
    path: jointPath(piece, m.joint),
  };
}
