/** Whole numbers from 1 to `most` in a row that look random, the same every time (a linear congruence). */
export function sequence(seed: number): (most: number) => number {
  let s = seed;
  return (most) => {
    s = (Math.imul(s, 1_103_515_245) + 12_345) & 0x7fffffff;
    return 1 + ((s >> 8) % most);
  };
}
