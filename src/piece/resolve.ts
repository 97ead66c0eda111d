import type { ComponentWorld } from '../components/index.js';
import { shiftCut } from '../components/index.js';
import type { Definition } from '../definition/definition.js';
import type { Outcome } from '../diag/diagnostic.js';
import { AXIS_NAMES, faceOf } from '../geom/axis.js';
import { JOINTS } from '../joints/index.js';
import type { JointKind } from '../joints/joint.js';
import { byRule } from '../value/sized.js';
import type { BoreCut, BoxCut, MarkCut } from '../words/cut.js';
import { bodyFrom, bodyOf } from './bodies.js';
import type { Body } from './body.js';
import { originOf } from './body.js';
import { checkMade, madePlans } from './drawer-joints.js';
import type { Made as MadeDrawer } from './drawers.js';
import { makeDrawers } from './drawers.js';
import { markEqual } from './equal.js';
import { Evaluator } from './evaluate.js';
import type { Drafts } from './expand.js';
import { expand } from './expand.js';
import { circumstancesOf } from './circumstances.js';
import { definePart } from './extents.js';
import { partsOf } from './facts.js';
import { Findings } from './fault.js';
import { Graph } from './graph.js';
import { defineLevels, leans } from './lean.js';
import { checkIds } from './ids.js';
import type { JointsMade } from './joints.js';
import { makeJoints, MOST_HARDWARE } from './joints.js';
import { materialsOf } from './materials.js';
import { defineMeasures } from './measures.js';
import type { JointPlan, MeetingContext } from './meetings.js';
import { meetingsOf, planJoint } from './meetings.js';
import { override } from './override.js';
import type { Drawer, Hardware, Part, Piece, Stock } from './piece.js';
import { profileOf } from './profile.js';
import { runsOf } from './runs.js';
import type { Shop } from './shop.js';
import { readShop, stepOf, shrinkOf, swellOf, worldOf } from './shop.js';
import { slideLines, slideScrews } from './slide-screws.js';
import { checkThickness, readStocks } from './stock.js';

export interface ResolveOptions {
  /** Kinds of joint to choose from; all of the house when not given. */
  readonly joints?: readonly JointKind[];
}

/**
 * A definition as a settled piece: every measure, face and size worked out, every joint made into cuts, every component into
 * parts. Plain data. There is a value only when nothing is in error; findings are located by JSON path.
 */
export function resolvePiece(def: Definition, opts: ResolveOptions = {}): Outcome<Piece> {
  const findings = new Findings();
  const drafts = expand(def, findings);
  const setting = settingOf(def, drafts, findings);
  const bodies = standing(drafts, setting);
  const failed = new Set([...drafts.lost, ...[...drafts.parts.keys()].filter((id) => !bodies.has(id))]);
  const world = worldOf(setting.shop, def, bodies);
  const ctx: MeetingContext = { kinds: opts.joints ?? JOINTS, bodies, ev: setting.ev, world, findings, failed };
  const plans = drafts.joints.flatMap((j) => planJoint(j, ctx));
  const drawers =
    failed.size > 0
      ? []
      : makeDrawers({
          def,
          bodies: new Map(bodies),
          stocks: setting.stocks,
          ev: setting.ev,
          world: componentWorld(setting, def),
          findings,
        });
  const hardware = drawers.flatMap((d) => addDrawer(d, bodies, plans, setting, def, ctx));
  const slides = drawers.flatMap((d) => d.expansion.slides ?? []);
  hardware.push(...slideScrews(slides, { bodies, step: setting.shop.step, ev: setting.ev, findings }));
  if (failed.size === 0) {
    override(def, bodies, findings);
    checkMade(
      def,
      drawers.flatMap((d) => d.expansion.joints.map((j) => j.id)),
      ctx,
    );
  }
  const meets = meetingsOf(plans, ctx);
  if (meets.length > MOST_JOINTS) {
    const message = `${meets.length} joints are asked for; at most ${MOST_JOINTS} are built.`;
    findings.error('too-many-joints', ['joints'], message, 'Does a * in a joint sweep up more than was meant?');
    return { findings: findings.list };
  }
  const made = makeJoints(meets, findings);
  if (made.hardware.length > MOST_HARDWARE) {
    const message = `${made.hardware.length} screws are asked for; at most ${MOST_HARDWARE} are built.`;
    findings.error('too-many-screws', ['joints'], message, 'Look at the "count" of the screws.');
    return { findings: findings.list };
  }
  addCuts(drawers, bodies);
  const parts = bodies.size > 0 ? partsOf([...bodies.values()], made.joints, findings) : [];
  const pairs = [...bodies.values()].flatMap((b) =>
    b.own.mirror === undefined ? [] : [[b.own.mirror, b.id] as const],
  );
  const settled = pieceOf(def, setting, parts, made, hardware, drawers, pairs);
  const profile = profileOf(def, setting.ev, findings);
  // Parts named elsewhere are looked up once all are there; what has failed is not told again as missing.
  const all = failed.size === 0;
  const stockOf = (id: string) => parts.find((p) => p.id === id)?.stock;
  const named = { parts: parts.map((p) => p.id), joints: settled.joints, stockOf, ev: setting.ev, findings };
  const piece: Piece = {
    ...settled,
    ...(profile ? { profile } : {}),
    ...(all && def.runs ? { runs: runsOf(def, bodies, findings) } : {}),
    ...(all ? circumstancesOf(def, named) : {}),
  };
  return findings.list.some((f) => f.severity === 'error')
    ? { findings: findings.list }
    : { value: piece, findings: findings.list };
}

/** Most places where parts meet in a joint (our default). */
const MOST_JOINTS = 4000;

interface Setting {
  readonly ev: Evaluator;
  readonly graph: Graph;
  readonly findings: Findings;
  readonly shop: Shop;
  readonly stocks: Map<string, Stock>;
  readonly measures: readonly string[];
  readonly known: readonly string[];
}

/** The graph with every measure and face defined (nothing worked out yet), the shop and the stocks read. */
function settingOf(def: Definition, drafts: Drafts, findings: Findings): Setting {
  const graph = new Graph(findings);
  const measures: string[] = [];
  const leaning = new Set([...drafts.parts.values()].filter((d) => leans(d, drafts.parts)).map((d) => d.id));
  const ev = new Evaluator(graph, def.units, findings, measures, new Set(drafts.parts.keys()), leaning, drafts.lost);
  measures.push(...defineMeasures(def.measures ?? {}, ev, stepOf(def, ev), findings));
  checkIds(def, drafts, measures, findings);
  const materials = materialsOf(def, findings);
  const stocks = readStocks(def.stock, ev, findings, materials);
  const setting: Setting = {
    ev,
    graph,
    findings,
    shop: readShop(def, ev, findings, materials),
    stocks,
    measures,
    known: Object.keys(def.stock),
  };
  // A stock that could not be read is told where it stands; what would take its thickness from it is silent.
  const unread = (stock: string | undefined): boolean => stock !== undefined && !stocks.has(stock);
  const thicknessOf = (stock: string | undefined) => {
    const t = stock === undefined ? undefined : stocks.get(stock)?.thickness;
    return t === undefined
      ? undefined
      : {
          ...byRule(t, `measured thickness of ${stock}`, 'the sheet itself'),
          path: ['stock', stock ?? '', 'thickness'],
        };
  };
  const bodyContext = { drafts: drafts.parts, stocks, ev, findings };
  for (const draft of drafts.parts.values())
    if (leans(draft, drafts.parts) === 'stand') defineLevels(draft, bodyContext);
    else if (!leaning.has(draft.id) || draft.spec.turn)
      definePart(draft, {
        ev,
        findings,
        thicknessOf: (d) => thicknessOf(d.spec.stock),
        stockUnread: (d) => unread(d.spec.stock),
      });
  return setting;
}

/** All parts of the definition as bodies; every measure worked out too, so that a slip in an unused one is found. */
function standing(drafts: Drafts, s: Setting): Map<string, Body> {
  for (const name of s.measures) s.graph.get(name);
  const out = new Map<string, Body>();
  const ctx = { drafts: drafts.parts, stocks: s.stocks, ev: s.ev, findings: s.findings };
  for (const draft of drafts.parts.values()) {
    const body = bodyOf(draft, s.known, ctx);
    if (body) out.set(draft.id, body);
  }
  return out;
}

const componentWorld = (s: Setting, def: Definition): ComponentWorld => ({
  units: def.units,
  step: s.shop.step,
  pitch: s.shop.pitch,
  swell: (stock, width) => swellOf(s.stocks.get(stock), width, def),
  shrink: (stock, width) => shrinkOf(s.stocks.get(stock), width, def),
  thickness: (stock) => s.stocks.get(stock)?.thickness,
});

/** A drawer's parts become bodies and its joints plans, as if they had been typed; returns its bought things. */
function addDrawer(
  made: MadeDrawer,
  bodies: Map<string, Body>,
  plans: JointPlan[],
  s: Setting,
  def: Definition,
  ctx: MeetingContext,
): Hardware[] {
  const { expansion, path } = made;
  for (const f of expansion.findings) s.findings.add(f);
  for (const p of expansion.parts) {
    const stock = s.stocks.get(p.stock);
    if (!stock) continue;
    if (p.box.some(([lo, hi]) => hi.value <= lo.value)) {
      const message = `Its opening and sizes leave nothing for "${p.id}".`;
      s.findings.error('size-not-positive', path, message, 'Check the opening, "reveal" and the sizes of its "box".');
      return [];
    }
    if (bodies.has(p.id))
      s.findings.error(
        'id-twice',
        path,
        `The drawer makes a part "${p.id}", and there is one already.`,
        'Call the drawers something else.',
      );
    const body = bodyFrom(p, expansion.drawer?.id ?? p.id, path, stock);
    bodies.set(p.id, body);
    checkThickness(p.id, body.size[body.thickness].value, stock, path, s.ev, s.findings);
    for (const a of [0, 1, 2] as const)
      for (const k of [0, 1] as const)
        s.graph.define(`${p.id}.${faceOf(a, k === 0 ? -1 : 1)}`, path, () => p.box[a][k]);
  }
  plans.push(...madePlans(expansion.joints, path, def, ctx));
  return expansion.hardware.map((h) => ({ ...h }));
}

/** Slide lines, pilot and pull holes: in piece axes as the component gives them, brought to each part's own. */
function addCuts(drawers: readonly MadeDrawer[], bodies: ReadonlyMap<string, Body>): void {
  for (const { expansion } of drawers)
    for (const { part, cut } of expansion.cuts.flatMap((c) => slideLines(c, bodies))) {
      const body = bodies.get(part);
      if (body) body.cuts.push(shiftCut(cut as BoxCut | BoreCut | MarkCut, originOf(body)));
    }
}

const byId = <T extends { readonly id: string }>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));

function pieceOf(
  def: Definition,
  s: Setting,
  parts: readonly Part[],
  made: JointsMade,
  hardware: readonly Hardware[],
  drawers: readonly MadeDrawer[],
  pairs: readonly (readonly [string, string])[],
): Piece {
  for (const p of parts)
    for (const a of [0, 1, 2] as const) for (const end of [-1, 1]) s.graph.get(`${p.id}.${faceOf(a, end)}`);
  const values = {
    ...s.graph.all(),
    ...Object.fromEntries(parts.flatMap((p) => AXIS_NAMES.map((n, a) => [`${p.id}.${n}`, p.size[a as 0 | 1 | 2]]))),
  };
  const finish =
    def.finish &&
    `${def.finish.kind}${def.finish.coats === undefined ? '' : `, ${def.finish.coats} ${def.finish.coats === 1 ? 'coat' : 'coats'}`}`;
  const measures = Object.fromEntries(s.measures.flatMap((m) => (values[m] ? [[m, values[m]]] : [])));
  return {
    header: {
      title: def.piece.title,
      number: def.piece.number,
      revision: def.piece.revision,
      date: def.piece.date,
      client: def.piece.client ?? '',
      maker: def.piece.maker ?? '',
      woods: woodsOf(parts, s.stocks),
    },
    units: def.units,
    step: s.shop.step,
    measures,
    stocks: Object.fromEntries([...s.stocks].sort(([a], [b]) => (a < b ? -1 : 1))),
    parts: byId(markEqual(parts, pairs)),
    joints: byId(made.joints),
    hardware: byId([...hardware, ...made.hardware]),
    drawers: drawers.flatMap((d): Drawer[] => (d.expansion.drawer ? [d.expansion.drawer] : [])),
    ...(finish === undefined ? {} : { finish }),
    shop: s.shop.facts,
    values,
  };
}

/** `White oak, yellow-poplar inside`: the wood of the most volume outside the drawers first; sheets are not named. */
export function woodsOf(parts: readonly Part[], stocks: ReadonlyMap<string, Stock>): string {
  const volume = new Map<string, { case: number; drawers: number }>();
  for (const p of parts) {
    const stock = stocks.get(p.stock);
    if (stock?.kind !== 'lumber') continue;
    const v = p.size.reduce((x, s) => (x * s.value) / 1e6, 1);
    const sum = volume.get(stock.name) ?? { case: 0, drawers: 0 };
    sum[p.drawer === undefined ? 'case' : 'drawers'] += v;
    volume.set(stock.name, sum);
  }
  const rows = [...volume].sort(([a, x], [b, y]) => y.case - x.case || y.drawers - x.drawers || (a < b ? -1 : 1));
  return rows
    .map(([name, v], k) => (k === 0 ? name : `${lowerFirst(name)}${v.drawers > v.case ? ' inside' : ''}`))
    .join(', ');
}
const lowerFirst = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1);
