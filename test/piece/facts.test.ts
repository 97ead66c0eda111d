import { describe, expect, it } from 'vitest';
import { definition, errorsOf, part, partOf, solved } from './sample.js';

const cabinet = definition({
  parts: {
    side_left: part({ across: ['0', '7/8'], deep: ['0', '19'], up: ['0', '40'], grain: 'up' }),
    side_right: { mirror: 'side_left', about: '18' },
    top: part({ across: ['-3/4', '36 3/4'], deep: ['-3/4', '19'], up: { from: '40', size: '7/8' }, grain: 'across' }),
    divider: part({ across: { mid: '18', size: '3/4' }, deep: ['0', '18'], up: ['20', '30'], grain: 'up' }),
    rail: part({
      across: ['side_left', 'side_right'],
      deep: ['0', '2'],
      up: { from: '20', size: '3/4' },
      grain: 'across',
    }),
    back: part({ stock: 'ply', across: ['side_left', 'side_right'], deep: { to: '19' }, up: ['0', '40'], grain: 'up' }),
  },
});
const table = definition({
  parts: {
    leg_fl: part({ stock: 'thick', across: ['0', '1 1/2'], deep: ['0', '1 1/2'], up: ['0', '25'], grain: 'up' }),
    leg_br: part({ stock: 'thick', across: ['17', '18 1/2'], deep: ['13', '14 1/2'], up: ['0', '25'], grain: 'up' }),
    apron_front: part({
      across: ['leg_fl', '17'],
      deep: { from: '1/8', size: '3/4' },
      up: ['21', '25'],
      grain: 'across',
    }),
    apron_left: part({ across: { from: '1/8', size: '3/4' }, deep: ['leg_fl', '13'], up: ['21', '25'], grain: 'deep' }),
  },
});
const ref = (def: typeof table, id: string) => {
  const { face, edge, end } = partOf(solved(def), id).reference;
  return [face, edge, end];
};

describe('what figures are measured from (policy: Fairham, common practice)', () => {
  it('case sides: inside face, front edge, bottom end', () => {
    expect(ref(cabinet, 'side_left')).toEqual(['right', 'front', 'bottom']);
    expect(ref(cabinet, 'side_right')).toEqual(['left', 'front', 'bottom']);
    expect(ref(cabinet, 'rail')).toEqual(['top', 'front', 'left']);
    expect(ref(cabinet, 'back')).toEqual(['back', 'left', 'bottom']);
  });
  it('legs: the two outside faces and the top end; aprons: outside face, top edge', () => {
    expect(ref(table, 'leg_fl')).toEqual(['front', 'left', 'top']);
    expect(ref(table, 'leg_br')).toEqual(['back', 'right', 'top']);
    expect(ref(table, 'apron_front')).toEqual(['front', 'top', 'left']);
    expect(ref(table, 'apron_left')).toEqual(['left', 'top', 'front']);
  });
  it('can be given, on the right axes', () => {
    const own = (reference: object) => ({
      ...table,
      parts: { ...table.parts, leg_fl: { ...table.parts['leg_fl'], reference } },
    });
    expect(ref(own({ end: 'bottom' }), 'leg_fl')).toEqual(['front', 'left', 'bottom']);
    expect(errorsOf(own({ end: 'left' })).map((f) => [f.code, f.hint])).toEqual([
      ['reference-unknown', 'Say "bottom" or "top".'],
    ]);
  });
});

describe('words for faces', () => {
  it('a side is INSIDE and OUTSIDE, whichever side it is; a divider is neither', () => {
    const piece = solved(cabinet);
    const words = (id: string) => [partOf(piece, id).faceWords.left, partOf(piece, id).faceWords.right];
    expect(words('side_left')).toEqual(['OUTSIDE', 'INSIDE']);
    expect(words('side_right')).toEqual(['INSIDE', 'OUTSIDE']);
    expect(words('divider')).toEqual(['LEFT', 'RIGHT']);
    expect(partOf(piece, 'rail').faceWords.bottom).toBe('UNDERSIDE');
    expect(partOf(solved(table), 'leg_fl').faceWords.left).toBe('LEFT');
  });
  it('are all different, also when given', () => {
    const def = definition({
      parts: {
        a: part({ faces: { left: 'show' } }),
        b: part({ faces: { front: 'back' } }),
        c: part({ faces: { lft: 'x' } }),
      },
    });
    expect(errorsOf(def).map((f) => f.code)).toEqual(['face-word-twice', 'face-unknown']);
  });
});

describe('marks, names and status', () => {
  it('counts A1, A2 … in the order of the definition and passes over what is taken', () => {
    const piece = solved(definition({ parts: { z: part(), a: part({ mark: 'A2' }), m: part() } }));
    expect(['z', 'a', 'm'].map((id) => partOf(piece, id).mark)).toEqual(['A1', 'A2', 'A3']);
    expect(piece.parts.map((p) => p.id)).toEqual(['a', 'm', 'z']);
  });
  it('refuses one mark on two parts', () => {
    expect(
      errorsOf(definition({ parts: { a: part({ mark: 'X' }), b: part({ mark: 'X' }) } })).map((f) => f.code),
    ).toEqual(['mark-twice']);
  });
  it('reads names from ids', () => {
    expect(
      ['side_left', 'leg_fl'].map((id) => partOf(solved({ ...cabinet, parts: { [id]: part() } }), id).name),
    ).toEqual(['left side', 'front left leg']);
  });
  it('leaves the top long, cuts the sides now, and does as it is told', () => {
    const piece = solved(cabinet);
    expect([partOf(piece, 'top').status, partOf(piece, 'side_left').status]).toEqual(['leave long', 'cut now']);
    expect(partOf(solved(definition({ parts: { a: part({ status: 'measure first' }) } })), 'a').status).toBe(
      'measure first',
    );
  });
  it('fits what stands between parts that enter others', () => {
    const piece = solved({
      ...cabinet,
      parts: {
        ...cabinet.parts,
        low: { like: 'rail', up: { from: '10', size: '3/4' } },
        post: part({ across: { mid: '18', size: '3/4' }, deep: ['0', '2'], up: ['low', 'rail'], grain: 'up' }),
      },
      joints: {
        rails: { kind: 'dado', part: ['rail', 'low'], into: ['side_left', 'side_right'] },
        posts: { kind: 'dado', part: 'post', into: ['low', 'rail'] },
      },
    });
    expect(partOf(piece, 'post').status).toBe('fit to the piece');
    expect(partOf(piece, 'rail').status).toBe('cut now');
  });
});
