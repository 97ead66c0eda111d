import type { Cell, ComponentContext, ComponentWorld, DrawerFields, Expansion, Opening } from '../components/index.js';
import { COMPONENTS, gridCells } from '../components/index.js';
import type { Definition, DrawerSpec, Length_ } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Sized } from '../value/sized.js';
import { meet } from '../geom/box.js';
import { nm } from '../lengths/length.js';
import type { Body } from './body.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';
import { matches } from './patterns.js';
import { wholeOf } from './role.js';
import type { Stock } from './piece.js';

export interface DrawerContext {
  readonly def: Definition;
  readonly bodies: ReadonlyMap<string, Body>;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly ev: Evaluator;
  readonly world: ComponentWorld;
  readonly findings: Findings;
}
export interface Made {
  readonly path: JsonPath;
  readonly expansion: Expansion;
}

/** Every drawer of the definition expanded, in its order, numbered on over all of them for their marks. */
export function makeDrawers(ctx: DrawerContext): Made[] {
  const out: Made[] = [];
  let count = 0;
  for (const [id, typed] of Object.entries(ctx.def.drawers ?? {})) {
    const path: JsonPath = ['drawers', id];
    const spec = likeOf(id, typed, ctx);
    const fields = spec && fieldsOf(spec, path, ctx);
    if (!spec || !fields) continue;
    const across = bounding(spec.across, 'across', path, ctx);
    const up = bounding(spec.up, 'up', path, ctx);
    if (!across || !up) continue;
    // Typed from the top down or from the bottom up: the lower ones first.
    const rising = [...up].sort((a, b) => low(a, 2, ctx) - low(b, 2, ctx));
    const rightward = [...across].sort((a, b) => low(a, 0, ctx) - low(b, 0, ctx));
    for (const cell of gridCells(id, rightward, rising)) {
      count++;
      const context = contextOf(cell, count, spec.mark ?? 'D{n}', path, ctx);
      if (context) out.push({ path, expansion: COMPONENTS.drawer.expand(fields, context) });
    }
  }
  return out;
}
const low = (id: string, axis: 0 | 2, ctx: DrawerContext): number => ctx.bodies.get(id)?.box[axis][0] ?? 0;

function likeOf(id: string, spec: DrawerSpec, ctx: DrawerContext): DrawerSpec | undefined {
  const seen = [id];
  let out = spec;
  for (let like = spec.like; like !== undefined;) {
    const base: DrawerSpec | undefined = ctx.def.drawers?.[like];
    if (!base) {
      ctx.findings.error(
        'drawer-unknown',
        ['drawers', id, 'like'],
        `There are no drawers "${like}".`,
        nameHint(like, Object.keys(ctx.def.drawers ?? {})),
      );
      return undefined;
    }
    if (seen.includes(like)) {
      ctx.findings.error(
        'like-in-a-circle',
        ['drawers', id, 'like'],
        `These drawers are each like the next: ${[...seen, like].join(' -> ')}.`,
        'Give one of them its own fields.',
      );
      return undefined;
    }
    seen.push(like);
    out = { ...base, ...out, ...both(base, out, 'front'), ...both(base, out, 'box') };
    like = base.like;
  }
  return out;
}
const both = (a: DrawerSpec, b: DrawerSpec, key: 'front' | 'box'): Partial<DrawerSpec> =>
  a[key] && b[key] ? { [key]: { ...a[key], ...b[key] } } : {};

function bounding(
  list: readonly string[] | undefined,
  field: 'across' | 'up',
  path: JsonPath,
  ctx: DrawerContext,
): readonly string[] | undefined {
  const out: string[] = [];
  for (const [k, word] of (list ?? []).entries()) {
    const found = matches(word, [...ctx.bodies.keys()]);
    if (found.length === 0) {
      ctx.findings.error(
        'part-unknown',
        [...path, field, k],
        `There is no part "${word}" to bound the drawers.`,
        nameHint(word, [...ctx.bodies.keys()]),
      );
      return undefined;
    }
    out.push(...found.map((m) => m.id));
  }
  if (out.length >= 2) return out;
  ctx.findings.error(
    'drawer-bounds',
    list ? [...path, field] : path,
    `Drawers need at least two parts ${field} to lie between.`,
    `Add "${field}": ["…", "…"].`,
  );
  return undefined;
}

/** Most pulls on one drawer (our default). */
const MOST_PULLS = 12;

function fieldsOf(spec: DrawerSpec, path: JsonPath, ctx: DrawerContext): DrawerFields | undefined {
  const { front, box } = spec;
  let failed = false;
  const len = (t: Length_ | undefined, ...at: string[]): Sized | undefined => {
    if (t === undefined) return undefined;
    const s = ctx.ev.length(t, [...path, ...at]);
    if (!s) failed = true;
    else if (s.value < 0) {
      failed = true;
      const message = `The ${at.join(' ')} of the drawers is ${ctx.ev.say(s.value)}, less than nothing.`;
      ctx.findings.error('drawer-size', [...path, ...at], message, 'Write a size above nothing, or leave it out.');
    }
    return s;
  };
  if (typeof front?.pulls === 'number' && front.pulls > MOST_PULLS) {
    failed = true;
    const message = `${front.pulls} pulls on one drawer are more than ${MOST_PULLS}.`;
    ctx.findings.error('pulls-many', [...path, 'front', 'pulls'], message, 'One or two are usual.');
  }
  const stock = (id: string | undefined, kind: 'lumber' | 'sheet', ...at: string[]): string => {
    const where: JsonPath = [...path, ...at];
    const found = id === undefined ? undefined : ctx.stocks.get(id);
    if (found?.kind === kind) return found.id;
    failed = true;
    if (id !== undefined && id in ctx.def.stock && !found) return '';
    const fit = [...ctx.stocks.values()].filter((s) => s.kind === kind).map((s) => s.id);
    const message =
      id === undefined
        ? `The drawers do not say which stock their ${at.join(' ')} is of.`
        : found
          ? `"${id}" is ${found.kind === 'sheet' ? 'sheet goods' : 'lumber'}; ${kind === 'sheet' ? 'sheet goods are' : 'lumber is'} wanted here.`
          : `There is no stock "${id}".`;
    ctx.findings.error('stock-unknown', id === undefined ? path : where, message, nameHint(id ?? '', fit));
    return '';
  };
  const opt = <K extends string, V>(k: K, v: V | undefined): Partial<Record<K, V>> =>
    v === undefined ? {} : ({ [k]: v } as Record<K, V>);
  const out: DrawerFields = {
    front: {
      kind: front?.kind ?? 'separate',
      stock: stock(front?.stock, 'lumber', 'front', 'stock'),
      ...opt('thickness', len(front?.thickness, 'front', 'thickness')),
      ...opt('reveal', len(front?.reveal, 'front', 'reveal')),
      ...opt('back', len(front?.back, 'front', 'back')),
      ...opt('pulls', front?.pulls),
    },
    box: {
      stock: stock(box?.stock, 'lumber', 'box', 'stock'),
      bottom: stock(box?.bottom, 'sheet', 'box', 'bottom'),
      runner: box?.runner ?? (front?.kind === 'integral' ? 'none' : 'side-slide'),
      ...opt('bottomUp', len(box?.bottomUp, 'box', 'bottomUp')),
      ...opt('sides', len(box?.sides, 'box', 'sides')),
      ...opt('height', len(box?.height, 'box', 'height')),
      ...opt('depth', len(box?.depth, 'box', 'depth')),
      ...opt('corner', box?.corner),
      ...opt('slide', box?.slide),
    },
  };
  return failed ? undefined : out;
}

function contextOf(
  cell: Cell,
  count: number,
  mark: string,
  path: JsonPath,
  ctx: DrawerContext,
): ComponentContext | undefined {
  const opening = openingOf(cell, path, ctx);
  if (!opening) return undefined;
  return { id: cell.id, index: cell.index, mark: mark.replace('{n}', String(count)), path, opening, world: ctx.world };
}

/** The air between four parts: their facing faces; in front the edge of the lower part, behind whatever closes the case. */
function openingOf(cell: Cell, path: JsonPath, ctx: DrawerContext): Opening | undefined {
  const { graph } = ctx.ev;
  const get = (name: string): Sized | undefined => graph.get(name);
  const [l, r] = [get(`${cell.left}.right`), get(`${cell.right}.left`)];
  const [b, t] = [get(`${cell.bottom}.top`), get(`${cell.top}.bottom`)];
  const front = get(`${cell.bottom}.front`);
  if (!l || !r || !b || !t || !front) return undefined;
  if (r.value <= l.value || t.value <= b.value) {
    ctx.findings.error(
      'opening-none',
      path,
      `Between "${cell.left}" and "${cell.right}", "${cell.bottom}" and "${cell.top}" there is no opening.`,
      'Name the parts on both sides of the drawer, and above and below it.',
      [cell.left, cell.right, cell.bottom, cell.top],
    );
    return undefined;
  }
  const back = get(`${closing([l.value, r.value], [b.value, t.value], front.value, cell, ctx)}`);
  if (!back) return undefined;
  const shrinks = [cell.left, cell.right].map((id) => shrinkDeep(ctx.bodies.get(id), back.value - front.value, ctx));
  return {
    shrinks: nm(Math.max(...shrinks)),
    left: cell.left,
    right: cell.right,
    bottom: cell.bottom,
    top: cell.top,
    across: [l, r],
    deep: [front, back],
    up: [b, t],
  };
}

/** What a part beside a drawer loses of the depth, across its grain, at the driest, nm. */
const shrinkDeep = (part: Body | undefined, deep: number, ctx: DrawerContext): number =>
  part === undefined || part.grain === 1 ? 0 : ctx.world.shrink(part.stock.id, deep);

/** The face behind the opening: the front of the nearest part that stands behind its middle; with none, the back of the side. */
function closing(
  across: readonly [number, number],
  up: readonly [number, number],
  front: number,
  cell: Cell,
  ctx: DrawerContext,
): string {
  const bounds = new Set([cell.left, cell.right, cell.bottom, cell.top]);
  const far = Math.max(
    ...[cell.left, cell.right].map((id) => ctx.bodies.get(id)?.box[1][1] ?? 0),
    wholeOf([...ctx.bodies.values()])[1][0],
  );
  const behind = [...ctx.bodies.values()].filter(
    (p) => !bounds.has(p.id) && meet(p.box[0], across) && meet(p.box[2], up) && p.box[1][0] > (front + far) / 2,
  );
  behind.sort((p, q) => p.box[1][0] - q.box[1][0] || (p.id < q.id ? -1 : 1));
  const first = behind[0];
  return first ? `${first.id}.front` : `${cell.left}.back`;
}
