import type { Diagnostic, JsonPath } from '../diag/diagnostic.js';
import { hasErrors } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { faceAxis, faceSign } from '../geom/axis.js';
import type { Vec3 } from '../geom/box.js';
import { nm } from '../lengths/length.js';
import type { Claim, Given, JointKind, Resolved, Site, Traits } from '../joints/joint.js';
import type { Cut } from '../words/cut.js';
import type { Frame } from '../words/mapCut.js';
import { follow, invert, mapCut, mapFace, mapPoint } from '../words/mapCut.js';
import type { Body } from './body.js';
import { sizesOf, toOwn } from './body.js';
import type { Findings } from './fault.js';
import { addCut, clash } from './merge.js';
import { carried } from './lean-cuts.js';
import type { Hardware, Joint } from './piece.js';
import { screwBody } from './screw.js';
import type { Placed } from './site.js';
import { withClaims } from './site.js';

/** One joint at one place, ready to be made. */
export interface Meet extends Placed {
  readonly kind: JointKind;
  readonly spec: Resolved;
  readonly entering: Body;
  readonly receiving: Body;
  /** Where it stands in the definition (a component's joint: the component). */
  readonly path: JsonPath;
}
interface Made {
  readonly meet: Meet;
  readonly site: Site;
  r: unknown;
  given: Given;
  yielded: boolean;
}
interface Taken {
  readonly joint: string;
  readonly site: string;
  readonly part: string;
  readonly rank: 1 | 2 | 3;
  readonly cut: Cut;
}
export interface JointsMade {
  readonly joints: Joint[];
  readonly hardware: Hardware[];
}

/** Most bought things in the joints of one piece (our default). */
export const MOST_HARDWARE = 1000;

/**
 * Makes all joints, those that run along a part first, then ends, then fasteners. A joint sees what lower ranks took; where
 * two of one rank want the same wood each may give way once. Cuts and growth are added to the bodies in their own axes.
 */
export function makeJoints(meets: readonly Meet[], findings: Findings): JointsMade {
  const taken = new Map<string, Taken[]>();
  const made: Made[] = [];
  for (const rank of [1, 2, 3] as const) {
    const batch = meets.filter((m) => m.kind.rank === rank).flatMap((m) => makeOne(m, taken, findings));
    // Far too many screws are refused as such: not held against one another one by one first.
    if (batch.reduce((n, one) => n + one.given.bodies.length, 0) <= MOST_HARDWARE) giveWay(batch, findings);
    for (const one of batch) {
      for (const t of takenBy(one)) taken.set(t.part, [...(taken.get(t.part) ?? []), t]);
      settle(one, findings);
    }
    made.push(...batch);
  }
  const order = new Map(meets.map((m, k) => [m.site.id, k]));
  made.sort((a, b) => (order.get(a.site.id) ?? 0) - (order.get(b.site.id) ?? 0));
  return { joints: made.map(jointOf), hardware: made.flatMap(hardwareOf) };
}

function makeOne(meet: Meet, taken: ReadonlyMap<string, readonly Taken[]>, findings: Findings): Made[] {
  const parts = [...new Set([meet.entering.id, meet.receiving.id])];
  const claims = parts.flatMap((id) => taken.get(id) ?? []).flatMap((t) => claimIn(t, meet));
  const site = withClaims(meet.site, claims);
  const { r, findings: found } = meet.kind.resolve(meet.spec, site);
  tell(found, meet, findings);
  if (hasErrors(found)) return [];
  const given = meet.kind.give(r, site);
  return [{ meet, site, r, given, yielded: false }];
}

/** From a part's own axes to a site's. */
const intoSite = (meet: Meet, part: Body): Frame =>
  meet.leans ? invert(meet.leans.own) : follow(invert(meet.frame), invert(toOwn(part)));
const outOfSite = (meet: Meet, part: Body): Frame => meet.leans?.own ?? follow(toOwn(part), meet.frame);
/** A cut of the site in a part's own axes; undefined where a leaning part cannot take it (its kind should not have given it). */
function inPart(cut: Cut, meet: Meet, part: Body): Cut | undefined {
  return meet.leans && part.id === meet.receiving.id
    ? carried(cut, meet.leans, sizesOf(part)[faceAxis(meet.leans.face)], meet.site.world.step)
    : mapCut(cut, outOfSite(meet, part));
}
const partOf = (meet: Meet, id: string): Body | undefined =>
  meet.entering.id === id ? meet.entering : meet.receiving.id === id ? meet.receiving : undefined;

function claimIn(t: Taken, meet: Meet): Claim[] {
  const part = partOf(meet, t.part);
  // What is in a part that the joint's axes lean in cannot be said in them.
  if (meet.leans && part?.id === meet.receiving.id) return [];
  return part ? [{ joint: t.joint, part: t.part, rank: t.rank, cut: mapCut(t.cut, intoSite(meet, part)) }] : [];
}

function takenBy(one: Made): Taken[] {
  const { meet, given, site } = one;
  const of = (part: Body, cuts: readonly Cut[]): Taken[] =>
    cuts.flatMap((given_) => {
      const cut = inPart(given_, meet, part);
      return cut ? [{ joint: site.joint, site: site.id, part: part.id, rank: meet.kind.rank, cut }] : [];
    });
  return [...of(meet.entering, given.entering), ...of(meet.receiving, given.receiving)];
}

interface Clash {
  readonly a: number;
  readonly b: number;
  readonly x: Taken;
  readonly y: Taken;
  readonly shared: boolean;
}
function clashesOf(batch: readonly Made[]): Clash[] {
  const sizes = new Map(batch.flatMap((m) => [m.meet.entering, m.meet.receiving]).map((b) => [b.id, sizesOf(b)]));
  const byPart = new Map<string, { readonly at: number; readonly taken: Taken }[]>();
  batch.forEach((one, at) => {
    for (const taken of takenBy(one)) {
      const list = byPart.get(taken.part);
      if (list) list.push({ at, taken });
      else byPart.set(taken.part, [{ at, taken }]);
    }
  });
  const out: Clash[] = [];
  for (const [part, list] of byPart)
    for (const [k, { at: a, taken: x }] of list.entries())
      for (const { at: b, taken: y } of list.slice(k + 1)) {
        const how = a === b ? 'no' : clash(x.cut, y.cut, sizes.get(part) ?? [0, 0, 0]);
        if (how !== 'no') out.push({ a, b, x, y, shared: how === 'shared' });
      }
  // In the order of the joints, then of their cuts: which clash is seen first decides how a joint gives way.
  return out
    .map((c, k) => ({ c, k }))
    .sort((p, q) => p.c.a - q.c.a || p.c.b - q.c.b || p.k - q.k)
    .map(({ c }) => c);
}

/** Equal ranks that overlap: each that can gives way once, seeing what the other took before either did. */
function giveWay(batch: readonly Made[], findings: Findings): void {
  for (const { a, b, x, y, shared } of clashesOf(batch)) {
    const [one, two] = [batch[a] as Made, batch[b] as Made];
    const first = tryYield(one, y, findings);
    const second = tryYield(two, x, findings);
    if (!first && !second && !shared) tellClash(one, two, x, findings);
  }
}

/** True when the joint has an answer to the clash. It gives way once; an answer that changes nothing does not count. */
function tryYield(one: Made, other: Taken, findings: Findings): boolean {
  const { kind } = one.meet;
  if (!kind.yield) return false;
  if (one.yielded) return true;
  const [claim] = claimIn(other, one.meet);
  if (!claim) return false;
  const answer = kind.yield(one.r, claim, one.site);
  if (isDiagnostic(answer)) tell([answer], one.meet, findings);
  else if (answer !== one.r) {
    one.yielded = true;
    one.r = answer;
    one.given = kind.give(answer, one.site);
  }
  return true;
}
const isDiagnostic = (x: unknown): x is Diagnostic =>
  typeof x === 'object' && x !== null && 'code' in x && 'severity' in x && 'message' in x;

function tellClash(one: Made, two: Made, x: Taken, findings: Findings): void {
  findings.error(
    'joints-clash',
    one.meet.path,
    `In "${x.part}" the joints ${one.site.id} and ${two.site.id} want the same wood.`,
    'Move one of them, make one shorter, or use a kind that can give way.',
    [x.part, one.site.id, two.site.id],
  );
}

/** A joint points at its entry in the definition; a component's joint has none, so its findings go to the component. */
function tell(found: readonly Diagnostic[], meet: Meet, findings: Findings): void {
  for (const d of found) {
    const own = d.path[0] === 'joints' && d.path[1] === meet.site.joint;
    findings.add(
      own && meet.path[0] !== 'joints'
        ? { ...d, path: meet.path }
        : own
          ? { ...d, path: [...meet.path, ...d.path.slice(2)] }
          : d,
    );
  }
}

function settle(one: Made, findings: Findings): void {
  const { meet, given } = one;
  tell(given.findings, meet, findings);
  for (const [part, cuts, growth] of [
    [meet.entering, given.entering, given.growth.entering],
    [meet.receiving, given.receiving, given.growth.receiving ?? {}],
  ] as const) {
    const out = outOfSite(meet, part);
    for (const given_ of cuts) {
      const cut = inPart(given_, meet, part);
      if (cut?.shape === 'tenon' && cut.slope) dropBevel(part.cuts, cut.end);
      if (cut) addCut(part.cuts, cut);
      else tellLeans(meet, findings);
    }
    // The shoulder box of a part whose end is bevelled goes on beyond the place where its middle meets the other.
    const over = meet.leans ? meet.site.entering.box[0][1] : 0;
    for (const [face, by] of Object.entries(growth)) grow(part, mapFace(out, face as Face), Math.max(0, by - over));
  }
}
/** The shoulder of a tenon stands where the bevel of that end was. */
function dropBevel(cuts: Cut[], end: Face): void {
  const axis = faceAxis(end);
  const k = cuts.findIndex((c) => c.shape === 'plane' && c.as === 'bevel' && c.normal[axis] * faceSign(end) > 0.5);
  if (k >= 0) cuts.splice(k, 1);
}
function tellLeans(meet: Meet, findings: Findings): void {
  const { entering, receiving, kind } = meet;
  findings.error(
    'joint-leans',
    meet.path,
    `${kind.words}: what it takes from "${receiving.id}" cannot be cut where "${entering.id}" leans against it.`,
    'Make it with screws square to the face, or as a mortise and tenon.',
    [entering.id, receiving.id],
  );
}
function grow(part: Body, face: Face, by: number): void {
  const ends = part.growth[faceAxis(face)];
  const k = faceSign(face) < 0 ? 0 : 1;
  ends[k] = Math.max(ends[k], by);
}

/** Traits with their faces as piece directions. */
const traitsIn = (frame: Frame, traits: Traits): Traits => ({
  ...traits,
  insertion: traits.insertion.map((f) => mapFace(frame, f)),
  ...(traits.held ? { held: { ...traits.held, from: mapFace(frame, traits.held.from) } } : {}),
});
function jointOf(one: Made): Joint {
  const { meet, site, given } = one;
  return {
    id: site.id,
    joint: site.joint,
    kind: meet.kind.kind,
    words: meet.kind.words,
    entering: meet.entering.id,
    receiving: meet.receiving.id,
    sizes: given.sizes,
    way: given.traits.insertion.map((f) => mapFace(meet.frame, f)),
    traits: traitsIn(meet.frame, given.traits),
  };
}
const distance = (p: Vec3, q: Vec3): number =>
  nm(Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2 + (q[2] - p[2]) ** 2));
function hardwareOf(one: Made): Hardware[] {
  const { meet, site, given } = one;
  return given.bodies.map((b, k) => {
    const at = meet.leans?.toPiece ?? ((p: Vec3): Vec3 => mapPoint(meet.frame, p));
    const [from, to] = [at(b.from), at(b.to)];
    return {
      id: `${site.id}.${b.kind}.${k + 1}`,
      kind: b.kind,
      name: b.name,
      body: screwBody(b, from, to),
      into: [meet.entering.id, meet.receiving.id],
      screw: { ...b.bought, length: distance(from, to), from, to, clamps: meet.entering.id, holds: meet.receiving.id },
    };
  });
}
