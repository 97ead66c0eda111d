import { cosine, sine, tangent } from '../geom/angle.js';
import { AXES, faceAxis, faceSign, inFace, opposite, others, third } from '../geom/axis.js';
import type { Axis, Face } from '../geom/axis.js';
import { byAxis, span, withSpan } from '../geom/box.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import type { Outline, Recipe } from '../geom/recipe.js';
import type { ParsedCard } from '../words/card.js';
import type { BareCut } from '../words/say.js';

/** How far a tool reaches out of the wood where nothing limits it, nm. */
const OUT = 2_000_000;
type Of<S extends BareCut['shape']> = Extract<BareCut, { shape: S }>;

/** The part that a card's words describe: its blank less what each callout takes away. nm, blank's low corner at the origin. */
export function rebuild(card: ParsedCard): Recipe {
  const { blank } = card.frame;
  const tools = card.cuts.flatMap((c) => removed(c, blank));
  const from: Recipe = { op: 'box', at: blank };
  return tools.length === 0 ? from : { op: 'cut', from, tools };
}
/** What one cut takes, as a maker would see it go; nothing for a pencil line. */
export function removed(cut: BareCut, blank: Box3): Recipe[] {
  switch (cut.shape) {
    case 'box':
      return [cut.slants ? leaningBox(cut.at, cut.slants) : { op: 'box', at: cut.at }];
    case 'dovetail':
      return [wedge(blank, cut.face, cut.depth, cut.taper, cut.atFace, cut.atFloor, cut.run, cut.runSpan)];
    case 'tails':
      return waste(
        blank,
        cut.end,
        cut.base,
        cut.tails.map((t) => tail(cut, t, blank)),
      );
    case 'tenon':
      if (cut.slope) return slopingWaste(cut, cut.slope, blank);
      return waste(
        blank,
        cut.end,
        cut.shoulder,
        cut.tongues.map((t) => tongue(cut, t)),
      );
    case 'taper':
      return [taper(cut, blank)];
    case 'arc':
      return [segment(cut, blank)];
    case 'bore':
      return bore(cut, blank);
    case 'arris':
      return [arris(cut, blank)];
    case 'outline':
      return [{ op: 'cut', from: { op: 'box', at: grown(blank) }, tools: [plate(cut.face, cut.keep, blank)] }];
    case 'plane':
      return beyondPlane(cut, blank);
    case 'mark':
      return [];
  }
}
const grown = (b: Box3): Box3 => byAxis((a): Span => [b[a][0] - OUT, b[a][1] + OUT]);
const at = (b: Box3, face: Face): number => b[faceAxis(face)][faceSign(face) > 0 ? 1 : 0];
/** A point `deep` in from a face. */
const inward = (b: Box3, face: Face, deep: number): number => at(b, face) - faceSign(face) * deep;
const point = (values: readonly (readonly [Axis, number])[]): Vec3 => {
  const out: [number, number, number] = [0, 0, 0];
  for (const [a, v] of values) out[a] = v;
  return out;
};
/** The hull of a section given at both ends of a run. */
const pushed = (section: readonly (readonly (readonly [Axis, number])[])[], axis: Axis, s: Span): Recipe => ({
  op: 'hull',
  points: s.flatMap((end) => section.map((corner) => point([...corner, [axis, end]]))),
});

/** A trapezoid sunk from a face: the hull of its mouth and its floor. */
function wedge(
  b: Box3,
  face: Face,
  depth: number,
  taper: Axis,
  mouth: Span,
  floor: Span,
  run: Axis,
  over: Span,
): Recipe {
  const deep = faceAxis(face);
  const low = inward(b, face, depth);
  const corners = [
    ...mouth.map((t) => [[deep, at(b, face)] as const, [taper, t] as const]),
    ...floor.map((t) => [[deep, low] as const, [taper, t] as const]),
  ];
  return pushed(corners, run, over);
}
/** All beyond a line at an end goes, but for what stays. */
function waste(b: Box3, end: Face, line: number, stays: readonly Recipe[]): Recipe[] {
  const beyond = withSpan(grown(b), faceAxis(end), span(line, at(b, end) + faceSign(end) * OUT));
  const box: Recipe = { op: 'box', at: beyond };
  return [stays.length === 0 ? box : { op: 'cut', from: box, tools: stays }];
}
/** A box whose sides were moved along themselves, as its marks on the wood say: side by side, the hull of what is left. */
function leaningBox(box: Box3, slants: NonNullable<Of<'box'>['slants']>): Recipe {
  const points = box[0].flatMap((x) => box[1].flatMap((y) => box[2].map((z): [number, number, number] => [x, y, z])));
  const moved = points.map((p) => {
    const out: [number, number, number] = [...p];
    for (const s of slants) {
      const axis = faceAxis(s.of);
      const there = faceSign(s.of) < 0 ? Math.min(...box[axis]) : Math.max(...box[axis]);
      if (p[axis] === there) out[faceAxis(s.toward)] += s.by * faceSign(s.toward);
    }
    return out;
  });
  return { op: 'hull', points: moved };
}
/** All outside a sloping shoulder but for the tongues, which come out of the wood behind it. */
function slopingWaste(c: Of<'tenon'>, normal: Vec3, b: Box3): Recipe[] {
  const along = faceAxis(c.end);
  const through = byAxis((a) => (a === along ? c.shoulder : (b[a][0] + b[a][1]) / 2));
  const stays = c.tongues.map((t): Recipe => {
    const whole = tongue(c, t);
    const back = at(b, opposite(c.end));
    return whole.op === 'box'
      ? { op: 'box', at: withSpan(whole.at, along, span(back, c.shoulder + faceSign(c.end) * t.length)) }
      : whole;
  });
  return beyondPlane({ point: through, normal }, b).map((from) => ({ op: 'cut', from, tools: stays }));
}
function tail(c: Of<'tails'>, t: Of<'tails'>['tails'][number], b: Box3): Recipe {
  const along = faceAxis(c.end);
  const corners = [
    ...t.atBase.map((v) => [[along, c.base] as const, [c.taper, v] as const]),
    ...t.atEnd.map((v) => [[along, at(b, c.end)] as const, [c.taper, v] as const]),
  ];
  return pushed(corners, third(along, c.taper), c.keep);
}
function tongue(c: Of<'tenon'>, t: Of<'tenon'>['tongues'][number]): Recipe {
  const along = faceAxis(c.end);
  const [p, q] = others(along);
  const sign = faceSign(c.end);
  const tip = c.shoulder + sign * t.length;
  // Words of a haunch tell a square end; only tenons are mitred.
  if (!c.mitre || t.haunch) {
    const box: [Span, Span, Span] = [t.a, t.b, t.a];
    box[along] = span(c.shoulder, tip);
    box[p] = t.a;
    box[q] = t.b;
    return { op: 'box', at: box };
  }
  // Mitred at 45 degrees: as much shorter at the far side as the tongue is thick, but never behind the shoulder.
  const across = faceAxis(c.mitre.long);
  const thick = across === p ? t.a : t.b;
  const other = across === p ? q : p;
  const toward = faceSign(c.mitre.long);
  const [long, short] = toward > 0 ? [thick[1], thick[0]] : [thick[0], thick[1]];
  const less = Math.min(t.length, thick[1] - thick[0]);
  const corners = [
    [c.shoulder, long],
    [tip, long],
    [tip - sign * less, long - toward * less],
    ...(less === t.length ? [] : [[c.shoulder, short]]),
  ].map(([d, v]) => [[along, d as number] as const, [across, v as number] as const]);
  return pushed(corners, other, other === q ? t.b : t.a);
}
function taper(c: Of<'taper'>, b: Box3): Recipe {
  const [deep, along] = [faceAxis(c.face), faceAxis(c.end)];
  const corners = (
    [
      [c.begin, at(b, c.face)],
      [at(b, c.end), at(b, c.face)],
      [at(b, c.end), inward(b, c.face, c.off)],
    ] as const
  ).map(([a, d]) => [[along, a] as const, [deep, d] as const]);
  return pushed(corners, third(deep, along), grown(b)[third(deep, along)]);
}

/** A prism over points (u, v) in the plane square to `axis`, u and v its rising axes. */
const prism = (axis: Axis, over: Span, outline: Outline): Recipe => ({
  op: 'prism',
  axis,
  outlines: [anticlockwise(outline)],
  from: over[0],
  to: over[1],
});
/** Turns an outline the other way about where its area (arcs by their chords) is negative. */
function anticlockwise(o: Outline): Outline {
  const n = o.length;
  const corner = (i: number): readonly [number, number] => (o[(i + n) % n] as Outline[number]).to;
  const bulgeAt = (i: number): number => (o[(i + n) % n] as Outline[number]).bulge ?? 0;
  const area = o.reduce((sum, _, i) => {
    const [a, z] = [corner(i - 1), corner(i)];
    const chord = (z[0] - a[0]) ** 2 + (z[1] - a[1]) ** 2;
    // Area between an arc and its chord, near enough for a sign: two thirds of chord times rise.
    return sum + (a[0] * z[1] - a[1] * z[0]) / 2 + (bulgeAt(i) * chord) / 3;
  }, 0);
  if (area >= 0) return o;
  return o.map((_, i) => {
    const bulge = -bulgeAt(n - i);
    const to = corner(n - 1 - i);
    return bulge === 0 ? { to } : { to, bulge };
  });
}
const uv = (axis: Axis, p: Axis, x: number, y: number): readonly [number, number] =>
  others(axis)[0] === p ? [x, y] : [y, x];
const arcTo = (to: readonly [number, number], bulge: number): Outline[number] => ({ to, bulge });

/** An arc into an edge: chord on the face, its middle `rise` inside. */
function segment(c: Of<'arc'>, b: Box3): Recipe {
  const deep = faceAxis(c.face);
  const axis = third(deep, c.along);
  const [lo, hi] = c.over;
  const f = at(b, c.face);
  // With `along` to the right the way back from high to low bulges up when its bulge is positive.
  const up = ((2 * c.rise) / (hi - lo)) * -faceSign(c.face);
  const straight = others(axis)[0] === c.along;
  const outline = [{ to: uv(axis, c.along, hi, f) }, arcTo(uv(axis, c.along, lo, f), straight ? up : -up)];
  return prism(axis, grown(b)[axis], outline);
}
function arris(c: Of<'arris'>, b: Box3): Recipe {
  const [f, g] = c.faces;
  const [p, q] = [faceAxis(f), faceAxis(g)];
  const axis = third(p, q);
  const to = (df: number, dg: number): readonly [number, number] => uv(axis, p, inward(b, f, df), inward(b, g, dg));
  // A quarter of a circle: tan(90 / 4 degrees).
  const quarter = tangent(22.5);
  const turn = faceSign(f) * faceSign(g) * (others(axis)[0] === p ? 1 : -1);
  const bulge = c.as === 'chamfer' ? 0 : c.as === 'round-over' ? -quarter * turn : quarter * turn;
  const back = bulge === 0 ? { to: to(0, c.size) } : arcTo(to(0, c.size), bulge);
  return prism(axis, c.over, [{ to: to(0, 0) }, { to: to(c.size, 0) }, back]);
}
const plate = (face: Face, keep: Outline, b: Box3): Recipe => {
  const axis = faceAxis(face);
  return prism(axis, [b[axis][0] - 2 * OUT, b[axis][1] + 2 * OUT], keep);
};

/** Hole, slot and seat, upright about the origin, then turned and moved to the mouth. */
function bore(c: Of<'bore'>, b: Box3): Recipe[] {
  const axis = faceAxis(c.face);
  const degrees = c.tilt?.degrees ?? 0;
  const thick = b[axis][1] - b[axis][0];
  const widest = Math.max(c.diameter, c.seat?.diameter ?? 0, c.slot?.length ?? 0);
  const out = OUT + Math.ceil(widest * Math.abs(tangent(degrees)));
  const deep = c.depth === 'through' ? thick / cosine(degrees) + out : c.depth;
  const s = faceSign(c.face);
  const shaft = (diameter: number, depth: number, longer: number): Recipe => {
    const over = span(s * out, -s * depth);
    if (!c.slot) return { op: 'turned', axis, centre: [0, 0, 0], profile: over.map((v) => [diameter / 2, v] as const) };
    const half = Math.max(0, (c.slot.length + longer - diameter) / 2);
    return stadium(axis, c.slot.axis, half, diameter / 2, over);
  };
  const holes = [shaft(c.diameter, deep, 0)];
  if (c.seat) holes.push(shaft(c.seat.diameter, c.seat.depth, c.seat.diameter - c.diameter));
  const [p, q] = inFace(c.face);
  const origin = point([
    [axis, at(b, c.face)],
    [p, c.at[0]],
    [q, c.at[1]],
  ]);
  const rotation = leaning(c.face, c.tilt?.toward ?? c.face, degrees);
  return holes.map((of) => ({ op: 'placed', by: { rotation, origin }, of }));
}
function stadium(axis: Axis, long: Axis, half: number, r: number, over: Span): Recipe {
  const to = (x: number, y: number): readonly [number, number] => uv(axis, long, x, y);
  const turn = others(axis)[0] === long ? 1 : -1;
  return prism(axis, over, [
    { to: to(half, -r) },
    arcTo(to(half, r), turn),
    { to: to(-half, r) },
    arcTo(to(-half, -r), turn),
  ]);
}
/** The turn that takes the way into a face toward a side by some degrees: Rodrigues' formula for two square axes. */
function leaning(face: Face, toward: Face, degrees: number): readonly [Vec3, Vec3, Vec3] {
  const [a, t] = [faceAxis(face), faceAxis(toward)];
  if (degrees === 0 || a === t) return byAxis((r) => byAxis((k) => (r === k ? 1 : 0)));
  const into = faceSign(opposite(face));
  const side = faceSign(toward);
  const rows = byAxis((r) => byAxis((k): number => (r === k ? 1 : 0)));
  const [c, s] = [cosine(degrees), sine(degrees)];
  rows[a][a] = c;
  rows[t][t] = c;
  rows[t][a] = s * into * side;
  rows[a][t] = -s * into * side;
  return rows;
}

/** What of the blank lies beyond a plane: its corners there, and where its arrises cross. */
function beyondPlane(c: Pick<Of<'plane'>, 'point' | 'normal' | 'within'>, b: Box3): Recipe[] {
  const box = c.within ?? grown(b);
  const high = (v: Vec3): number => AXES.reduce<number>((sum, a) => sum + c.normal[a] * (v[a] - c.point[a]), 0);
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i): Vec3 => byAxis((a) => box[a][((i >> a) & 1) as 0 | 1]));
  if (!corners.some((v) => high(v) > 0)) return [];
  const points = corners.filter((v) => high(v) >= 0);
  for (const v of corners) {
    for (const w of corners) {
      const differ = AXES.filter((a) => v[a] !== w[a]);
      if (differ.length !== 1 || high(v) <= 0 || high(w) >= 0) continue;
      const k = high(v) / (high(v) - high(w));
      points.push(byAxis((a) => v[a] + k * (w[a] - v[a])));
    }
  }
  return [{ op: 'hull', points }];
}
