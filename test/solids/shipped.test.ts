import { describe, expect, it } from 'vitest';
import { byAxis } from '../../src/geom/box.js';
import { createKernel } from '../../src/geom/kernel.js';
import type { Piece } from '../../src/piece/piece.js';
import { makeSolids } from '../../src/solids/make.js';
import { shippedPiece } from '../specimens/pieces.js';

async function solidsOf(piece: Piece) {
  const kernel = await createKernel();
  const made = makeSolids(piece, kernel);
  kernel.dispose();
  const { made: begun, freed } = kernel.handles();
  expect([begun > 100, freed]).toEqual([true, begun]);
  return made;
}
/** The piece with one part moved, mm, as if a figure were wrong. */
const moved = (piece: Piece, id: string, by: readonly number[]): Piece => ({
  ...piece,
  parts: piece.parts.map((p) =>
    p.id === id
      ? { ...p, place: { ...p.place, origin: byAxis((a) => p.place.origin[a] + Math.round(by[a]! * 1e6)) } }
      : p,
  ),
});

describe.each(['nightstand', 'letter-cabinet', 'tall-chest'])('%s as solids', (name) => {
  const piece = shippedPiece(name);
  it('every part is one lump of its size; nothing stands in anything else; every joint meets', async () => {
    const { value, findings } = await solidsOf(piece);
    expect(findings).toEqual([]);
    expect(value!.parts.map((p) => p.id)).toEqual(piece.parts.map((p) => p.id));
    for (const p of value!.parts) {
      const [a, b, c] = p.bounds.map((s) => s[1] - s[0]) as [number, number, number];
      expect([p.id, p.volume > 0.2 * a * b * c && p.volume <= a * b * c * (1 + 1e-9)]).toEqual([p.id, true]);
    }
  });
});
it('half a millimetre is found: a rail of the tall chest moved sideways stands in one side', async () => {
  const piece = shippedPiece('tall-chest');
  const { findings } = await solidsOf(moved(piece, 'rail_2', [0.5, 0, 0]));
  expect(findings.length).toBeGreaterThan(0);
  expect(findings.every((f) => f.code === 'parts-overlap' && f.touches!.includes('rail_2'))).toBe(true);
  expect(findings.some((f) => f.touches!.includes('side_right'))).toBe(true);
});
it('the same bytes twice', async () => {
  const piece = shippedPiece('nightstand');
  const text = async (p: Piece) => JSON.stringify((await solidsOf(p)).value);
  expect((await text(piece)) === (await text(piece))).toBe(true);
});
