import type { Expr } from './expression.js';
import { NM_PER_MM } from './length.js';

const RANK = { '+': 1, '-': 1, '*': 2, '/': 2 } as const;

/** A tree as text that `parseExpression` reads back to the same tree; lengths in millimetres, exact to a nanometre. */
export function printExpr(tree: Expr): string {
  switch (tree.kind) {
    case 'length':
      return `${plainDecimal(tree.nm / NM_PER_MM)}mm`;
    case 'number':
      return numberText(tree);
    case 'name':
      return tree.name;
    case 'face':
      return `${tree.part}.${tree.face}`;
    case 'negate':
      return `-${tree.of.kind === 'binary' || tree.of.kind === 'negate' ? `(${printExpr(tree.of)})` : printExpr(tree.of)}`;
    case 'call':
      return `${tree.name}(${tree.args.map(printExpr).join(', ')})`;
    case 'binary':
      return `${left(tree.left, RANK[tree.op])} ${tree.op} ${right(tree.right, RANK[tree.op], tree.op === '/')}`;
  }
}

function numberText(tree: Extract<Expr, { kind: 'number' }>): string {
  if (tree.fraction === undefined) return plainDecimal(tree.value);
  const [whole, top, bottom] = tree.fraction;
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** An operand in brackets where it would be read otherwise: signs of equal rank are read from the left. */
const left = (tree: Expr, rank: number): string =>
  tree.kind === 'binary' && RANK[tree.op] < rank ? `(${printExpr(tree)})` : printExpr(tree);
function right(tree: Expr, rank: number, below: boolean): string {
  const text = printExpr(tree);
  const fraction = below && tree.kind === 'number' && tree.fraction !== undefined;
  return fraction || (tree.kind === 'binary' && RANK[tree.op] <= rank) ? `(${text})` : text;
}

/** Decimal digits without an exponent. Six places (a nanometre, in mm) at least are kept. */
function plainDecimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12).replace(/\.?0+$/, '') : text;
}
