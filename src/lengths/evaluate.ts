import type { Expr, SyntaxFault } from './expression.js';
import { caught, stop } from './faults.js';
import type { Length, Units } from './length.js';
import { NM_PER_IN, NM_PER_MM, nm } from './length.js';

export type Reference = Extract<Expr, { kind: 'name' | 'face' }>;
/**
 * What a name stands for: a length (`Sized` fits as it is), a plain number, a fault of its own (its place in the text
 * is filled in when it has none), or undefined when the name is not known.
 */
export type Found =
  | { readonly value: Length }
  | { readonly number: number }
  | { readonly fault: Omit<SyntaxFault, 'at'> & { readonly at?: readonly [number, number] } }
  | undefined;
export type Lookup = (reference: Reference) => Found;
/** A name that was read, as typed (`W`, `side_left.right`), and the length that it gave. */
export interface Input {
  readonly name: string;
  readonly value: Length;
}
export type Evaluated = { readonly value: Length; readonly inputs: readonly Input[] } | { readonly fault: SyntaxFault };

/** Largest length that can be meant, nm: 100 m (our default). */
export const LARGEST_LENGTH = 1e11;

/** `bare` numbers may still become lengths in the file's units; a ratio of two lengths may not. */
type Quantity =
  | { readonly kind: 'length'; readonly nm: number }
  | { readonly kind: 'number'; readonly value: number; readonly bare: boolean; readonly fraction: boolean };
interface World {
  readonly units: Units;
  readonly lookup: Lookup;
  readonly inputs: Map<string, Length>;
}

/** How a reference is typed: `W`, `side_left.right`. */
export const referenceName = (r: Reference): string => (r.kind === 'name' ? r.name : `${r.part}.${r.face}`);

/** Every name and face in the tree, in the order typed, each once. */
export function namesIn(tree: Expr): readonly string[] {
  return [...new Set(referencesIn(tree).map(referenceName))];
}
/** Every name and face in the tree as it stands there, in the order typed. */
export function referencesIn(tree: Expr): readonly Reference[] {
  switch (tree.kind) {
    case 'name':
    case 'face':
      return [tree];
    case 'binary':
      return [...referencesIn(tree.left), ...referencesIn(tree.right)];
    case 'negate':
      return referencesIn(tree.of);
    case 'call':
      return tree.args.flatMap(referencesIn);
    default:
      return [];
  }
}

/**
 * The length that a tree stands for, rounded once to a whole nanometre, with the names it read. A bare number is a
 * length in `units`. Faults: names not known, lengths multiplied, a ratio where a length is wanted, division by nothing.
 */
export function evaluateExpr(tree: Expr, units: Units, lookup: Lookup): Evaluated {
  return caught((): Evaluated => {
    const world: World = { units, lookup, inputs: new Map() };
    const value = rounded(asLength(reckon(tree, world), tree, units), tree);
    return { value, inputs: inputsOf(world) };
  });
}

/** As `evaluateExpr`, but a plain number stays one: for counts and factors. */
export function evaluateQuantity(
  tree: Expr,
  units: Units,
  lookup: Lookup,
): Evaluated | { readonly number: number; readonly inputs: readonly Input[] } {
  return caught(() => {
    const world: World = { units, lookup, inputs: new Map() };
    const q = reckon(tree, world);
    if (q.kind === 'number') return { number: q.value, inputs: inputsOf(world) };
    return { value: rounded(q.nm, tree), inputs: inputsOf(world) };
  });
}

const inputsOf = (world: World): Input[] => [...world.inputs].map(([name, value]) => ({ name, value }));
const length = (value: number): Quantity => ({ kind: 'length', nm: value });
const number = (value: number, bare: boolean, fraction = false): Quantity => ({
  kind: 'number',
  value,
  bare,
  fraction,
});

function rounded(value: number, tree: Expr): Length {
  if (!Number.isFinite(value) || Math.abs(value) > LARGEST_LENGTH) {
    stop('length-out-of-range', tree.at, 'longer than 100 m', 'check the figures and their units');
  }
  return nm(value);
}

/** The quantity as nanometres, unrounded; stops when it is a number that cannot be a length. */
function asLength(q: Quantity, tree: Expr, units: Units): number {
  if (q.kind === 'length') return q.nm;
  if (!q.bare) {
    stop(
      'ratio-not-length',
      tree.at,
      'a length over a length is a plain number, not a length',
      'multiply it by a length',
    );
  }
  if (q.fraction && units === 'mm') {
    stop(
      'fraction-in-millimetres',
      tree.at,
      'a bare fraction in a file in millimetres',
      'write its unit (7/8in), or decimals',
    );
  }
  return q.value * (units === 'in' ? NM_PER_IN : NM_PER_MM);
}

function reckon(tree: Expr, world: World): Quantity {
  switch (tree.kind) {
    case 'length':
      return length(tree.nm);
    case 'number':
      return number(tree.value, true, tree.fraction !== undefined);
    case 'name':
    case 'face':
      return refer(tree, world);
    case 'negate': {
      const q = reckon(tree.of, world);
      return q.kind === 'length' ? length(-q.nm) : { ...q, value: -q.value };
    }
    case 'call':
      return tree.name === 'round' ? round(tree, world) : extreme(tree, world);
    case 'binary':
      return tree.op === '*' || tree.op === '/' ? scale(tree, world) : add(tree, world);
  }
}

function refer(tree: Reference, world: World): Quantity {
  const name = referenceName(tree);
  const found = world.lookup(tree);
  if (found === undefined) stop('name-not-known', tree.at, `the name ${name} is not known here`);
  if ('fault' in found) {
    const { code, message, hint, at } = found.fault;
    stop(code as 'name-not-known', at ?? tree.at, message, hint);
  }
  if ('number' in found) return number(found.number, true);
  world.inputs.set(name, found.value);
  return length(found.value);
}

type Binary = Extract<Expr, { kind: 'binary' }>;
type Call = Extract<Expr, { kind: 'call' }>;

function add(tree: Binary, world: World): Quantity {
  const [a, b] = [reckon(tree.left, world), reckon(tree.right, world)];
  const sign = tree.op === '+' ? 1 : -1;
  if (a.kind === 'number' && b.kind === 'number') {
    return number(a.value + sign * b.value, a.bare && b.bare, a.fraction || b.fraction);
  }
  return length(asLength(a, tree.left, world.units) + sign * asLength(b, tree.right, world.units));
}

function scale(tree: Binary, world: World): Quantity {
  const [a, b] = [reckon(tree.left, world), reckon(tree.right, world)];
  if (tree.op === '*') {
    if (a.kind === 'length' && b.kind === 'length') {
      stop(
        'length-times-length',
        tree.at,
        'a length times a length is an area',
        'one of the two must be a plain number',
      );
    }
    if (a.kind === 'length') return length(a.nm * (b as { value: number }).value);
    if (b.kind === 'length') return length(a.value * b.nm);
    return number(a.value * b.value, a.bare && b.bare, a.fraction || b.fraction);
  }
  if ((b.kind === 'length' ? b.nm : b.value) === 0) {
    stop(
      'division-by-nothing',
      tree.right.at,
      'this is 0, and nothing can be divided by 0',
      'check the value below the line',
    );
  }
  if (b.kind === 'length') {
    if (a.kind === 'length') return number(a.nm / b.nm, false);
    stop(
      'number-over-length',
      tree.at,
      'a number over a length is no length',
      'give the number above a unit, such as 2in',
    );
  }
  if (a.kind === 'length') return length(a.nm / b.value);
  return number(a.value / b.value, a.bare && b.bare, a.fraction || b.fraction);
}

/** All arguments as plain numbers, or else all as lengths. */
function together(
  tree: Call,
  world: World,
): { readonly lengths: boolean; readonly values: number[]; readonly of: Quantity[] } {
  const of = tree.args.map((a) => reckon(a, world));
  const lengths = of.some((q) => q.kind === 'length');
  const values = of.map((q, i) =>
    lengths ? asLength(q, tree.args[i] as Expr, world.units) : (q as { value: number }).value,
  );
  return { lengths, values, of };
}
const numberLike = (of: readonly Quantity[], value: number): Quantity =>
  number(
    value,
    of.every((q) => q.kind === 'number' && q.bare),
    of.some((q) => q.kind === 'number' && q.fraction),
  );

function extreme(tree: Call, world: World): Quantity {
  const { lengths, values, of } = together(tree, world);
  const value = tree.name === 'min' ? Math.min(...values) : Math.max(...values);
  return lengths ? length(value) : numberLike(of, value);
}

/** `round(x, step)`: the nearest whole multiple of the step, halves upwards. `round(n)` of a plain number: a whole number. */
function round(tree: Call, world: World): Quantity {
  const { lengths, values, of } = together(tree, world);
  const [value, step] = [values[0] as number, values[1] ?? 1];
  if (lengths && values.length === 1) {
    stop('round-needs-step', tree.at, 'a length is rounded to a step', 'write round(W / 3, 1/16)');
  }
  if (step <= 0)
    stop('division-by-nothing', tree.args[1]?.at ?? tree.at, 'the step is not above 0', 'write such as 1/16');
  // the quotient carries the error of one division: a half that is meant must not fall just short of it
  const result = Math.floor(value / step + 0.5 + 1e-9) * step;
  return lengths ? length(result) : numberLike(of, result);
}
