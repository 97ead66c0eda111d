import type { Piece, Stock } from '../piece/piece.js';
import { quantity, sayQuantity } from '../value/quantity.js';
import { panelOf } from '../wood/material.js';
import { thicknessRange } from '../wood/thickness.js';
import type { Check, CheckInput, Verdict } from './check.js';
import { grouped, type Single } from './grouped.js';

/** A sheet as it was measured against what sheets sold so measure: plywood is seldom as thick as its name. */
export const thickness: Check = {
  key: 'thickness',
  title: 'Thickness of sheet goods',
  run: ({ piece }: CheckInput) => ({
    judgements: grouped(Object.values(piece.stocks).flatMap((stock) => measured(stock, piece))),
  }),
};

function measured(stock: Stock, piece: Piece): Single[] {
  const panel = panelOf(stock);
  const parts = piece.parts.filter((p) => p.stock === stock.id);
  if (!panel || stock.nominal === undefined || stock.thickness === undefined || parts.length === 0) return [];
  const range = thicknessRange(panel, stock.nominal, piece.units);
  if (!range) return [];
  const { from, to, nominal, source } = range;
  const say = (v: number): string => sayQuantity(quantity('fine', v), piece.units);
  const outside = stock.thickness < from || stock.thickness > to;
  // Plywood that measures just what it is called was seldom measured.
  const called = panel.core === 'plywood' && stock.thickness === nominal;
  const verdict: Verdict = outside || called ? 'note' : 'pass';
  return [
    {
      code: 'panel-thickness-odd',
      verdict,
      marks: parts.map((p) => p.mark),
      about: `of ${panel.name.toLowerCase()} sold as ${stock.nominal}, which measures ${say(from)} to ${say(to)}, put down as`,
      figure: quantity('fine', stock.thickness),
      worked: {
        rule: 'the thickness that was measured, between the thinnest and the thickest that are sold so',
        sources: [source],
        inputs: [
          { name: 'sold as', quantity: quantity('fine', nominal) },
          ...(['thinnest', 'thickest'] as const).map((name) => ({
            name,
            quantity: quantity('fine', name === 'thinnest' ? from : to),
            source,
            ...(range.memory ? { memory: true as const } : {}),
          })),
        ],
      },
      ...(verdict === 'pass'
        ? {}
        : {
            remedy: called
              ? 'Measure the sheet with a caliper: few are as thick as their name, and grooves are cut to this figure.'
              : 'Measure the sheet again, or put down what it is sold as: grooves are cut to this figure.',
          }),
      touches: parts.map((p) => p.id).sort(),
      path: ['stock', stock.id, 'thickness'],
    },
  ];
}
