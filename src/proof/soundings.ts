import { byAxis } from '../geom/box.js';
import type { Box3, Vec3 } from '../geom/box.js';
import { whereIs } from '../geom/membership.js';
import { meetBoxes, reachOf } from '../geom/reach.js';
import type { Recipe } from '../geom/recipe.js';
import type { Mesh } from '../geom/solid.js';
import { squared } from '../geom/squared.js';

const NM = 1e6;
/** Where in what a tool takes a sounding is made, as shares of its box: off the middle, where edges like to run. */
const SHARES: readonly Vec3[] = [
  [0.5031, 0.4973, 0.5017],
  [0.2613, 0.2437, 0.2519],
  [0.7429, 0.7577, 0.7483],
  [0.2413, 0.7537, 0.5519],
  [0.7629, 0.2377, 0.4483],
];

/**
 * True when a surface has wood where a part's figures leave it and none where its tools took it, tried in the middle of each
 * tool. So a tool that the kernel left out is seen, whatever the recipe says. Mesh in mm, own axes.
 */
export function soundsAs(mesh: Mesh, part: Recipe): boolean {
  const own = squared(part);
  if (own.op !== 'cut' || own.from.op !== 'box') return true;
  const blank = own.from.at;
  return own.tools.every((tool) => {
    const reach = reachOf(tool);
    const room = reach && meetBoxes(reach, blank);
    return !room || soundedIn(mesh, own, room);
  });
}
/** Soundings in a box, until one is made where wood was taken. */
function soundedIn(mesh: Mesh, part: Recipe, room: Box3): boolean {
  for (const share of SHARES) {
    const p = within(room, share);
    const where = whereIs(p, part);
    if (where === 'unsure') continue;
    if (inMesh(mesh, byAxis((a) => p[a] / NM)) !== (where === 'in')) return false; // prettier-ignore
    if (where === 'out') return true;
  }
  return true;
}
const within = (box: Box3, share: Vec3): Vec3 => byAxis((a) => box[a][0] + (box[a][1] - box[a][0]) * share[a]);
/** Is a point in a closed surface? By how often a line from it along the first axis goes through. */
export function inMesh({ positions, triangles }: Mesh, p: Vec3): boolean {
  let odd = false;
  const [x, y, z] = p;
  const at = (corner: number, axis: number): number => positions[corner * 3 + axis] as number;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number];
    const [ay, by, cy] = [at(a, 1), at(b, 1), at(c, 1)];
    if ((ay > y && by > y && cy > y) || (ay <= y && by <= y && cy <= y)) continue;
    // Sides are taken the same way round by both of their triangles, so that no line slips through between the two.
    const sides = +over(a, b) + +over(b, c) + +over(c, a);
    if (sides % 2 === 0) continue;
    const [az, bz, cz] = [at(a, 2), at(b, 2), at(c, 2)];
    const twice = (by - ay) * (cz - az) - (cy - ay) * (bz - az);
    const [u, v] = [((y - ay) * (cz - az) - (cy - ay) * (z - az)) / twice, ((by - ay) * (z - az) - (y - ay) * (bz - az)) / twice]; // prettier-ignore
    if (at(a, 0) + u * (at(b, 0) - at(a, 0)) + v * (at(c, 0) - at(a, 0)) > x) odd = !odd;
  }
  return odd;

  function over(i: number, j: number): boolean {
    const [m, n] = i < j ? [i, j] : [j, i];
    const [my, ny] = [at(m, 1), at(n, 1)];
    return my > y !== ny > y && at(m, 2) + ((y - my) / (ny - my)) * (at(n, 2) - at(m, 2)) > z;
  }
}
