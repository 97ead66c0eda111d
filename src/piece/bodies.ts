import type { PartSpec } from '../definition/definition.js';
import type { ComponentPart } from '../components/index.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Axis, Face } from '../geom/axis.js';
import { AXIS_NAMES, FACES, faceOf, others } from '../geom/axis.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { nm } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { derived } from '../value/sized.js';
import { mapCut } from '../words/mapCut.js';
import type { Body, BodyContext } from './body.js';
import { axesOf } from './body.js';
import type { Draft } from './expand.js';
import { boxAbout, leans } from './lean.js';
import { settleLean } from './settleLean.js';
import type { Stock } from './piece.js';
import { holeCuts, shapeCuts } from './shapes.js';
import { checkThickness } from './stock.js';

/** The stock of a part, told when it is missing or unknown. */
export function stockFor(draft: Draft, ctx: BodyContext, known: readonly string[]): Stock | undefined {
  const { stock } = draft.spec;
  const path = draft.fieldPath['stock'] ?? draft.path;
  if (stock === undefined) {
    ctx.findings.error(
      'stock-missing',
      draft.path,
      `The part "${draft.id}" does not say what it is made of.`,
      `Add "stock": one of ${known.join(', ')}.`,
      [draft.id],
    );
    return undefined;
  }
  const found = ctx.stocks.get(stock);
  if (!found && !known.includes(stock))
    ctx.findings.error('stock-unknown', path, `There is no stock "${stock}".`, nameHint(stock, known), [draft.id]);
  return found;
}

/** A part of the definition as a body, with its shapes and holes cut; undefined when a figure is missing (told). */
export function bodyOf(draft: Draft, known: readonly string[], ctx: BodyContext): Body | undefined {
  const stock = stockFor(draft, ctx, known);
  if (!stock) return undefined;
  if (leans(draft, ctx.drafts) === undefined) {
    const { graph } = ctx.ev;
    const ends = FACES.map((f) => graph.get(`${draft.id}.${f}`)?.value);
    const [x, y, z] = AXIS_NAMES.map((a) => graph.get(`${draft.id}.${a}`));
    if (!x || !y || !z || ends.includes(undefined)) return undefined;
    const box = byAxis((a) => [ends[2 * a] ?? 0, ends[2 * a + 1] ?? 0] as const) as Box3;
    return withCuts(draft, { stock, box, size: [x, y, z] }, ctx);
  }
  const lean = settleLean(draft, ctx);
  if (!lean) return undefined;
  const size: Vec3 = [lean.size[0].value, lean.size[1].value, lean.size[2].value];
  const body = withCuts(draft, { stock, box: boxAbout(lean.place, size), size: lean.size, place: lean.place }, ctx);
  body?.cuts.unshift(...lean.cuts);
  return body;
}

function withCuts(
  draft: Draft,
  stand: Pick<Body, 'stock' | 'box' | 'size' | 'place'>,
  ctx: BodyContext,
): Body | undefined {
  const size: Vec3 = [stand.size[0].value, stand.size[1].value, stand.size[2].value];
  const grain = grainOf(draft.spec, size, stand.stock);
  const axes = axesOf(size, grain);
  if (grain !== undefined && throughThickness(draft, size, grain, stand.stock, ctx)) return undefined;
  const at =
    draft.fieldPath[AXIS_NAMES[axes.thickness]] ?? draft.fieldPath['stand'] ?? draft.fieldPath['span'] ?? draft.path;
  checkThickness(draft.id, nm(size[axes.thickness]), stand.stock, at, ctx.ev, ctx.findings);
  const body: Body = {
    id: draft.id,
    path: draft.path,
    ...stand,
    ...(grain === undefined ? {} : { grain }),
    ...axes,
    show: showOf(draft, ctx),
    own: ownOf(draft),
    growth: [
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    cuts: [],
  };
  body.cuts.push(...ownCuts(draft, body, size, ctx));
  return body;
}

/** Grain along the thinnest side: no sheet has it; of lumber it would be a slice of end grain. */
function throughThickness(draft: Draft, size: Vec3, grain: Axis, stock: Stock, ctx: BodyContext): boolean {
  if (others(grain).some((a) => size[a] <= size[grain])) return false;
  const path = draft.fieldPath['grain'] ?? draft.path;
  const message = `The grain of "${draft.id}" runs ${AXIS_NAMES[grain]}, through its thinnest side of ${ctx.ev.say(size[grain])}.`;
  const hint = `Say ${others(grain)
    .map((a) => `"${AXIS_NAMES[a]}"`)
    .join(' or ')}.`;
  if (stock.kind === 'sheet') ctx.findings.error('grain-through', path, message, hint, [draft.id]);
  else ctx.findings.warn('grain-through', path, message, hint, [draft.id]);
  return stock.kind === 'sheet';
}

/** Along the grain as typed; lumber that does not say runs along its longest side (common practice); plain sheet has none. */
function grainOf(spec: PartSpec, size: Vec3, stock: Stock): Axis | undefined {
  if (spec.grain === 'none' || (stock.kind === 'sheet' && stock.grain === 'none')) return undefined;
  if (spec.grain !== undefined) return AXIS_NAMES.indexOf(spec.grain) as Axis;
  return axesOf(size, undefined).length;
}

function ownCuts(draft: Draft, body: Body, size: Vec3, ctx: BodyContext): Body['cuts'] {
  const context = { part: draft.id, size, length: body.length, ev: ctx.ev, findings: ctx.findings };
  const at = (field: string): JsonPath => draft.fieldPath[field] ?? draft.path;
  const cuts = [
    ...shapeCuts(draft.spec.shape ?? [], at('shape'), context),
    ...holeCuts(draft.spec.holes ?? [], at('holes'), context),
  ];
  if (!mirrorsShape(draft, ctx.drafts)) return cuts;
  return cuts.map((c) => mapCut(c, { to: [0, 1, 2], sign: [-1, 1, 1], shift: [size[0], 0, 0] }));
}
/** A mirror image of a mirror image is the thing itself again. */
function mirrorsShape(draft: Draft, drafts: ReadonlyMap<string, Draft>): boolean {
  let odd = false;
  for (let d: Draft | undefined = draft; d?.mirrorOf !== undefined; d = drafts.get(d.mirrorOf)) odd = !odd;
  return odd;
}

function showOf(draft: Draft, ctx: BodyContext): Face[] {
  const path = draft.fieldPath['show'] ?? draft.path;
  const odd = mirrorsShape(draft, ctx.drafts) && !draft.path.includes('show');
  return (draft.spec.show ?? []).flatMap((word, k) => {
    if (!(FACES as readonly string[]).includes(word)) {
      ctx.findings.error('face-unknown', [...path, k], `"${word}" is not a face.`, nameHint(word, FACES), [draft.id]);
      return [];
    }
    const face = word as Face;
    return [odd && (face === 'left' || face === 'right') ? faceOf(0, face === 'left' ? 1 : -1) : face];
  });
}

function ownOf(draft: Draft): Body['own'] {
  const s = draft.spec;
  return {
    notes: s.notes ?? [],
    ...(s.mark === undefined ? {} : { mark: s.mark }),
    ...(s.name === undefined ? {} : { name: s.name }),
    ...(s.status === undefined ? {} : { status: s.status }),
    ...(s.faces === undefined ? {} : { faces: s.faces }),
    ...(s.reference === undefined ? {} : { referenceWords: s.reference }),
    ...(draft.mirrorOf === undefined ? {} : { mirror: draft.mirrorOf }),
  };
}

/** A part that a component gives, as a body, with what the definition overrides. */
export function bodyFrom(p: ComponentPart, drawer: string, path: JsonPath, stock: Stock): Body {
  const box = byAxis((a) => [p.box[a][0].value, p.box[a][1].value] as const) as Box3;
  const size = byAxis((a): Sized => {
    const [lo, hi] = p.box[a];
    const between = derived(nm(hi.value - lo.value), hi.rule ?? 'between its ends', [
      { name: `${p.id}.${faceOf(a, 1)}`, value: hi.value },
      { name: `${p.id}.${faceOf(a, -1)}`, value: lo.value },
    ]);
    return { ...between, path };
  });
  return {
    id: p.id,
    path,
    stock,
    box,
    size,
    ...(p.grain === undefined ? {} : { grain: p.grain }),
    ...axesOf([size[0].value, size[1].value, size[2].value], p.grain),
    show: p.show,
    own: {
      notes: [],
      mark: p.mark,
      name: p.name,
      status: p.status,
      statusWhy: p.statusWhy,
      faceWords: p.faceWords,
      reference: p.reference,
      drawer,
      ...(p.hand === undefined ? {} : { hand: p.hand }),
    },
    growth: [
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    cuts: [],
  };
}
