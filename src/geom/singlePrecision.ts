import type { Vec3 } from './box.js';

const single = new Float32Array(3);
const words = new Uint32Array(single.buffer);
/** Where the search for three numbers in single precision begins in a table of a power of two; -0 counts as 0. */
function place(x: number, y: number, z: number, mask: number): number {
  single[0] = x + 0;
  single[1] = y + 0;
  single[2] = z + 0;
  const [a, b, c] = [words[0] as number, words[1] as number, words[2] as number];
  const mixed = Math.imul(Math.imul(Math.imul(a, 0x9e3779b1) ^ b, 0x85ebca6b) ^ c, 0xc2b2ae35);
  return (mixed ^ (mixed >>> 15)) & mask;
}

/** Points in doubles, found again by their figures in single precision. Of points alike in these, the last counts. */
export class SinglePrecision {
  private readonly slots: Int32Array;
  private readonly mask: number;

  /** x, y, z of each point, one after the other. */
  constructor(private readonly points: readonly number[]) {
    let size = 16;
    while (size < points.length) size *= 2;
    this.mask = size - 1;
    this.slots = new Int32Array(size).fill(-1);
    for (let i = 0; i + 2 < points.length; i += 3)
      this.slots[this.slot(points[i] as number, points[i + 1] as number, points[i + 2] as number)] = i;
  }
  of(x: number, y: number, z: number): Vec3 | undefined {
    const i = this.slots[this.slot(x, y, z)] as number;
    return i < 0 ? undefined : [this.points[i] as number, this.points[i + 1] as number, this.points[i + 2] as number];
  }
  /** The slot of a point, or the free one where it would stand. Tables are at most a third full. */
  private slot(x: number, y: number, z: number): number {
    const [p, q, r] = [Math.fround(x), Math.fround(y), Math.fround(z)];
    let at = place(x, y, z, this.mask);
    for (let i = this.slots[at] as number; i >= 0; i = this.slots[at] as number) {
      const { points } = this;
      if (Math.fround(points[i] as number) === p && Math.fround(points[i + 1] as number) === q && Math.fround(points[i + 2] as number) === r) return at; // prettier-ignore
      at = (at + 1) & this.mask;
    }
    return at;
  }
}
