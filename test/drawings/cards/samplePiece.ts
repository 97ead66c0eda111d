import type { CountedKernel } from '../../../src/geom/kernel.js';
import { inches, nm } from '../../../src/lengths/length.js';
import type { Part, Piece } from '../../../src/piece/piece.js';
import { makeSolids } from '../../../src/solids/make.js';
import type { Solids } from '../../../src/solids/solids.js';
import { given } from '../../../src/value/sized.js';
import { mapCut } from '../../../src/words/mapCut.js';
import { chestSide, drawerSide, leg, markOf, sample } from '../../proof/parts.js';

/** The mirror image of a part about a plane across: its own card, the same words with the hand changed. */
export function mirrored(part: Part, id: string, mark: string, about: number): Part {
  const size = part.size[0].value;
  const flip = { to: [0, 1, 2], sign: [-1, 1, 1], shift: [size, 0, 0] } as const;
  const { left, right } = part.faceWords;
  const plain = left === 'LEFT';
  const turned = (f: Part['reference']['face']) => (f === 'left' ? 'right' : f === 'right' ? 'left' : f);
  const { face, edge, end } = part.reference;
  return {
    ...part,
    id,
    mark,
    hand: 'right',
    mirrorOf: part.id,
    faceWords: { ...part.faceWords, left: plain ? 'LEFT' : right, right: plain ? 'RIGHT' : left },
    reference: { face: turned(face), edge: turned(edge), end: turned(end) },
    place: {
      ...part.place,
      origin: [2 * about - size - part.place.origin[0], part.place.origin[1], part.place.origin[2]],
    },
    cuts: part.cuts.map((c) => mapCut(c, flip)),
  };
}
function rail(): Part {
  const s = (a: number, b: number) => [inches(a), inches(b)] as const;
  const tail = (end: 'left' | 'right', base: number) =>
    ({
      id: `rails.${end}`,
      from: 'rails',
      mates: [end === 'left' ? 'side_left' : 'side_right'],
      rank: 2,
      shape: 'tails',
      as: 'tail',
      end,
      base: inches(base),
      taper: 2,
      tails: [{ atBase: s(7 / 32, 17 / 32), atEnd: s(1 / 8, 5 / 8) }],
      keep: s(0.375, 2.5),
      glue: { where: 'first 2 behind the stop' },
    }) as const;
  return sample({
    id: 'rail_4',
    mark: 'R4',
    name: 'front rail',
    size: [34.25, 2.5, 0.75],
    growth: [s(0.375, 0.375), [0, 0], [0, 0]],
    order: [2, 1, 0],
    words: ['LEFT', 'RIGHT', 'FRONT', 'BACK', 'BOTTOM', 'TOP'],
    reference: { face: 'top', edge: 'front', end: 'left' },
    cuts: [tail('left', 0), tail('right', 34.25)],
    at: [0.875, 0, 8.125],
  });
}
export function samplePiece(kernel: CountedKernel): { piece: Piece; solids: Solids } {
  const a1 = chestSide();
  const d2 = drawerSide();
  const at = (p: Part, x: number, y: number, z: number): Part => ({
    ...p,
    place: { ...p.place, origin: [inches(x), inches(y), inches(z)] },
  });
  const a = at(a1, 0, 0, 0);
  const d = at(d2, 1.4, 1.3, 35.7);
  const l = at(leg(), 1, 3, 0);
  const named = (p: Part): Part => ({ ...p, cuts: p.cuts.map((c) => ({ ...c, mates: c.mates.map(markOf) })) });
  const right = mirrored(d, 'd_1.side_right', 'D1.3', inches(9.5));
  const parts = [...[a, mirrored(a, 'side_right', 'A2', inches(18)), d, right, l].map(named), rail()];
  const piece: Piece = {
    header: {
      title: 'Tall chest',
      number: 'C-021',
      revision: 'A',
      date: '2027-02-01',
      client: 'sample',
      maker: 'sample',
      woods: 'White oak',
    },
    units: 'in',
    step: nm(396_875),
    measures: { W: given(inches(36), '36') },
    stocks: { oak: { id: 'oak', kind: 'lumber', material: 'oak-white', name: 'white oak', quarter: '5/4' } },
    parts,
    joints: [],
    hardware: [],
    drawers: [],
    shop: { kerf: inches(1 / 8), trim: inches(1 / 4), allowance: [inches(1 / 8), inches(1), inches(1)] },
  };
  const made = makeSolids(piece, kernel);
  if (!made.value) throw new Error(made.findings.map((f) => f.message).join('\n'));
  return { piece, solids: made.value };
}
