import type { Item } from '../picture.js';
import type { Zone } from './panel.js';

/** Something of a known size that is drawn into a zone at least as large. */
export interface Block {
  readonly w: number;
  readonly h: number;
  draw(zone: Zone): readonly Item[];
}
type Tree =
  | { readonly kind: 'one'; readonly piece: Block; readonly w: number; readonly h: number }
  | { readonly kind: 'row' | 'column'; readonly of: readonly [Tree, Tree]; readonly w: number; readonly h: number };

/** All ways to lay pieces, in their order, side by side and under one another by straight cuts through the field. */
function ways(pieces: readonly Block[]): Tree[] {
  const [only] = pieces;
  if (!only) return [];
  if (pieces.length === 1) return [{ kind: 'one', piece: only, w: only.w, h: only.h }];
  const out: Tree[] = [];
  for (let i = 1; i < pieces.length; i += 1)
    for (const a of ways(pieces.slice(0, i)))
      for (const b of ways(pieces.slice(i))) {
        out.push({ kind: 'row', of: [a, b], w: a.w + b.w, h: Math.max(a.h, b.h) });
        out.push({ kind: 'column', of: [a, b], w: Math.max(a.w, b.w), h: a.h + b.h });
      }
  return out;
}
/** Lays pieces into a field, the way with the least empty stretch in its fuller direction; undefined when none fits. */
export function arrange(pieces: readonly Block[], field: Zone): Tree | undefined {
  const fitting = ways(pieces).filter((t) => t.w <= field.w + 1e-6 && t.h <= field.h + 1e-6);
  const strain = (t: Tree): number => Math.max(t.w / field.w, t.h / field.h);
  return fitting.reduce<Tree | undefined>((a, b) => (a && strain(a) <= strain(b) + 1e-9 ? a : b), undefined);
}
/** Draws what was laid; spare room goes to all alike. `mirrored`: rows run from the right. */
export function drawTree(tree: Tree, zone: Zone, mirrored: boolean): Item[] {
  if (tree.kind === 'one') return [...tree.piece.draw(zone)];
  const [a, b] = tree.of;
  if (tree.kind === 'column') {
    const spare = Math.max(0, (zone.h - tree.h) / 2);
    const first = { ...zone, h: a.h + spare };
    const second = { ...zone, y: zone.y + first.h, h: zone.h - first.h };
    return [...drawTree(a, first, mirrored), ...drawTree(b, second, mirrored)];
  }
  const wide = a.w + Math.max(0, (zone.w - tree.w) / 2);
  const first = { ...zone, x: mirrored ? zone.x + zone.w - wide : zone.x, w: wide };
  const second = { ...zone, x: mirrored ? zone.x : zone.x + wide, w: zone.w - wide };
  return [...drawTree(a, first, mirrored), ...drawTree(b, second, mirrored)];
}
