/**
 * Guillotine patterns. `cross`: the blade runs across the sheet's length, so sizes are told along x; `rip`: along it, sizes
 * along y. Lengths nm; between two strips lies one kerf.
 */
export type Way = 'cross' | 'rip';

/** A pattern as it is built: each split cuts `at` off a region; `rest` is what is left beyond the kerf (may be <= 0). */
export type Tree =
  | { readonly kind: 'piece'; readonly item: number; readonly turned: boolean }
  | { readonly kind: 'empty' }
  | {
      readonly kind: 'split';
      readonly way: Way;
      readonly at: number;
      readonly first: Tree;
      readonly rest: number;
      readonly second: Tree;
    };

/** The same pattern as it is cut: strips side by side, largest first, what is left over in one offcut at the end. */
export type Pattern =
  | { readonly kind: 'piece'; readonly item: number; readonly turned: boolean }
  | { readonly kind: 'empty' }
  | { readonly kind: 'strips'; readonly way: Way; readonly strips: readonly Strip[] };
export interface Strip {
  readonly size: number;
  readonly pattern: Pattern;
}

const EMPTY = { kind: 'empty' } as const;

/** Splits one after another in the same direction are one set of strips; they may stand in any order, so the largest go first. */
export function asPattern(tree: Tree, w: number, h: number): Pattern {
  if (tree.kind !== 'split') return tree;
  const { way } = tree;
  const whole = way === 'cross' ? w : h;
  const other = way === 'cross' ? h : w;
  const strips = collect(tree, way, whole)
    .map(({ size, tree: t }) => ({
      size,
      pattern: way === 'cross' ? asPattern(t, size, other) : asPattern(t, other, size),
    }))
    .filter((s) => s.pattern.kind !== 'empty')
    .sort((a, b) => b.size - a.size || firstItem(a.pattern) - firstItem(b.pattern));
  const only = strips[0];
  if (!only) return EMPTY;
  return strips.length === 1 && only.size === whole ? only.pattern : { kind: 'strips', way, strips };
}

function collect(tree: Tree, way: Way, size: number): { readonly size: number; readonly tree: Tree }[] {
  if (tree.kind === 'empty') return [];
  if (tree.kind !== 'split' || tree.way !== way) return [{ size, tree }];
  return [...collect(tree.first, way, tree.at), ...(tree.rest > 0 ? collect(tree.second, way, tree.rest) : [])];
}

/** Items of a pattern, in the order in which they lie. */
export const itemsOf = (p: Pattern): number[] =>
  p.kind === 'piece' ? [p.item] : p.kind === 'empty' ? [] : p.strips.flatMap((s) => itemsOf(s.pattern));
const firstItem = (p: Pattern): number => Math.min(...itemsOf(p));

/** Items of a tree, one entry a piece, in the order in which they were placed. */
export function itemsInTree(tree: Tree, out: number[] = []): number[] {
  if (tree.kind === 'piece') out.push(tree.item);
  else if (tree.kind === 'split') {
    itemsInTree(tree.first, out);
    itemsInTree(tree.second, out);
  }
  return out;
}
