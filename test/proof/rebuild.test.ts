import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createKernel } from '../../src/geom/kernel.js';
import type { CountedKernel } from '../../src/geom/kernel.js';
import type { Span } from '../../src/geom/box.js';
import type { Placement } from '../../src/geom/placement.js';
import type { Recipe } from '../../src/geom/recipe.js';
import type { Part, Piece } from '../../src/piece/piece.js';
import { proveCard } from '../../src/proof/proveCards.js';
import { proveTurned } from '../../src/proof/proveTurned.js';
import type { Solids } from '../../src/solids/solids.js';
import { partRecipe } from '../../src/solids/cutRecipe.js';
import { sayCuts } from '../../src/words/callout.js';
import { cardText } from '../../src/words/card.js';
import type { Cut, DovetailCut } from '../../src/words/cut.js';
import { inches } from '../../src/lengths/length.js';
import { chestSide, drawerSide, leg, markOf, sample } from './parts.js';

const textOf = (part: Part): string => cardText(part, sayCuts(part, part.cuts, { units: 'in', markOf }), 'in');
let kernel: CountedKernel;
beforeAll(async () => {
  kernel = await createKernel();
});
afterAll(() => kernel.dispose());
const prove = (text: string, part: Part): string[] =>
  proveCard(text, part, partRecipe(part), kernel, markOf).map((f) => `${f.code} ${f.message}`);

describe('a part rebuilt from its card alone is the part of the model', () => {
  for (const part of [chestSide(), drawerSide(), leg()]) {
    it(part.mark, () => expect(prove(textOf(part), part)).toEqual([]));
  }
});

/** The chest side with its lowest socket run again, .010 lower, to 2 3/4 from FRONT edge. */
function easedSide(): Part {
  const side = chestSide();
  const socket = side.cuts[0] as DovetailCut;
  const low = ([a, b]: Span): Span => [a - inches(0.01), b - inches(0.01)];
  const ease: Cut = {
    ...socket,
    id: 'ease.0',
    as: 'ease',
    mates: ['r4'],
    atFace: low(socket.atFace),
    atFloor: low(socket.atFloor),
    runSpan: [inches(2.75), inches(19)],
  };
  const { trial, glue, ...rest } = ease;
  expect([trial, glue]).not.toContain(undefined);
  return { ...side, cuts: [...side.cuts, rest as Cut] };
}
describe('an eased socket', () => {
  const words = (): string => textOf(easedSide()).split('\n').find((l) => l.includes('Ease the socket')) ?? ''; // prettier-ignore
  it('is told by the centre of its socket and by how far the guide moves', () => {
    expect(words()).toContain('second pass, guide moved .010 toward BOTTOM end; from BACK edge, stop 2 3/4 from FRONT');
    expect(words()).toContain('centre from BOTTOM end 8 1/2; 5/16 wide');
    expect(words()).toContain('For R4.');
  });
  it('is rebuilt where the model has it, not where the socket is, nor moved the other way', () => {
    const [part, text] = [easedSide(), textOf(easedSide())];
    expect(prove(text, part)).toEqual([]);
    const codes = (t: string): string[] => prove(t, part).map((f) => f.split(' ')[0] as string);
    expect(codes(text.replace('guide moved .010 toward BOTTOM', 'guide moved .010 toward TOP'))).toContain('proof-card-cuts'); // prettier-ignore
    expect(codes(text.replace('moved .010', 'moved .012'))).toContain('proof-card-cuts');
    expect(codes(text.replace('second pass, guide moved .010 toward BOTTOM end; ', ''))).toContain('proof-card-cuts');
  });
});

describe('a part that shares the card of its like', () => {
  const pair = (length: number): ReturnType<typeof proveTurned> => {
    const [a, b] = [stile(), { ...stile(), id: 'stile_2', mark: 'S2', turnOf: 'stile' }];
    const other: Part = { ...b, cuts: b.cuts.map((c) => (c.shape === 'tenon' ? { ...c, tongues: c.tongues.map((t) => ({ ...t, length: inches(length) })) } : c)) }; // prettier-ignore
    const piece = { parts: [a, other] } as unknown as Piece;
    const solids = { parts: [a, other].map((p) => ({ id: p.id, recipe: partRecipe(p) })), hardware: [] };
    return proveTurned(other, piece, solids as unknown as Solids, kernel);
  };
  it('is refused when it holds other wood: its tenon and haunch both 1 inch long', () => {
    expect(pair(1).map((f) => f.code)).toEqual(['proof-card-turned']);
  });
  const likes = (own: Recipe): ReturnType<typeof proveTurned> => {
    const [a, b] = [stile(), { ...stile(), id: 'stile_2', mark: 'S2', turnOf: 'stile' }];
    const piece = { parts: [a, b] } as unknown as Piece;
    const solids = {
      parts: [
        { id: a.id, recipe: partRecipe(a) },
        { id: b.id, recipe: own },
      ],
    } as unknown as Solids;
    return proveTurned(b, piece, solids, kernel);
  };
  const placedBy = (rotation: Placement['rotation'], origin: Placement['origin'] = [0, 0, 0]): Recipe => ({ op: 'placed', by: { rotation, origin }, of: partRecipe(stile()) }); // prettier-ignore
  it('is refused as its mirror image, however that is turned: as much wood in as big a box', () => {
    const across: Recipe = placedBy([[-1, 0, 0], [0, 1, 0], [0, 0, 1]]); // prettier-ignore
    const turnedToo: Recipe = placedBy([[0, 1, 0], [1, 0, 0], [0, 0, 1]]); // prettier-ignore
    const inward: Recipe = placedBy([[-1, 0, 0], [0, -1, 0], [0, 0, -1]], [inches(3), inches(-2), 7]); // prettier-ignore
    for (const mirrored of [across, turnedToo, inward])
      expect(likes(mirrored).map((f) => `${f.code} ${f.message}`)).toEqual([
        'proof-card-turned Card S2: it is not S1 turned, whose card it shares: as much wood, but in other places.',
      ]);
  });
  it('passes turned upside down and moved', () => {
    expect(likes(placedBy([[-1, 0, 0], [0, 1, 0], [0, 0, -1]], [inches(3), inches(-2), 7]))).toEqual([]); // prettier-ignore
    expect(likes(placedBy([[0, 0, 1], [1, 0, 0], [0, 1, 0]]))).toEqual([]); // prettier-ignore
  });
  it('passes as itself, and turned a quarter about its length', () => {
    const [a, b] = [stile(), { ...stile(), id: 'stile_2', mark: 'S2', turnOf: 'stile' }];
    const quarter: Recipe = {
      op: 'placed',
      by: { rotation: [[0, -1, 0], [1, 0, 0], [0, 0, 1]], origin: [0, 0, 0] }, // prettier-ignore
      of: partRecipe(b),
    };
    const piece = { parts: [a, b] } as unknown as Piece;
    for (const recipe of [partRecipe(b), quarter]) {
      const solids = { parts: [{ id: a.id, recipe: partRecipe(a) }, { id: b.id, recipe }] } as unknown as Solids; // prettier-ignore
      expect(proveTurned(b, piece, solids, kernel)).toEqual([]);
    }
  });
});

/** A stile 3/4 x 2 x 20, its tenon 1/4 x 1 1/4, 1 1/8 long, mitred; beside it a haunch 1/4 long. */
const stile = (): Part =>
  sample({
    id: 'stile',
    mark: 'S1',
    name: 'stile',
    size: [0.75, 2, 20],
    growth: [
      [0, 0],
      [0, 0],
      [0, inches(1.125)],
    ],
    order: [0, 1, 2],
    words: ['LEFT', 'RIGHT', 'FRONT', 'BACK', 'BOTTOM', 'TOP'],
    reference: { face: 'left', edge: 'front', end: 'bottom' },
    cuts: [
      {
        id: 't.1',
        from: 't',
        mates: [],
        rank: 2,
        shape: 'tenon',
        as: 'tenon',
        end: 'top',
        shoulder: inches(20),
        tongues: [
          { a: [inches(0.25), inches(0.5)], b: [inches(0.5), inches(1.75)], length: inches(1.125) },
          { a: [inches(0.25), inches(0.5)], b: [0, inches(0.5)], length: inches(0.25), haunch: true },
        ],
        mitre: { long: 'left' },
      },
    ],
  });
describe('a mitred tenon with a haunch', () => {
  it('the words say that the haunch is square, and the rebuilt stile is the one of the model', () => {
    expect(textOf(stile())).toContain('mitred, haunch square, long at LEFT');
    expect(prove(textOf(stile()), stile())).toEqual([]);
  });
  it('measures what its figures give: the mitre takes a prism of 1/4 x 1/4 / 2 off 1 1/4, nothing off the haunch', () => {
    const tongues = 0.25 * 1.25 * 1.125 - (0.25 * 0.25 * 1.25) / 2 + 0.25 * 0.5 * 0.25;
    expect(kernel.volume(partRecipe(stile())) / 25.4 ** 3).toBeCloseTo(0.75 * 2 * 20 + tongues, 6);
  });
});

/** The stile with its bottom end bevelled: 1/8 off at the back, and .033 off at the right. */
const bevelled = (): Part => {
  const rise = (run: number, by: number): number => inches(by) / inches(run);
  const normal = [rise(0.75, 0.033), rise(2, 0.125), -1] as const;
  const size = Math.hypot(...normal);
  const bevel: Cut = {
    id: 'shape.0',
    from: 'shape',
    mates: [],
    rank: 4,
    shape: 'plane',
    as: 'bevel',
    point: [0, 0, inches(0.25)],
    normal: [normal[0] / size, normal[1] / size, normal[2] / size],
  };
  return { ...stile(), cuts: [...stile().cuts, bevel] };
};
describe('a plane', () => {
  it('is rebuilt from its three marks', () => {
    expect(textOf(bevelled())).toContain('Bevel, BOTTOM');
    expect(prove(textOf(bevelled()), bevelled())).toEqual([]);
  });
  it('is compared as a surface: a mark .001 or .002 off is caught, though the wood that it moves is next to none', () => {
    const text = textOf(bevelled());
    expect(text).toContain('RIGHT with FRONT 9/32 (.283) · LEFT with BACK 3/8');
    for (const [mark, off] of [
      ['9/32 (.283)', '9/32 (.285)'],
      ['9/32 (.283)', '9/32 (.284)'],
      ['9/32 (.283)', '9/32 (.282)'],
      ['BACK 3/8', 'BACK 3/8 (.377)'],
    ] as const) {
      const changed = text.replace(mark, off);
      expect(changed).not.toBe(text);
      expect([off, prove(changed, bevelled()).map((f) => f.split(' ')[0])]).toEqual([off, ['proof-card-cuts']]);
    }
  });
});

const SWAPS: readonly (readonly [RegExp, string])[] = [
  [/\bINSIDE\b/g, 'OUTSIDE'],
  [/\bOUTSIDE\b/g, 'INSIDE'],
  [/\bTOP\b/g, 'BOTTOM'],
  [/\bBOTTOM\b/g, 'TOP'],
  [/\bFRONT\b/g, 'BACK'],
  [/\bBACK\b/g, 'FRONT'],
  [/\bLEFT\b/g, 'RIGHT'],
  [/\bRIGHT\b/g, 'LEFT'],
];
/** Every way to change one word of place, or one figure by a sixty-fourth or more, in a card's text. */
function mutations(text: string): string[] {
  const out: string[] = [];
  const change = (at: number, length: number, by: string): void => {
    out.push(text.slice(0, at) + by + text.slice(at + length));
  };
  for (const [word, other] of SWAPS) for (const m of text.matchAll(word)) change(m.index, m[0].length, other);
  for (const m of text.matchAll(/(?<![\d/A-Z.(])(\d+)\/(\d+)/g)) {
    const top = Number(m[1]);
    change(m.index, m[0].length, `${top > 1 ? top - 1 : top + 1}/${m[2]}`);
  }
  for (const m of text.matchAll(/(?<![\d/.A-Z#( ]|^)(?: )(\d+)(?= \d+\/\d| from| to | deep| wide|;|,)/g)) {
    change(m.index + 1, (m[1] as string).length, String(Number(m[1]) + 1));
  }
  return out;
}
/** Words that no rebuild needs: pencil lines, trial, glue, notes, bit and pitch (figures of the tool, not of the wood). */
const harmless = (line: string, mutant: string): boolean => {
  if (/^\d+ (Slide|Trial)/.test(line)) return true;
  const cut = (s: string): string =>
    s.replace(/; (bit|pitch) [^;]*?(?=[;.] ?)/g, '').replace(/ (Glue|No glue|Scribe|After).*$/, '');
  return cut(line) === cut(mutant);
};

describe('every swap of a face, an end, an edge, a hand or a figure is caught', () => {
  for (const part of [chestSide(), easedSide(), drawerSide(), leg()]) {
    it(`${part.mark}, ${part.cuts.length} cuts`, () => {
      const lines = textOf(part).split('\n');
      const missed: string[] = [];
      let tried = 0;
      lines.forEach((line, i) => {
        for (const mutant of mutations(line)) {
          if (mutant === line || harmless(line, mutant)) continue;
          tried += 1;
          const text = lines.map((l, k) => (k === i ? mutant : l)).join('\n');
          if (prove(text, part).length === 0) missed.push(mutant);
        }
      });
      expect(missed).toEqual([]);
      expect(tried).toBeGreaterThan(20);
    });
  }
});
