import { describe, expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.js';
import { toIn } from '../../src/lengths/length.js';
import { explain } from '../../src/piece/explain.js';
import { boxOf, definition, errorsOf, part, partOf, solved } from './sample.js';

/** The upper half of a tall chest: case 36 wide, rails 3/4 high, openings 5 1/4 (two) and 7 high; back plywood at 18 3/4. */
const chest = (more: Partial<Definition> = {}) =>
  definition({
    measures: { W: '36' },
    parts: {
      side_left: part({ across: ['0', '7/8'], deep: ['0', '19'], up: ['0', '30'], grain: 'up' }),
      side_right: { mirror: 'side_left', about: 'W / 2' },
      rail_1: part({
        across: ['side_left', 'side_right'],
        deep: ['0', '2 1/2'],
        up: { from: '29', size: '3/4' },
        grain: 'across',
      }),
      'rail_{i}': { each: 'i = 2..2', like: 'rail_1', up: { to: 'rail_{i-1}.bottom - 5 1/4', size: '3/4' } },
      rail_3: { like: 'rail_1', up: { to: 'rail_2.bottom - 7', size: '3/4' } },
      divider: part({
        across: { mid: 'W / 2', size: '3/4' },
        deep: ['0', 'back'],
        up: ['rail_2', 'rail_1'],
        grain: 'up',
      }),
      back: part({
        stock: 'ply',
        across: ['side_left', 'side_right'],
        deep: { from: '18 3/4' },
        up: ['0', '30'],
        grain: 'up',
      }),
    },
    drawers: {
      short: {
        across: ['side_left', 'divider', 'side_right'],
        up: ['rail_2', 'rail_1'],
        front: { fit: 'inset', reveal: '1/16', stock: 'oak' },
        box: { stock: 'poplar', bottom: 'ply', corner: 'half-blind-dovetail', runner: 'side-slide' },
      },
      long: { like: 'short', across: ['side_left', 'side_right'], up: ['rail_3', 'rail_2'] },
    },
    ...more,
  });

describe('drawers', () => {
  const piece = solved(chest());
  it('makes one in every opening, numbered from the left, marked on through the piece', () => {
    expect(piece.drawers.map((d) => [d.id, d.mark])).toEqual([
      ['short_1', 'D1'],
      ['short_2', 'D2'],
      ['long_1', 'D3'],
    ]);
  });
  it('finds the opening between facing faces, from the rail to the back', () => {
    const { across, up, deep } = piece.drawers[0]?.opening ?? {};
    // (34 1/4 - 3/4) / 2 = 16 3/4
    expect([across?.value, up?.value, deep?.value].map((v) => toIn(v ?? 0))).toEqual([16.75, 5.25, 18.75]);
  });
  it('sizes the box as its card: 15 23/32 x 4 3/8, sides 15 between base lines and 15 3/4 over the tails', () => {
    const box = partOf(piece, 'short_1.box_front');
    expect([box.size[0].value, box.size[2].value].map(toIn)).toEqual([15 + 23 / 32, 4.375]);
    const side = partOf(piece, 'short_1.side_left');
    expect([toIn(side.size[1].value), toIn(side.size[1].value + side.growth[1][0] + side.growth[1][1])]).toEqual([
      15, 15.75,
    ]);
    const tails = side.cuts.find((c) => c.shape === 'tails');
    expect(tails?.shape === 'tails' ? tails.tails.length : 0).toBe(5);
  });
  it('draws slide lines on the case and keeps left and right sides apart', () => {
    const lines = partOf(piece, 'side_left').cuts.filter((c) => c.shape === 'mark');
    // slide centres 2 1/2 above the rails, whose tops are at 23 3/4 and 16
    expect(lines.map((c) => [c.face, c.shape === 'mark' ? toIn(c.at) : 0])).toEqual([
      ['right', 26.25],
      ['right', 18.5],
    ]);
    expect(partOf(piece, 'short_1.side_right').turnOf).toBeUndefined();
    expect(partOf(piece, 'short_1.side_right').mirrorOf).toBe('short_1.side_left');
    expect(partOf(piece, 'short_2.side_left').turnOf).toBe('short_1.side_left');
  });
  it('joins the box: tails of the sides in front and back, bottom in a groove', () => {
    const own = piece.joints.filter((j) => j.id.startsWith('short_1.'));
    expect(own.filter((j) => j.kind === 'half-blind-dovetail').length).toBe(4);
    expect(own.filter((j) => j.kind === 'groove').length).toBe(4);
  });
  it('lets the definition say otherwise about a part it makes', () => {
    const def = chest();
    const changed = solved({
      ...def,
      parts: {
        ...def.parts,
        'short_1.front': { name: 'cash drawer front', status: 'measure first', notes: ['veneer'] },
      },
    });
    expect(partOf(changed, 'short_1.front')).toMatchObject({
      name: 'cash drawer front',
      status: 'measure first',
      notes: ['veneer'],
    });
    expect(partOf(changed, 'short_2.front').name).not.toBe('cash drawer front');
    expect(boxOf(changed, 'short_1.front')).toEqual(boxOf(piece, 'short_1.front'));
  });
  it('refuses to change what the opening decides, and a part that no drawer makes', () => {
    const def = chest();
    const found = errorsOf({
      ...def,
      parts: { ...def.parts, 'short_1.front': { across: ['0', '1'] }, 'short_9.front': { name: 'x' } },
    });
    expect(found.map((f) => [f.code, f.path.join('/')])).toEqual([
      ['override-field', 'parts/short_1.front/across'],
      ['part-unknown', 'parts/short_9.front'],
    ]);
  });
  it.each([
    [{ across: ['side_left'] }, 'drawer-bounds', ['drawers', 'short', 'across']],
    [{ across: ['side_left', 'side_rihgt'] }, 'part-unknown', ['drawers', 'short', 'across', 1]],
    [{ front: { fit: 'inset', stock: 'okk' } }, 'stock-unknown', ['drawers', 'short', 'front', 'stock']],
    [{ box: { stock: 'ply', bottom: 'ply' } }, 'stock-unknown', ['drawers', 'short', 'box', 'stock']],
    [{ like: 'shrt' }, 'drawer-unknown', ['drawers', 'short', 'like']],
  ])('refuses %j', (more, code, path) => {
    const def = chest();
    const short = { ...def.drawers?.['short'], ...more } as never;
    const [f] = errorsOf({ ...def, drawers: { short } });
    expect([f?.code, f?.path]).toEqual([code, path]);
  });
});

describe('explain', () => {
  const piece = solved(
    chest({
      joints: {
        rails: {
          kind: 'sliding-dovetail',
          part: 'rail_{2..3}',
          into: ['side_left', 'side_right'],
          from: 'back',
          stop: '3/8',
        },
      },
    }),
  );
  it('prints a given measure', () => {
    expect(explain(piece, 'W')).toEqual(['W = 36 in, given, as "36" [measures.W]']);
  });
  it('prints a face with the figures it was made from', () => {
    expect(explain(piece, 'rail_3.top')).toEqual([
      'rail_3.top = 16 in, derived: rail_2.bottom - 7 [parts.rail_3.up.to]',
      '  rail_2.bottom = 23 in, derived: to - size',
    ]);
  });
  it('prints a joint with its rules and their sources', () => {
    const lines = explain(piece, 'rails.1');
    expect(lines[0]).toBe('rails.1: sliding dovetail, "rail_2" into "side_left", going in toward front');
    expect(lines.join('\n')).toMatch(/depth = 3\/8 in, by rule: .*\(.+\)/);
    expect(lines).toContain('  stop = 3/8 in, given, as "3/8" [joints.rails.stop]');
    expect(explain(piece, 'rails')[0]).toBe('rails: 4 places');
  });
  it('prints a part by id or mark, with what joints add', () => {
    expect(explain(piece, 'rail_2')).toEqual(explain(piece, partOf(piece, 'rail_2').mark));
    expect(explain(piece, 'rail_2').join('\n')).toContain(
      'across over all 35 in: joints lengthen it by 3/8 in and 3/8 in',
    );
  });
  it('prints a drawer, and offers a name for one that is not there', () => {
    expect(explain(piece, 'D1').join('\n')).toContain('opening across = 16 3/4 in');
    expect(explain(piece, 'rail_33')[0]).toContain('Did you mean "rail_3"?');
  });
});

it('survives JSON and comes out the same twice', () => {
  const a = JSON.stringify(solved(chest()));
  expect(JSON.stringify(solved(chest()))).toBe(a);
  expect(JSON.stringify(JSON.parse(a))).toBe(a);
  expect(a).not.toContain(':-0,');
});
