import { byAxis, type Box3, type Span } from '../../src/geom/box.js';
import { shifted } from '../../src/geom/placement.js';
import { given } from '../../src/value/sized.js';
import { mm } from '../../src/lengths/length.js';
import type { Hardware, Joint, Part, Piece } from '../../src/piece/piece.js';

export const spanMm = (a: number, b: number): Span => [mm(a), mm(b)];
const NONE: Box3 = [
  [0, 0],
  [0, 0],
  [0, 0],
];
/** A part that stands square in the piece, its box in mm; own figures otherwise plain. */
export function partAt(id: string, box: readonly [number, number][], more: Partial<Part> = {}): Part {
  const sides = byAxis((a) => box[a] as [number, number]);
  return {
    id,
    mark: id.toUpperCase(),
    name: `part ${id}`,
    stock: 'oak',
    place: shifted(byAxis((a) => mm(sides[a][0]))),
    size: byAxis((a) => given(mm(sides[a][1] - sides[a][0]), 'test', ['parts', id, a])),
    growth: NONE,
    thickness: 1,
    width: 2,
    length: 0,
    grain: 0,
    show: [],
    faceWords: { left: 'LEFT', right: 'RIGHT', front: 'FRONT', back: 'BACK', bottom: 'BOTTOM', top: 'TOP' },
    reference: { face: 'front', edge: 'bottom', end: 'left' },
    cuts: [],
    status: 'cut now',
    statusWhy: '',
    notes: [],
    ...more,
  };
}
export const jointOf = (id: string, entering: string, receiving: string, way: Joint['way']): Joint => ({
  id,
  joint: id,
  kind: 'any',
  words: 'mortise and tenon',
  entering,
  receiving,
  sizes: {},
  way,
  traits: {
    insertion: way,
    holds: 'holds',
    glue: 'by shape',
    resists: { tension: 1, shear: 1, racking: 1, twist: 1 },
    freedom: 'fixed',
    shows: false,
  },
});
export const pieceOf = (
  parts: readonly Part[],
  joints: readonly Joint[] = [],
  hardware: readonly Hardware[] = [],
): Piece => ({
  header: {
    title: 'trial',
    number: 'T-1',
    revision: 'A',
    date: '2027-01-01',
    client: 'sample',
    maker: 'sample',
    woods: '',
  },
  units: 'mm',
  step: mm(0.1),
  measures: {},
  stocks: {},
  parts,
  joints,
  hardware,
  drawers: [],
  shop: { kerf: mm(3), trim: mm(5), allowance: [mm(3), mm(6), mm(25)] },
});
