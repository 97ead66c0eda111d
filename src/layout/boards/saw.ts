import type { CutBoard } from './board.js';
import { edgeAt, type Rect } from './clear.js';
import { piecesOf, restsOf, type Node } from './fill.js';
import type { Ground } from './ground.js';
import { longest } from './remnants.js';

type Cut = CutBoard['cuts'][number];

interface Context {
  readonly ground: Ground;
  readonly kerf: number;
  readonly say: (node: Node) => string;
}

/** A cut-up board as it is told: its pieces by the blanks they are, remnants worth keeping, and the cuts in order. */
export function sawn(
  node: Node,
  ground: Ground,
  blankOf: (piece: Extract<Node, { kind: 'piece' }>) => { readonly id: string; readonly mark: string },
  { kerf, keep }: { readonly kerf: number; readonly keep: readonly [number, number] },
): CutBoard {
  const pieces = piecesOf(node).map((p) => {
    const [x, y, x1, y1] = p.at;
    return { blank: blankOf(p).id, x, y, length: x1 - x, width: y1 - y, backUp: p.back };
  });
  const remnants: CutBoard['remnants'][number][] = [];
  const names = new Map<Rect, string>();
  for (const rest of restsOf(node)) {
    const clear = longest(rest, ground, keep);
    if (!clear) continue;
    const name = `R${remnants.length + 1}`;
    // As the stock after cutting calls it: marks of parts may be R1 too.
    names.set(rest, `${ground.board.id}-${name}`);
    remnants.push({ name, at: onBoard(rest, ground), clear: clear.at });
  }
  const say = (n: Node): string =>
    n.kind === 'piece'
      ? blankOf(n).mark
      : n.kind === 'rest'
        ? (names.get(n.at) ?? 'waste')
        : n.parts
            .map(say)
            .filter((s) => s !== 'waste')
            .join(', ') || 'waste';
  const cuts: Cut[] = [];
  cutsOf(node, { ground, kerf, say }, cuts);
  return { board: ground.board.id, pieces, remnants, cuts };
}

/** What is left reaches the board's own end and edge. */
function onBoard(rest: Rect, ground: Ground): Rect {
  const [x0, y0, x1] = rest;
  const end = x1 === ground.x1 ? ground.board.length : x1;
  const start = x0 === ground.x0 ? 0 : x0;
  const edge = Math.floor(Math.max(edgeAt(ground.board, start), edgeAt(ground.board, end)));
  return [start, y0, end, Math.min(rest[3], edge)];
}

/** Which ends of a stick are still as the board came. */
type Rough = readonly [low: boolean, high: boolean];

/** All cuts of one direction along a stick, from the marked end or the lower edge; then those within each part. */
function cutsOf(node: Node, ctx: Context, out: Cut[], rough: Rough = [true, true]): void {
  if (node.kind !== 'cut' || node.parts.every((p) => p.kind === 'rest')) return;
  const { board } = ctx.ground;
  const { parts, at, way } = node;
  const axis = way === 'cross' ? 0 : 1;
  const [x0, x1] = [rough[0] ? 0 : at[0], rough[1] ? board.length : at[2]];
  const over: [number, number] = way === 'cross' ? [at[1], at[3]] : [x0, x1];
  const put = (
    line: number,
    saw: Cut['saw'],
    leaves: string,
    kind: Cut['kind'] = way === 'cross' ? 'crosscut' : 'rip',
  ) => void out.push({ number: out.length + 1, kind, at: line, over, saw, leaves });
  const low = (n: Node): number => n.at[axis] as number;
  const high = (n: Node): number => n.at[axis + 2] as number;
  const [start, end] = way === 'cross' ? [x0, x1] : [at[1], at[3]];
  const [first, last] = [parts[0] as Node, parts.at(-1) as Node];
  if (first.kind !== 'rest' && low(first) > start) {
    const crooked = way === 'rip' && start === 0 && (board.crook ?? 0) > 0;
    put(low(first), 'before', 'waste', crooked ? 'straighten' : undefined);
  }
  parts.slice(1).forEach((next, i) => {
    const before = parts[i] as Node;
    const shared = low(next) - high(before) === ctx.kerf;
    if (before.kind !== 'rest') put(high(before), 'beyond', ctx.say(before));
    if (next.kind !== 'rest' && !(shared && before.kind !== 'rest'))
      put(low(next), 'before', before.kind === 'rest' ? ctx.say(before) : 'waste');
  });
  if (last.kind !== 'rest' && high(last) < end) put(high(last), 'beyond', ctx.say(last));
  for (const part of parts) cutsOf(part, ctx, out, way === 'rip' ? rough : [false, false]);
}
