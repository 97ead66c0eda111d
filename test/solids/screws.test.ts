import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { slideScrewBodies } from '../../src/components/index.js';
import { SLIDES } from '../../src/data/slides.js';
import { createKernel, type CountedKernel } from '../../src/geom/kernel.js';
import { inches } from '../../src/lengths/length.js';
import type { Hardware, Part, Piece } from '../../src/piece/piece.js';
import { makeSolids } from '../../src/solids/make.js';
import { pieceOf as definedPiece } from '../specimens/pieces.js';
import { partAt, pieceOf } from './piece.js';

let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
const find = (piece: Piece) => makeSolids({ ...piece, units: 'in' }, kernel).findings;

/** A board, sides in inches. */
const board = (id: string, across: [number, number], more: Partial<Part> = {}): Part =>
  partAt(id, [across, [0, 18], [0, 6]].map((s) => s.map((v) => v * 25.4)) as [number, number][], more);
const side = SLIDES.find((s) => s.id === 'side')!;
/** The screws of a slide at the face of a board: 5/8 as into a case, or 3/8 as into a drawer. */
function screws(part: string, face: number, hand: 'left' | 'right', which: 0 | 1): Hardware[] {
  const site = {
    id: `slide_${hand}`,
    drawer: 'd1',
    family: side,
    case: { part, face: inches(face) },
    box: { part, face: inches(face) },
    hand,
    over: [0, inches(18)] as const,
    line: inches(3),
  };
  return slideScrewBodies(site, { ...side.screws[which], into: 'case' }, inches(1 / 64), () => part);
}

describe('screws of slides', () => {
  it('5/8 from both faces of a divider of 3/4 meet', () => {
    const hardware = [...screws('divider', 0.75, 'left', 0), ...screws('divider', 0, 'right', 0)];
    const found = find(pieceOf([board('divider', [0, 0.75])], [], hardware));
    expect(found.map((f) => [f.code, f.touches])).toEqual(
      [1, 2, 3].map((n) => ['hardware-overlap', [`slide_left.case_${n}`, `slide_right.case_${n}`]]),
    );
    // Tips 5/8 less 3/64 of steel deep: from 0.75 - 37/64 = 0.172 to 37/64 = 0.578.
    expect(found[0]?.message).toContain('across 0.172 to 0.578 in');
  });
  it('3/8 from both faces do not', () => {
    const hardware = [...screws('divider', 0.75, 'left', 1), ...screws('divider', 0, 'right', 1)];
    expect(find(pieceOf([board('divider', [0, 0.75])], [], hardware))).toEqual([]);
  });
  it('5/8 in a drawer side of 1/2 comes through by 5/8 - 3/64 - 1/2 = 5/64', () => {
    const found = find(pieceOf([board('box_side', [0, 0.5])], [], screws('box_side', 0.5, 'left', 0)));
    expect(found.map((f) => [f.code, f.severity, f.touches])).toEqual(
      [1, 2, 3].map((n) => ['screw-shows', 'error', [`slide_left.case_${n}`, 'box_side']]),
    );
    expect(found[0]?.message).toContain('its tip stands 0.078 in out of BOX_SIDE (part box_side)');
    expect(found[0]?.message).toContain('deep 1.5 in, up 3 in');
    expect(find(pieceOf([board('box_side', [0, 0.5])], [], screws('box_side', 0.5, 'left', 1)))).toEqual([]);
  });
});

describe('any screw', () => {
  const long = (id: string, at: readonly [number, number], into: string[], from = 0.5, to = -0.5): Hardware => ({
    id,
    kind: 'screw',
    name: 'trial',
    body: {
      op: 'turned',
      axis: 0,
      centre: [0, inches(at[0]), inches(at[1])],
      profile: [
        [0, inches(to)],
        [inches(0.07), inches(to)],
        [inches(0.07), inches(from - 0.05)],
        [inches(0.14), inches(from)],
        [0, inches(from)],
      ],
    },
    into,
  });
  const two = [board('a', [0, 0.5]), board('b', [-0.75, 0])];
  it('through one part into another, head flush, is no finding', () => {
    expect(find(pieceOf(two, [], [long('s', [9, 3], ['a', 'b'])]))).toEqual([]);
  });
  it('holes drilled for it make no difference; a groove in its way does', () => {
    const hole = { id: 'h', from: 'j', mates: [], rank: 3, shape: 'bore', as: 'pilot', face: 'right' } as const;
    const drilled = board('b', [-0.75, 0], {
      cuts: [{ ...hole, at: [inches(9), inches(3)], diameter: inches(0.3), depth: inches(0.6) }],
    });
    const screw = [long('s', [9, 3], ['a', 'b'])];
    expect(find(pieceOf([two[0]!, drilled], [], screw))).toEqual([]);
    const grooved = board('b', [-0.75, 0], {
      cuts: [
        {
          ...{ id: 'g', from: 'j', mates: [], rank: 1, shape: 'box', as: 'groove', face: 'right' },
          at: [
            [inches(0.5), inches(0.75)],
            [0, inches(18)],
            [inches(2.75), inches(3.25)],
          ],
        },
      ],
    });
    const [found, ...more] = find(pieceOf([two[0]!, grooved], [], screw));
    expect([found?.code, more]).toEqual(['screw-shows', []]);
    expect(found?.message).toContain('0.25 in of its length lies bare in');
  });
  it('half out at an edge, and altogether beside its parts', () => {
    const [edge] = find(pieceOf(two, [], [long('s', [9, 6], ['a', 'b'])]));
    expect([edge?.code, edge?.touches]).toEqual(['screw-shows', ['s', 'a', 'b']]);
    const [air] = find(pieceOf(two, [], [long('s', [9, 8], ['a', 'b'])]));
    expect([air?.code, air?.message.includes('its tip stands 1 in out of')]).toEqual(['screw-shows', true]);
  });
});

describe('pockets', () => {
  const CHEST = readFileSync(new URL('../../templates/pieces/tall-chest.jsonc', import.meta.url), 'utf8');
  const UP = '"part": "apron", "into": "rail_4", "hole": "pocket", "count": ';
  it('a third in the middle of the top edge of the apron breaks into its arch, where the arch is highest', () => {
    expect(CHEST).toContain(`${UP}2`);
    const piece = definedPiece(CHEST.replace(`${UP}2`, `${UP}3`), 'chest.jsonc');
    const found = find(piece).filter((f) => f.code === 'pocket-breaks-out');
    expect(found.map((f) => [f.severity, f.path])).toEqual([['error', ['joints', 'apron_up']]]);
    const apron = piece.parts.find((p) => p.id === 'apron')!;
    const middle = (apron.size[0].value + 2 * apron.growth[0][0]) / 2 / 25_400_000;
    expect(found[0]?.message).toContain(`A pocket of A6 (apron), ${+middle.toFixed(3)} in along it`);
  });
});
