import { describe, expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.js';
import { toIn } from '../../src/lengths/length.js';
import type { Hardware } from '../../src/piece/piece.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { shippedPiece } from '../specimens/pieces.js';
import { definition, part, solved } from './sample.js';

/** A case with a divider of 3/4 and a drawer on each side of it. */
const chest = (divider = '3/4', side = '7/8'): Definition =>
  definition({
    parts: {
      left: part({ across: ['0', side], deep: ['0', '19'], up: ['0', '8'], grain: 'up' }),
      right: { mirror: 'left', about: '18' },
      top: part({ across: ['left', 'right'], deep: ['0', '19'], up: { to: '8', size: '3/4' }, grain: 'across' }),
      bottom: part({ across: ['left', 'right'], deep: ['0', '19'], up: ['0', '3/4'], grain: 'across' }),
      divider: part({
        stock: divider === '1 1/4' ? 'thick' : 'oak',
        across: { mid: '18', size: divider },
        deep: ['0', '19'],
        up: ['bottom', 'top'],
        grain: 'up',
      }),
      back: part({ stock: 'ply', across: ['0', '36'], deep: { from: '19' }, up: ['0', '8'], grain: 'up' }),
    },
    drawers: {
      pair: {
        across: ['left', 'divider', 'right'],
        up: ['bottom', 'top'],
        front: { fit: 'inset', reveal: '1/16', stock: 'oak' },
        box: { stock: 'poplar', bottom: 'ply', corner: 'half-blind-dovetail', runner: 'side-slide' },
      },
    },
  });
const screws = (all: readonly Hardware[], into: string): Hardware[] =>
  all.filter((h) => h.id.includes('.slide_') && h.kind === 'screw' && h.into.includes(into));
const lengths = (all: readonly Hardware[], into: string): string[] =>
  [...new Set(screws(all, into).map((h) => h.name))].sort();
/** Low and high end across, with the head. */
const reach = (h: Hardware): number[] => {
  if (h.body.op !== 'turned') throw new Error(h.id);
  const d = h.body.profile.map(([, at]) => toIn(at));
  return [Math.min(...d), Math.max(...d)];
};

describe('screws of slides', () => {
  const { hardware } = solved(chest());
  it('three of 5/8 into each side, three of 3/8 into each drawer side, of 3/8 into a divider with slides on both faces', () => {
    expect(
      ['left', 'right', 'divider', 'pair_1.side_left', 'pair_2.side_right'].map((p) => screws(hardware, p).length),
    ).toEqual([3, 3, 6, 3, 3]);
    expect(lengths(hardware, 'left')).toEqual(['#6 × 5/8 pan head, for slides, into the case']);
    expect(lengths(hardware, 'divider')).toEqual(['#6 × 3/8 pan head, for slides, into the case']);
    expect(lengths(hardware, 'pair_1.side_left')).toEqual(['#6 × 3/8 pan head, for slides, into the drawer']);
  });
  it('stand in a line along the slide, 1 1/2 from its ends, their tips 5/8 less the steel of 3/64 deep', () => {
    const all = screws(hardware, 'left');
    const slide = hardware.find((h) => h.id === 'pair_1.slide_left');
    if (slide?.body.op !== 'box') throw new Error('no slide');
    const [from, to] = slide.body.at[1].map(toIn) as [number, number];
    const at = all.map((h) => (h.body.op === 'turned' ? h.body.centre.slice(1).map(toIn) : []));
    const line = toIn((slide.body.at[2][0] + slide.body.at[2][1]) / 2);
    expect(at).toEqual([from + 1.5, (from + to) / 2, to - 1.5].map((y) => [y, line]));
    for (const h of all) expect(reach(h)[0]).toBeCloseTo(7 / 8 - 5 / 8 + 3 / 64, 6);
  });
  it('no hole is cut for them: they are drilled by the holes of the slide', () => {
    const piece = solved(chest());
    const ids = new Set(piece.hardware.filter((h) => h.kind === 'screw').map((h) => h.id));
    expect(piece.parts.flatMap((p) => p.cuts).filter((c) => c.mates.some((m) => ids.has(m)))).toEqual([]);
  });
  it('a note names the thin part that carries slides on both faces', () => {
    const noted = (d: Definition) => resolvePiece(d).findings.filter((f) => f.code === 'slide-screws-meet');
    expect(noted(chest()).map((f) => [f.severity, f.path, f.touches])).toEqual([
      ['note', ['parts', 'divider'], ['divider']],
    ]);
    // Two tips of 37/64 stand clear of one another in 1 1/4.
    expect(noted(chest('1 1/4'))).toEqual([]);
    expect(lengths(solved(chest('1 1/4')).hardware, 'divider')).toEqual([
      '#6 × 5/8 pan head, for slides, into the case',
    ]);
  });
  it('are the short ones where the long would come through', () => {
    expect(lengths(solved(chest('3/4', '1/2')).hardware, 'left')).toEqual([
      '#6 × 3/8 pan head, for slides, into the case',
    ]);
  });
  it('go into the packer that is set flush with the legs, where the slide runs past the leg', () => {
    const all = screws(shippedPiece('nightstand').hardware, 'packer');
    expect(all.map((h) => h.id)).toEqual([1, 2, 3].map((n) => `drawer_1.slide_left.case_${n}`));
  });
  it('the line of a slide is drawn on leg and packer, on each as far as its wood goes', () => {
    const lines = shippedPiece('nightstand').parts.flatMap((p) =>
      p.cuts.flatMap((c) =>
        c.shape === 'mark' && c.id === 'drawer_1.line_left'
          ? [{ id: p.id, from: p.place.origin[1] + c.over[0], to: p.place.origin[1] + c.over[1], at: p.place.origin[2] + c.at }] // prettier-ignore
          : [],
      ),
    );
    expect(lines.map((l) => l.id)).toEqual(['leg_front_left', 'packer']);
    const [leg, packer] = lines;
    // One line: the second begins where the first ends; together as long as the slide of 12 in.
    expect([packer?.from, packer?.at]).toEqual([leg?.to, leg?.at]);
    expect(toIn((packer?.to ?? 0) - (leg?.from ?? 0))).toBe(12);
  });
});
