import type { JsonPath } from '../diag/diagnostic.js';
import type { Joint, Part, Piece } from '../piece/piece.js';
import { compareMarks, markRanges } from '../words/markOrder.js';
import { partPath } from './bodies.js';
import type { Judgement, Verdict } from './check.js';

/** A judgement of one joint or part, before those that say the same are told as one. Marks, not yet in words. */
export interface Single extends Omit<Judgement, 'subject'> {
  readonly marks: readonly string[];
  /** What it meets: `T1 on F1`. */
  readonly on?: readonly string[];
  /** The entry of the definition that it is of: only those of one entry are told as one. */
  readonly of?: string;
}

const key = (s: Single): string =>
  JSON.stringify([
    s.code,
    s.of ?? '',
    s.verdict,
    s.about,
    s.remedy ?? '',
    Math.round(s.figure.value * 1e3),
    Math.round((s.limit?.value ?? 0) * 1e3),
    s.worked.rule,
    s.worked.inputs.map((i) => [i.quantity.of, Math.round(i.quantity.value * 1e3)]),
  ]);

/** Those that say the same of several subjects as one, sorted by subject, then code. */
export function grouped(singles: readonly Single[]): Judgement[] {
  const groups = new Map<string, Single[]>();
  for (const s of singles) {
    const own = key(s);
    const group = groups.get(own);
    if (group) group.push(s);
    else groups.set(own, [s]);
  }
  const out = [...groups.values()].map((all): Judgement => {
    const { marks: _marks, on: _on, of: _of, ...rest } = all[0] as Single;
    const on = markRanges(all.flatMap((s) => s.on ?? []));
    const subject = markRanges(all.flatMap((s) => s.marks)) + (on === '' ? '' : ` on ${on}`);
    return { ...rest, subject, touches: [...new Set(all.flatMap((s) => s.touches))].sort() };
  });
  return out.sort((p, q) => compareMarks(p.subject, q.subject) || (p.code < q.code ? -1 : p.code > q.code ? 1 : 0));
}

/** A room that must be kept: gone it fails; a tenth of it less than is wanted is only noted, for rules and wood are no nearer. */
export const atLeast = (figure: number, limit: number): Verdict =>
  figure < 0 ? 'fail' : figure < 0.9 * limit ? 'warning' : figure < limit - 1 ? 'note' : 'pass';

/** How many times over; at most 99, so that it stays a number. */
export const ratio = (over: number, under: number): number => Math.min(99, under > 0 ? Math.max(0, over) / under : 99);

/** A drawer's entry in the definition: the grid that it is of. */
const drawerEntry = (id: string): JsonPath => ['drawers', id.replace(/_\d+$/, '')];
/** Where the remedy for a joint would be typed: its entry, or the drawer that made it. */
export function jointPath(piece: Piece, joint: Joint): JsonPath {
  const drawer = piece.parts.find((p) => p.id === joint.entering)?.drawer;
  return joint.joint.includes('.') && drawer !== undefined ? drawerEntry(drawer) : ['joints', joint.joint];
}
/** A joint's entry; of those that drawers make, the same for every drawer. */
export const familyOf = (joint: Joint): string => joint.joint.replace(/^.*\./, '');

/** The entry that a part is of: its own, or its drawer's. */
export const partEntry = (part: Part): JsonPath =>
  part.drawer !== undefined ? drawerEntry(part.drawer) : partPath(part);
