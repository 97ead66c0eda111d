import type { HoleSpec, Length_, ShapeSpec } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Axis, Face } from '../geom/axis.js';
import { AXIS_NAMES, FACES, faceAxis, faceSign, inFace, others, third } from '../geom/axis.js';
import type { Box3, Span, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import type { Outline, Stretch } from '../geom/recipe.js';
import type { Sized } from '../value/sized.js';
import type { Cut, CutCommon } from '../words/cut.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';

/** A part's shoulder size along its own axes, nm, and where to tell what is wrong. */
export interface ShapeContext {
  readonly part: string;
  readonly size: Vec3;
  readonly length: Axis;
  readonly ev: Evaluator;
  readonly findings: Findings;
}

/** Shapes and holes of a part as cuts in its own axes. What cannot be made is told and left out. */
export function shapeCuts(shapes: readonly ShapeSpec[], path: JsonPath, ctx: ShapeContext): Cut[] {
  return shapes.flatMap((s, k) => {
    const common: CutCommon = { id: `shape.${k}`, from: `shape.${k}`, mates: [], rank: 4 };
    return one(s, common, [...path, k], ctx).map((cut, n) => (n === 0 ? cut : { ...cut, id: `shape.${k}.${n}` }));
  });
}

function one(s: ShapeSpec, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  switch (s.cut) {
    case 'chamfer':
    case 'round-over':
    case 'cove':
      return arrises(s, common, path, ctx);
    case 'rabbet':
      return rabbet(s, common, path, ctx);
    case 'taper':
      return taper(s, common, path, ctx);
    case 'arc':
      return arc(s, common, path, ctx);
    case 'relief':
      return relief(s, common, path, ctx);
    case 'outline':
      return outline(s, common, path, ctx);
    case 'flat':
      return flat(s, common, path, ctx);
  }
}

function face(word: string, path: JsonPath, ctx: ShapeContext): Face | undefined {
  if ((FACES as readonly string[]).includes(word)) return word as Face;
  ctx.findings.error('face-unknown', path, `"${word}" is not a face.`, nameHint(word, FACES), [ctx.part]);
  return undefined;
}
const len = (t: Length_, path: JsonPath, ctx: ShapeContext): number | undefined => ctx.ev.length(t, path)?.value;
const end = (f: Face, ctx: ShapeContext): number => (faceSign(f) < 0 ? 0 : ctx.size[faceAxis(f)]);
/** From a face inward by `depth`. */
const inward = (f: Face, depth: number, ctx: ShapeContext): Span =>
  faceSign(f) < 0 ? [0, depth] : [ctx.size[faceAxis(f)] - depth, ctx.size[faceAxis(f)]];

/** Nothing but 0 < x < limit will do. */
function within(x: number | undefined, limit: number, what: string, path: JsonPath, ctx: ShapeContext): x is number {
  if (x === undefined) return false;
  if (x > 0 && x < limit) return true;
  const message =
    x <= 0
      ? `${what} is ${ctx.ev.say(x)}; it takes nothing off.`
      : `${what} is ${ctx.ev.say(x)}, and there is only ${ctx.ev.say(limit)} of wood there.`;
  ctx.findings.error('shape-size', path, message, 'Change the size, or take the shape out.', [ctx.part]);
  return false;
}

function stretchOver(
  from: Length_ | undefined,
  to: Length_ | undefined,
  axis: Axis,
  path: JsonPath,
  ctx: ShapeContext,
): Span | undefined {
  const a = from === undefined ? 0 : len(from, [...path, 'from'], ctx);
  const b = to === undefined ? ctx.size[axis] : len(to, [...path, 'to'], ctx);
  if (a === undefined || b === undefined) return undefined;
  if (a >= 0 && b <= ctx.size[axis] && a < b) return [a, b];
  ctx.findings.error(
    'shape-run',
    path,
    `It runs from ${ctx.ev.say(a)} to ${ctx.ev.say(b)}; the part goes from 0 to ${ctx.ev.say(ctx.size[axis])}.`,
    'Measure from the part’s own left, front or bottom end.',
    [ctx.part],
  );
  return undefined;
}

/** The two faces of `front top`; a face alone means its four arrises. */
function arrisOf(text: string, path: JsonPath, ctx: ShapeContext): (readonly [Face, Face])[] {
  const words = text.trim().split(/\s+/);
  const faces = words.map((w) => face(w, path, ctx));
  const [a, b] = faces;
  if (faces.some((f) => f === undefined) || a === undefined) return [];
  if (words.length === 1)
    return inFace(a).flatMap((x) => FACES.filter((f) => faceAxis(f) === x).map((f) => [a, f] as const));
  if (words.length === 2 && b !== undefined && faceAxis(a) !== faceAxis(b)) return [[a, b]];
  ctx.findings.error(
    'arris-unknown',
    path,
    `"${text}" is not an arris.`,
    'Name the two faces that meet: "front top".',
    [ctx.part],
  );
  return [];
}

function arrises(
  s: Extract<ShapeSpec, { cut: 'chamfer' | 'round-over' | 'cove' }>,
  common: CutCommon,
  path: JsonPath,
  ctx: ShapeContext,
): Cut[] {
  const size = len(s.size, [...path, 'size'], ctx);
  const stop = s.stop === undefined ? 0 : len(s.stop, [...path, 'stop'], ctx);
  if (stop === undefined) return [];
  return s.edges.flatMap((text, k) =>
    arrisOf(text, [...path, 'edges', k], ctx).flatMap((faces): Cut[] => {
      const run = third(faceAxis(faces[0]), faceAxis(faces[1]));
      const limit = Math.min(ctx.size[faceAxis(faces[0])], ctx.size[faceAxis(faces[1])]);
      if (!within(size, limit, `The ${s.cut}`, [...path, 'size'], ctx)) return [];
      const over: Span = [stop, ctx.size[run] - stop];
      if (over[1] <= over[0] || stop < 0) {
        ctx.findings.error(
          'shape-run',
          [...path, 'stop'],
          'The two stops leave nothing between them.',
          'Stop it less far from the ends.',
          [ctx.part],
        );
        return [];
      }
      return [{ ...common, shape: 'arris', as: s.cut, faces, size, over }];
    }),
  );
}

function rabbet(s: Extract<ShapeSpec, { cut: 'rabbet' }>, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  const f = face(s.face, [...path, 'face'], ctx);
  const e = face(s.edge, [...path, 'edge'], ctx);
  if (!f || !e) return [];
  if (faceAxis(f) === faceAxis(e)) {
    ctx.findings.error(
      'arris-unknown',
      [...path, 'edge'],
      `The ${f} face and the ${e} edge do not meet.`,
      'Name a face and an edge of it.',
      [ctx.part],
    );
    return [];
  }
  const on = len(s.on, [...path, 'on'], ctx);
  const into = len(s.into, [...path, 'into'], ctx);
  const run = third(faceAxis(f), faceAxis(e));
  const over = stretchOver(s.from, s.to, run, path, ctx);
  if (!within(on, ctx.size[faceAxis(e)], 'The rabbet on the edge', [...path, 'on'], ctx)) return [];
  if (!within(into, ctx.size[faceAxis(f)], 'The rabbet into the face', [...path, 'into'], ctx) || !over) return [];
  const at = byAxis((a) =>
    a === faceAxis(f) ? inward(f, into, ctx) : a === faceAxis(e) ? inward(e, on, ctx) : over,
  ) as Box3;
  return [{ ...common, shape: 'box', as: 'rabbet', face: f, at }];
}

function taper(s: Extract<ShapeSpec, { cut: 'taper' }>, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  const e = face(s.end, [...path, 'end'], ctx);
  const begin = len(s.begin, [...path, 'begin'], ctx);
  const to = len(s.to, [...path, 'to'], ctx);
  if (!e || begin === undefined || to === undefined) return [];
  const long = ctx.size[faceAxis(e)];
  if (begin < 0 || begin >= long) {
    ctx.findings.error(
      'shape-run',
      [...path, 'begin'],
      `The taper begins ${ctx.ev.say(begin)} from the other end, and the part is ${ctx.ev.say(long)} long.`,
      'Begin it between the ends.',
      [ctx.part],
    );
    return [];
  }
  return s.faces.flatMap((word, k): Cut[] => {
    const f = face(word, [...path, 'faces', k], ctx);
    if (!f) return [];
    if (faceAxis(f) === faceAxis(e)) {
      ctx.findings.error(
        'arris-unknown',
        [...path, 'faces', k],
        `The ${f} face does not run to the ${e} end.`,
        'Name a face beside the end.',
        [ctx.part],
      );
      return [];
    }
    const off = ctx.size[faceAxis(f)] - to;
    if (!within(off, ctx.size[faceAxis(f)], 'What the taper takes off', [...path, 'to'], ctx)) return [];
    return [
      { ...common, shape: 'taper', as: 'taper', face: f, end: e, begin: faceSign(e) < 0 ? long - begin : begin, off },
    ];
  });
}

function arc(s: Extract<ShapeSpec, { cut: 'arc' }>, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  const f = face(s.edge, [...path, 'edge'], ctx);
  const rise = len(s.rise, [...path, 'rise'], ctx);
  if (!f) return [];
  const [a, b] = inFace(f);
  const along = ctx.length === a || ctx.length === b ? ctx.length : ctx.size[a] >= ctx.size[b] ? a : b;
  const over = stretchOver(s.from, s.to, along, path, ctx);
  if (!over || !within(rise, ctx.size[faceAxis(f)], 'The rise of the arc', [...path, 'rise'], ctx)) return [];
  if (rise > (over[1] - over[0]) / 2) {
    ctx.findings.error(
      'shape-size',
      [...path, 'rise'],
      'The arc rises higher than half its own length.',
      'Use a lower rise, or an outline.',
      [ctx.part],
    );
    return [];
  }
  return [{ ...common, shape: 'arc', as: 'arc', face: f, along, over, rise }];
}

function relief(s: Extract<ShapeSpec, { cut: 'relief' }>, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  const f = face(s.end, [...path, 'end'], ctx);
  const up = len(s.up, [...path, 'up'], ctx);
  const along = AXIS_NAMES.indexOf(s.along) as Axis;
  if (!f) return [];
  if (faceAxis(f) === along) {
    ctx.findings.error(
      'shape-run',
      [...path, 'along'],
      `A relief in the ${f} end cannot run ${s.along}.`,
      'Run it along another axis.',
      [ctx.part],
    );
    return [];
  }
  const over = stretchOver(s.from, s.to, along, path, ctx);
  if (!over || !within(up, ctx.size[faceAxis(f)], 'The relief', [...path, 'up'], ctx)) return [];
  const at = byAxis((a) =>
    a === faceAxis(f) ? inward(f, up, ctx) : a === along ? over : ([0, ctx.size[a]] as Span),
  ) as Box3;
  return [{ ...common, shape: 'box', as: 'relief', face: f, at }];
}

/** Twice the area of the corners' polygon; positive when it runs anticlockwise. */
const area2 = (o: Outline): number =>
  o.reduce((sum, s, i) => {
    const p = o[(i - 1 + o.length) % o.length]?.to ?? s.to;
    return sum + p[0] * s.to[1] - s.to[0] * p[1];
  }, 0);

/** Do two sides that are not neighbours cross? Arcs count as their chords. */
function crosses(o: readonly Stretch[]): boolean {
  const n = o.length;
  const at = (k: number): readonly [number, number] => o[k % n]?.to ?? [0, 0];
  const side = (a: number, b: number, c: number): number => {
    const [p, q, r] = [at(a), at(b), at(c)];
    return Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  };
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (side(i, i + 1, j) * side(i, i + 1, j + 1) < 0 && side(j, j + 1, i) * side(j, j + 1, i + 1) < 0) return true;
    }
  return false;
}

function outline(
  s: Extract<ShapeSpec, { cut: 'outline' }>,
  common: CutCommon,
  path: JsonPath,
  ctx: ShapeContext,
): Cut[] {
  const f = face(s.face, [...path, 'face'], ctx);
  if (!f) return [];
  const keep: Stretch[] = [];
  for (const [k, p] of s.points.entries()) {
    const x = len(p[0], [...path, 'points', k, 0], ctx);
    const y = len(p[1], [...path, 'points', k, 1], ctx);
    if (x === undefined || y === undefined) return [];
    keep.push(p[2] === undefined || p[2] === 0 ? { to: [x, y] } : { to: [x, y], bulge: p[2] });
  }
  if (keep.length < (keep.some((k) => k.bulge) ? 2 : 3)) {
    ctx.findings.error(
      'outline-open',
      [...path, 'points'],
      'An outline needs three points, or two and an arc.',
      'Add points.',
      [ctx.part],
    );
    return [];
  }
  if (crosses(keep)) {
    ctx.findings.error(
      'outline-crosses',
      [...path, 'points'],
      'The outline crosses itself.',
      'Give the points in order round the shape.',
      [ctx.part],
    );
    return [];
  }
  if (area2(keep) >= 0) return [{ ...common, shape: 'outline', as: 'outline', face: f, keep }];
  const n = keep.length;
  const turned = keep.map((_, k): Stretch => {
    const i = n - 1 - k;
    const to = keep[(i - 1 + n) % n]?.to ?? [0, 0];
    const bulge = keep[i]?.bulge;
    return bulge === undefined ? { to } : { to, bulge: -bulge };
  });
  return [{ ...common, shape: 'outline', as: 'outline', face: f, keep: turned }];
}

function flat(s: Extract<ShapeSpec, { cut: 'flat' }>, common: CutCommon, path: JsonPath, ctx: ShapeContext): Cut[] {
  // `size` is the width of the flat; it takes that by the square root of a half from each face.
  const wide = len(s.size, [...path, 'size'], ctx);
  const size = wide === undefined ? undefined : Math.round(wide * Math.SQRT1_2);
  return arrisOf(s.edge, [...path, 'edge'], ctx).flatMap(([a, b]): Cut[] => {
    if (!within(size, Math.min(ctx.size[faceAxis(a)], ctx.size[faceAxis(b)]), 'The flat', [...path, 'size'], ctx))
      return [];
    const normal = byAxis(
      (x) => (x === faceAxis(a) ? faceSign(a) : x === faceAxis(b) ? faceSign(b) : 0) * Math.SQRT1_2,
    ) as Vec3;
    const point = byAxis((x) =>
      x === faceAxis(a) ? end(a, ctx) - faceSign(a) * size : x === faceAxis(b) ? end(b, ctx) : 0,
    ) as Vec3;
    return [{ ...common, shape: 'plane', as: 'flat', point, normal }];
  });
}

/** Holes as bores: mouth on a face, its centre from the part's own low corner along the face's axes in rising order. */
export function holeCuts(holes: readonly HoleSpec[], path: JsonPath, ctx: ShapeContext): Cut[] {
  return holes.flatMap((h, k): Cut[] => {
    const here: JsonPath = [...path, k];
    const f = face(h.face, [...here, 'face'], ctx);
    const diameter = len(h.diameter, [...here, 'diameter'], ctx);
    const depth = h.depth === undefined ? 'through' : len(h.depth, [...here, 'depth'], ctx);
    const u = len(h.at[0], [...here, 'at', 0], ctx);
    const v = len(h.at[1], [...here, 'at', 1], ctx);
    if (!f || depth === undefined || u === undefined || v === undefined) return [];
    const [a, b] = others(faceAxis(f));
    if (!within(diameter, Math.min(ctx.size[a], ctx.size[b]), 'The hole', [...here, 'diameter'], ctx)) return [];
    if (depth !== 'through' && !within(depth, ctx.size[faceAxis(f)], 'The depth of the hole', [...here, 'depth'], ctx))
      return [];
    if (u < 0 || v < 0 || u > ctx.size[a] || v > ctx.size[b]) {
      ctx.findings.error(
        'hole-outside',
        [...here, 'at'],
        `The hole at ${ctx.ev.say(u)}, ${ctx.ev.say(v)} is not on the ${f} face of "${ctx.part}".`,
        'Measure from the part’s own low corner.',
        [ctx.part],
      );
      return [];
    }
    return [
      {
        id: `hole.${k}`,
        from: `hole.${k}`,
        mates: [],
        rank: 3,
        shape: 'bore',
        as: 'hole',
        face: f,
        at: [u, v],
        diameter,
        depth,
      },
    ];
  });
}

/** What a size is, for those who only need the number. */
export const valueOf = (s: Sized | undefined): number => s?.value ?? 0;
