import type { Diagnostic } from '../diag/diagnostic.js';
import { AXES } from '../geom/axis.js';
import { byAxis } from '../geom/box.js';
import type { Vec3 } from '../geom/box.js';
import type { Placement } from '../geom/placement.js';
import type { Recipe } from '../geom/recipe.js';
import type { Kernel, Mesh } from '../geom/solid.js';
import type { Part, Piece } from '../piece/piece.js';
import type { Solids } from '../solids/solids.js';
import { finding } from './finding.js';
import { sameSurface } from './sameSurface.js';

/** A turned part may differ from its like by this much wood (mm3) and in each size by this (mm): rounding of figures. */
const BAR = 1;
const NEAR = 0.001;
type Turn = Placement['rotation'];

/** The 24 turns by quarters: every order of the axes with every choice of ways that keeps right-handed what is so. */
const TURNS: readonly Turn[] = [
  [0, 1, 2],
  [1, 2, 0],
  [2, 0, 1],
  [0, 2, 1],
  [2, 1, 0],
  [1, 0, 2], // prettier-ignore
].flatMap((order, n) =>
  [0, 1, 2, 3, 4, 5, 6, 7].flatMap((signs): Turn[] => {
    const way = (i: number): number => ((signs >> i) & 1 ? -1 : 1);
    if (way(0) * way(1) * way(2) !== (n < 3 ? 1 : -1)) return [];
    return [byAxis((i) => byAxis((k) => (order[i] === k ? way(i) : 0)))];
  }),
);

/** A part that shares another's card must be that part turned: not its mirror image, nor one of other wood. */
export function proveTurned(part: Part, piece: Piece, solids: Solids, kernel: Kernel): Diagnostic[] {
  const head = piece.parts.find((p) => p.id === part.turnOf);
  const [own, other] = [part.id, part.turnOf].map((id) => solids.parts.find((s) => s.id === id)?.recipe);
  if (!own || !other || !head)
    return [finding('proof-card-missing', part, 'the model has no solid of it or of its like')];
  if (kernel.key(own) === kernel.key(other) || isTurned(own, other, kernel)) return [];
  const more = kernel.volume(own) - kernel.volume(other);
  const figures = Math.abs(more) > BAR ? `${Math.abs(more).toFixed(1)} mm3 ${more > 0 ? 'more' : 'less'}` : 'as much wood, but in other places'; // prettier-ignore
  return [finding('proof-card-turned', part, `it is not ${head.mark} turned, whose card it shares: ${figures}`)];
}
function isTurned(own: Recipe, other: Recipe, kernel: Kernel): boolean {
  const [p, q] = [kernel.mesh(own), kernel.mesh(other)];
  const home = moved(p, TURNS[0] as Turn);
  const turns = TURNS.map((by) => ({ by, ...moved(q, by) })).filter(({ size }) =>
    AXES.every((a) => Math.abs(size[a] - home.size[a]) <= NEAR),
  );
  if (turns.some(({ mesh }) => sameSurface(home.mesh, mesh))) return true;
  // Surfaces that are rounded otherwise may not be seen to be alike: then by the wood that only one of them has.
  const least = (r: Recipe): Vec3 => byAxis((a) => (kernel.bounds(r)?.[a][0] ?? 0) * 1e6);
  const at = least(own);
  return turns.some(({ by }) => {
    const turned: Recipe = { op: 'placed', by: { rotation: by, origin: [0, 0, 0] }, of: other };
    const low = least(turned);
    const over: Recipe = { op: 'placed', by: { rotation: by, origin: byAxis((a) => Math.round(at[a] - low[a])) }, of: other }; // prettier-ignore
    const only = (a: Recipe, b: Recipe): number => kernel.volume({ op: 'cut', from: a, tools: [b] });
    return only(own, over) + only(over, own) <= BAR;
  });
}
/** A mesh turned, its low corner then at the origin, and its sizes; mm. */
function moved(mesh: Mesh, by: Turn): { mesh: Mesh; size: Vec3 } {
  const positions = new Float64Array(mesh.positions.length);
  const [low, high] = [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]]; // prettier-ignore
  for (let i = 0; i < positions.length; i += 3) {
    for (const a of AXES) {
      const from = by[a][0] !== 0 ? 0 : by[a][1] !== 0 ? 1 : 2;
      const x = by[a][from] * (mesh.positions[i + from] as number);
      positions[i + a] = x;
      low[a] = Math.min(low[a] as number, x);
      high[a] = Math.max(high[a] as number, x);
    }
  }
  for (let i = 0; i < positions.length; i++) positions[i] = (positions[i] as number) - (low[i % 3] as number);
  return { mesh: { positions, triangles: mesh.triangles }, size: byAxis((a) => (high[a] as number) - (low[a] as number)) }; // prettier-ignore
}
