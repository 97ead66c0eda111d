import type { Graduation, Length_ } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import type { Length } from '../lengths/length.js';
import { nm, snap } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule } from '../value/sized.js';
import type { Evaluator } from './evaluate.js';
import type { Findings } from './fault.js';

const isGraduation = (m: unknown): m is Graduation => typeof m === 'object' && m !== null && 'graduate' in m;

/** Makes a node of every measure: `W`; a list `row` gives `row_1`, `row_2` ...; a graduation gives as many as it says. */
export function defineMeasures(
  measures: Readonly<Record<string, Length_ | readonly Length_[] | Graduation>>,
  ev: Evaluator,
  step: Length,
  findings: Findings,
): string[] {
  const names: string[] = [];
  const add = (name: string, path: JsonPath, make: () => Sized | undefined): void => {
    if (ev.graph.has(name)) {
      findings.error(
        'id-twice',
        path,
        `The measure "${name}" is given twice.`,
        'A list "row" already makes row_1, row_2 …',
      );
      return;
    }
    names.push(name);
    ev.graph.define(name, path, make);
  };
  for (const [name, m] of Object.entries(measures)) {
    const path: JsonPath = ['measures', name];
    if (isGraduation(m)) graduate(name, m, path, ev, step, findings, add);
    else if (Array.isArray(m)) {
      (m as readonly Length_[]).forEach((text, k) =>
        add(`${name}_${k + 1}`, [...path, k], () => ev.length(text, [...path, k])),
      );
    } else add(name, path, () => ev.length(m as Length_, path));
  }
  return names;
}

type Progression =
  | { readonly kind: 'equal' }
  | { readonly kind: 'step'; readonly text: string }
  | { readonly kind: 'ratio'; readonly by: number };

function readBy(by: string): Progression | undefined {
  const text = by.trim();
  if (text === 'equal') return { kind: 'equal' };
  const step = /^step\s+(.+)$/.exec(text);
  if (step?.[1]) return { kind: 'step', text: step[1] };
  const ratio = /^ratio\s+(\d+(?:\.\d+)?)$/.exec(text);
  return ratio?.[1] && Number(ratio[1]) > 0 ? { kind: 'ratio', by: Number(ratio[1]) } : undefined;
}

/**
 * The sizes of n members that together make `total` (nm), before snapping: equal; each `step` more than the last;
 * or each `ratio` times the last. Sums of an arithmetic and a geometric series.
 */
export function series(n: number, total: number, by: 'equal' | { step: number } | { ratio: number }): number[] {
  if (by !== 'equal' && 'step' in by) {
    const first = (total - (by.step * n * (n - 1)) / 2) / n;
    return Array.from({ length: n }, (_, i) => first + i * by.step);
  }
  const r = by === 'equal' ? 1 : by.ratio;
  const weights = Array.from({ length: n }, (_, i) => r ** i);
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => (total * w) / sum);
}

function graduate(
  name: string,
  g: Graduation,
  path: JsonPath,
  ev: Evaluator,
  step: Length,
  findings: Findings,
  add: (name: string, path: JsonPath, make: () => Sized | undefined) => void,
): void {
  const by = readBy(g.by);
  if (!by) {
    findings.error(
      'graduation-unreadable',
      [...path, 'by'],
      `"${g.by}" is not a progression.`,
      'Write "equal", "step 3/4" or "ratio 1.15".',
    );
    return;
  }
  if (!Number.isInteger(g.graduate) || g.graduate < 2 || g.graduate > 24) {
    findings.error(
      'graduation-count',
      [...path, 'graduate'],
      `${g.graduate} is not a number of drawers to graduate.`,
      'Use 2 to 24.',
    );
    return;
  }
  const all = once(() => sizes(name, g, by, path, ev, step, findings));
  for (let i = 0; i < g.graduate; i++) add(`${name}_${i + 1}`, path, () => all()?.[i]);
}

function once<T>(f: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: f() }).value;
}

function sizes(
  name: string,
  g: Graduation,
  by: Progression,
  path: JsonPath,
  ev: Evaluator,
  step: Length,
  findings: Findings,
): Sized[] | undefined {
  const total = ev.length(g.in, [...path, 'in']);
  const snapTo = g.snap === undefined ? step : ev.length(g.snap, [...path, 'snap'])?.value;
  const stride = by.kind === 'step' ? ev.length(by.text, [...path, 'by'])?.value : 0;
  if (!total || snapTo === undefined || stride === undefined) return undefined;
  if (snapTo <= 0) {
    findings.error(
      'graduation-snap',
      [...path, 'snap'],
      'Sizes cannot be snapped to nothing.',
      'Use a step such as 1/16.',
    );
    return undefined;
  }
  const n = g.graduate;
  const exact = series(
    n,
    total.value,
    by.kind === 'equal' ? 'equal' : by.kind === 'step' ? { step: stride } : { ratio: by.by },
  );
  const snapped = exact.slice(0, -1).map((x) => snap(x, snapTo));
  const last = nm(total.value - snapped.reduce((a, b) => a + b, 0));
  const values = [...snapped, last];
  if (values.some((v) => v <= 0)) {
    findings.error(
      'graduation-too-steep',
      path,
      `"${g.by}" leaves nothing for one of the ${n}.`,
      'Use a smaller step or ratio.',
    );
    return undefined;
  }
  const source = 'sum of a series; common practice';
  return values
    .map((v, i) =>
      byRule(
        v,
        i === n - 1 ? `${name}: ${g.by}, the last takes what is left` : `${name}: ${g.by}, number ${i + 1} of ${n}`,
        source,
        [{ name: `${name} in`, value: total.value }],
      ),
    )
    .map((s) => ({ ...s, path }));
}
