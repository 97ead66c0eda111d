import { place, type Placement } from '../geom/placement.js';
import type { Mesh } from '../geom/solid.js';
import { NM_PER_MM } from '../lengths/length.js';

const HEADER = 80;
const PER_TRIANGLE = 50;
const TITLE = 'benchpacket, millimetres';

/**
 * A mesh as a binary STL file: 80 bytes of title, count, then for each triangle its normal and three corners as little-endian
 * single floats (mm) and two bytes of nothing. Corners anticlockwise seen from outside, also when `placement` mirrors.
 * No clock goes in: same mesh, same bytes.
 */
export function stlBytes(mesh: Mesh, placement: Placement): Uint8Array {
  const count = mesh.triangles.length / 3;
  const bytes = new Uint8Array(HEADER + 4 + count * PER_TRIANGLE);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < TITLE.length; i++) bytes[i] = TITLE.charCodeAt(i);
  view.setUint32(HEADER, count, true);
  const points = placed(mesh, placement);
  const [second, last] = mirrors(placement) ? [2, 1] : [1, 2];
  for (let t = 0; t < count; t++) {
    const corners = [0, second, last].map((k) => points[mesh.triangles[t * 3 + k] as number] as Corner);
    const numbers = [...normal(corners as [Corner, Corner, Corner]), ...corners.flat()];
    numbers.forEach((x, i) => view.setFloat32(HEADER + 4 + t * PER_TRIANGLE + i * 4, x, true));
  }
  return bytes;
}
type Corner = readonly [number, number, number];

function placed(mesh: Mesh, placement: Placement): Corner[] {
  const by: Placement = {
    rotation: placement.rotation,
    origin: placement.origin.map((x) => x / NM_PER_MM) as unknown as Corner,
  };
  const at = (i: number): number => mesh.positions[i] as number;
  return Array.from({ length: mesh.positions.length / 3 }, (_, i) => {
    const p = place(by, [at(i * 3), at(i * 3 + 1), at(i * 3 + 2)]);
    return [Math.fround(p[0]) + 0, Math.fround(p[1]) + 0, Math.fround(p[2]) + 0];
  });
}
function cross(u: Corner, v: Corner): Corner {
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}
function mirrors({ rotation: [r, s, t] }: Placement): boolean {
  const c = cross(s, t);
  return r[0] * c[0] + r[1] * c[1] + r[2] * c[2] < 0;
}
function normal([a, b, c]: readonly [Corner, Corner, Corner]): Corner {
  const n = cross([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);
  const long = Math.hypot(...n);
  return long === 0 ? [0, 0, 0] : [n[0] / long + 0, n[1] / long + 0, n[2] / long + 0];
}
