import type { Extent, Length_ } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import type { Axis, Face } from '../geom/axis.js';
import { AXES, AXIS_NAMES, faceOf } from '../geom/axis.js';
import { nm } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { derived } from '../value/sized.js';
import type { Evaluator } from './evaluate.js';
import type { Draft } from './expand.js';
import type { Findings } from './fault.js';

type Named = Exclude<Extent, readonly unknown[]>;
const FIELDS = ['from', 'to', 'mid', 'size'] as const;

/** What the extents of parts are worked out with. */
export interface ExtentContext {
  readonly ev: Evaluator;
  readonly findings: Findings;
  /** Thickness of a part's stock where the stock fixes it (sheet goods). */
  thicknessOf(draft: Draft): Sized | undefined;
  /** Its stock is not there or could not be read (told elsewhere). */
  stockUnread?(draft: Draft): boolean;
}

/** Makes the nodes of a part's six faces (`rail_1.top`), three sizes (`rail_1.up.size`) and typed ends (`rail_1.up.from`). */
export function definePart(draft: Draft, ctx: ExtentContext): void {
  const own = draft.mirrorOf === undefined ? AXIS_NAMES : (draft.ownExtents ?? []);
  if (draft.mirrorOf !== undefined) defineMirror(draft, draft.mirrorOf, ctx);
  for (const axis of AXES) if (own.includes(AXIS_NAMES[axis])) defineExtent(draft, axis, ctx);
}

const lowHigh = (axis: Axis): readonly [Face, Face] => [faceOf(axis, -1), faceOf(axis, 1)];
const record = (name: string, s: Sized) => ({ name, value: s.value });

function defineExtent(draft: Draft, axis: Axis, ctx: ExtentContext): void {
  const field = AXIS_NAMES[axis];
  const path = draft.fieldPath[field] ?? draft.path;
  const name = `${draft.id}.${field}`;
  const [low, high] = lowHigh(axis);
  const { graph } = ctx.ev;
  const extent = draft.spec[field];
  const typed = readExtent(extent, field, path, draft, ctx);
  for (const f of FIELDS) {
    const one = typed?.[f];
    if (one === undefined) continue;
    // A bare part id at the low end means that part's high face, and the other way round.
    const bare = f === 'from' ? high : f === 'to' ? low : undefined;
    graph.define(`${name}.${f}`, one.path, () => ctx.ev.length(one.text, one.path, bare));
  }
  const part = (f: string): Sized | undefined => graph.get(`${name}.${f}`);
  const stock = (): Sized | undefined => ctx.thicknessOf(draft);
  graph.define(`${draft.id}.${low}`, path, () => typed && endOf(-1, typed, name, part, stock, ctx));
  graph.define(`${draft.id}.${high}`, path, () => typed && endOf(1, typed, name, part, stock, ctx));
  graph.define(`${name}`, path, () => {
    if (!typed) return undefined;
    const alone = typed.size ? part('size') : undefined;
    const size = alone ?? (typed.from && typed.to ? lengthBetween(draft, low, high, ctx) : stock());
    return size && positive(size, name, size.path ?? path, ctx) ? { ...size, path: size.path ?? path } : undefined;
  });
}

function lengthBetween(draft: Draft, low: Face, high: Face, ctx: ExtentContext): Sized | undefined {
  const a = ctx.ev.graph.get(`${draft.id}.${low}`);
  const b = ctx.ev.graph.get(`${draft.id}.${high}`);
  return a && b
    ? derived(nm(b.value - a.value), `${draft.id}.${high} - ${draft.id}.${low}`, [
        record(`${draft.id}.${high}`, b),
        record(`${draft.id}.${low}`, a),
      ])
    : undefined;
}

function positive(size: Sized, name: string, path: JsonPath, ctx: ExtentContext): boolean {
  if (size.value > 0) return true;
  const given = size.how === 'given';
  const less = given ? `a size of ${ctx.ev.say(size.value)}` : 'a size less than nothing: its ends have changed places';
  const found = size.value === 0 ? 'no size at all' : less;
  const from =
    size.inputs && size.inputs.length > 0
      ? ` (${size.inputs.map((i) => `${i.name} is ${ctx.ev.say(i.value)}`).join(', ')})`
      : '';
  ctx.findings.error(
    'size-not-positive',
    path,
    `${name} has ${found}${from}.`,
    given ? 'Write a size above nothing.' : 'The first end is the left, front or bottom one; check both.',
    [name.split('.')[0] ?? ''],
  );
  return false;
}

interface Typed {
  readonly text: Length_;
  readonly path: JsonPath;
}
type Ends = { readonly [F in (typeof FIELDS)[number]]?: Typed };

function readExtent(
  extent: Extent | undefined,
  field: string,
  path: JsonPath,
  draft: Draft,
  ctx: ExtentContext,
): Ends | undefined {
  if (extent === undefined) {
    ctx.findings.error(
      'extent-missing',
      draft.path,
      `The part "${draft.id}" does not say how far it goes ${field}.`,
      `Add "${field}": [from, to].`,
      [draft.id],
    );
    return undefined;
  }
  if (Array.isArray(extent)) {
    const [from, to] = extent as readonly [Length_, Length_];
    return { from: { text: from, path: [...path, 0] }, to: { text: to, path: [...path, 1] } };
  }
  const ends: Ends = Object.fromEntries(
    FIELDS.flatMap((f) => {
      const text = (extent as Named)[f];
      return text === undefined ? [] : [[f, { text, path: [...path, f] }]];
    }),
  );
  const given = FIELDS.filter((f) => ends[f]).join('+');
  if (given === 'from' || given === 'to') {
    if (ctx.thicknessOf(draft)) return ends;
    if (ctx.stockUnread?.(draft)) return undefined;
    ctx.findings.error(
      'extent-short',
      path,
      `${draft.id}.${field} gives one end, and its stock has no thickness of its own.`,
      'Add "size": only sheet goods fill in their thickness.',
      [draft.id],
    );
    return undefined;
  }
  if (['from+to', 'from+size', 'to+size', 'mid+size'].includes(given)) return ends;
  const message = given === '' ? 'gives nothing' : `gives ${given.split('+').join(' and ')}`;
  ctx.findings.error(
    'extent-form',
    path,
    `${draft.id}.${field} ${message}.`,
    'Give two: [from, to], from and size, to and size, or mid and size.',
    [draft.id],
  );
  return undefined;
}

type Get = (f: string) => Sized | undefined;

/** The low (-1) or high (1) end: as typed, else from the other end, or from the middle, by the size. */
function endOf(
  sign: 1 | -1,
  e: Ends,
  name: string,
  part: Get,
  stock: () => Sized | undefined,
  ctx: ExtentContext,
): Sized | undefined {
  const typed = sign < 0 ? 'from' : 'to';
  if (e[typed]) return part(typed);
  const size = e.size ? part('size') : stock();
  const base = e.mid ? 'mid' : e.from ? 'from' : 'to';
  const at = part(base);
  if (!size || !at || !positive(size, name, size.path ?? [], ctx)) return undefined;
  const op = sign > 0 ? '+' : '-';
  const inputs = [record(`${name}.${base}`, at), record(e.size ? `${name}.size` : 'stock thickness', size)];
  return base === 'mid'
    ? derived(nm(at.value + (sign * size.value) / 2), `mid ${op} size / 2`, inputs)
    : derived(nm(at.value + sign * size.value), `${base} ${op} size`, inputs);
}

function defineMirror(draft: Draft, of: string, ctx: ExtentContext): void {
  const { graph } = ctx.ev;
  const path = draft.fieldPath['about'] ?? draft.path;
  const plane = `${draft.id}.about`;
  graph.define(plane, path, () => ctx.ev.length(draft.about ?? 0, path));
  for (const [face, from] of [
    ['left', 'right'],
    ['right', 'left'],
  ] as const) {
    graph.define(`${draft.id}.${face}`, path, () => {
      const about = graph.get(plane);
      const far = graph.get(`${of}.${from}`);
      return about && far
        ? derived(nm(2 * about.value - far.value), `${of}.${from} mirrored about ${draft.about}`, [
            record(plane, about),
            record(`${of}.${from}`, far),
          ])
        : undefined;
    });
  }
  for (const face of ['front', 'back', 'bottom', 'top'] as const)
    graph.define(`${draft.id}.${face}`, path, () => graph.get(`${of}.${face}`));
  for (const field of AXIS_NAMES) graph.define(`${draft.id}.${field}`, path, () => graph.get(`${of}.${field}`));
}
