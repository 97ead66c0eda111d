import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateExpr, namesIn } from '../../src/lengths/evaluate.js';
import type { Expr } from '../../src/lengths/expression.js';
import { formatLength } from '../../src/lengths/format.js';
import { nm } from '../../src/lengths/length.js';
import { parseExpression } from '../../src/lengths/parse.js';
import { printExpr } from '../../src/lengths/print.js';

const at = [0, 0] as const;
const leaf: fc.Arbitrary<Expr> = fc.oneof(
  fc.integer({ min: 0, max: 2_000_000_000 }).map((n): Expr => ({ kind: 'length', nm: n, at })),
  fc.integer({ min: 0, max: 100_000 }).map((n): Expr => ({ kind: 'number', value: n / 1000, at })),
  fc.tuple(fc.nat(99), fc.integer({ min: 1, max: 63 })).map(([w, n]): Expr => {
    return { kind: 'number', value: w + n / 64, fraction: [w, n, 64], at };
  }),
  fc
    .constantFrom('W', 'row_2', 'side_left', 'rail_{i-1}', 'short_1.side')
    .map((name): Expr => ({ kind: 'name', name, at })),
  fc.constantFrom('left', 'top').map((face): Expr => ({ kind: 'face', part: 'rail_1', face, at })),
);
const tree = fc.letrec<{ expr: Expr }>((tie) => ({
  expr: fc.oneof(
    { maxDepth: 5, withCrossShrink: true },
    leaf,
    fc
      .record({ op: fc.constantFrom('+', '-', '*', '/' as const), left: tie('expr'), right: tie('expr') })
      .map((b): Expr => ({ kind: 'binary', ...b, op: b.op as '+', at })),
    tie('expr').map((of): Expr => ({ kind: 'negate', of, at })),
    fc
      .array(tie('expr'), { minLength: 2, maxLength: 3 })
      .map((args): Expr => ({ kind: 'call', name: 'max', args, at })),
  ),
})).expr;

/** The tree without places. */
const bare = (e: Expr): unknown => JSON.parse(JSON.stringify(e, (k, v: unknown) => (k === 'at' ? undefined : v)));

test('a printed tree is read back as the same tree', () => {
  fc.assert(
    fc.property(tree, (e) => {
      const text = printExpr(e);
      fc.pre(text.length <= 500);
      const read = parseExpression(text);
      expect('tree' in read ? bare(read.tree) : `${text}: ${read.fault.code}`).toEqual(bare(e));
    }),
    { numRuns: 1000 },
  );
});

test('every place in a tree lies in the text and holds what it says', () => {
  fc.assert(
    fc.property(tree, (e) => {
      const text = printExpr(e);
      const read = parseExpression(text);
      if ('fault' in read) return;
      const look = (n: Expr): void => {
        expect(n.at[0]).toBeLessThan(n.at[1]);
        if (n.kind === 'name') expect(text.slice(...n.at).replace(/[()]/g, '')).toBe(n.name);
        if (n.kind === 'binary') [n.left, n.right].forEach(look);
        if (n.kind === 'negate') look(n.of);
        if (n.kind === 'call') n.args.forEach(look);
      };
      look(read.tree);
    }),
  );
});

test('any text gives a tree or a fault inside it, and never throws', () => {
  const words = fc.constantFrom(
    '8',
    '1/4',
    ' ',
    '-',
    '+',
    '*',
    '/',
    '(',
    ')',
    "'",
    '"',
    'W',
    'mm',
    ',',
    '.',
    '{i}',
    '½',
    'min',
    '_',
  );
  const text = fc.oneof(
    fc.string({ maxLength: 40 }),
    fc.array(words, { maxLength: 12 }).map((w) => w.join('')),
  );
  fc.assert(
    fc.property(text, (t) => {
      const read = parseExpression(t);
      if ('tree' in read) {
        evaluateExpr(read.tree, 'in', () => ({ value: nm(1) }));
        namesIn(read.tree);
        return true;
      }
      const [from, to] = read.fault.at;
      return from >= 0 && to >= from && to <= t.length && read.fault.message.length > 0;
    }),
    { numRuns: 3000 },
  );
});

test('a minus can never be read silently as part of a figure: a fraction after a whole is a sum or a fault', () => {
  const gap = fc.constantFrom('', ' ', '  ');
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 1, max: 15 }), gap, gap, (whole, n, a, b) => {
      const text = `${whole}${a}-${b}${n}/16`;
      const read = parseExpression(text);
      const spaced = a !== '' && b !== '';
      expect('tree' in read).toBe(spaced);
      if ('tree' in read) {
        const value = evaluateExpr(read.tree, 'in', () => undefined);
        expect(value).toMatchObject({ value: (whole * 16 - n) * (25_400_000 / 16) });
      }
    }),
  );
});

test('printed inch figures are expressions of the same length', () => {
  fc.assert(
    fc.property(fc.integer({ min: -64 * 100, max: 64 * 100 }), (n) => {
      const x = nm(n * 396_875);
      const read = parseExpression(formatLength(x, 'in'));
      return (
        'tree' in read &&
        JSON.stringify(evaluateExpr(read.tree, 'in', () => undefined)) === JSON.stringify({ value: x, inputs: [] })
      );
    }),
  );
});

/** Exact arithmetic of fractions with whole numbers of any size: the reference that expressions are held against. */
type Ratio = readonly [top: bigint, bottom: bigint];
const sums: Readonly<Record<string, (a: Ratio, b: Ratio) => Ratio>> = {
  '+': ([a, b], [c, d]) => [a * d + c * b, b * d],
  '-': ([a, b], [c, d]) => [a * d - c * b, b * d],
  '*': ([a, b], [c, d]) => [a * c, b * d],
  '/': ([a, b], [c, d]) => [a * d, b * c],
};
test('sums of figures agree with exact fractions to the nanometre', () => {
  const figure = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 63 }));
  const factor = fc.integer({ min: 1, max: 12 });
  const step = fc.tuple(fc.constantFrom('+', '-', '*', '/'), figure, factor);
  fc.assert(
    fc.property(figure, fc.array(step, { maxLength: 5 }), ([w0, n0], steps) => {
      let text = `${w0} ${n0}/64`;
      let exact: Ratio = [BigInt(w0 * 64 + n0), 64n];
      for (const [op, [w, n], k] of steps) {
        const scale = op === '*' || op === '/';
        text = scale ? `(${text}) ${op} ${k}` : `${text} ${op} ${w} ${n}/64`;
        exact = (sums[op] as (a: Ratio, b: Ratio) => Ratio)(exact, scale ? [BigInt(k), 1n] : [BigInt(w * 64 + n), 64n]);
      }
      const read = parseExpression(text);
      if ('fault' in read) throw new Error(`${text}: ${read.fault.message}`);
      const got = evaluateExpr(read.tree, 'in', () => undefined);
      const [top, bottom] = exact;
      fc.pre(top < 3900n * bottom && top > -3900n * bottom);
      if ('fault' in got) throw new Error(`${text}: ${got.fault.message}`);
      // |got - exact| <= half a nanometre (and the error of the doubles that it is reckoned in)
      const off = BigInt(got.value) * bottom - top * 25_400_000n;
      expect((off < 0n ? -off : off) * 1000n <= (bottom < 0n ? -bottom : bottom) * 501n).toBe(true);
    }),
    { numRuns: 500 },
  );
});
