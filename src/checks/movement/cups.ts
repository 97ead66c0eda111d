import { AXES } from '../../geom/axis.js';
import { width } from '../../geom/box.js';
import { inches, mm } from '../../lengths/length.js';
import type { Part } from '../../piece/piece.js';
import { quantity, sayQuantity } from '../../value/quantity.js';
import { cupOfFaces, cupOfRings } from '../../wood/cup.js';
import type { Verdict } from '../check.js';
import { partEntry, ratio, type Single } from '../grouped.js';
import type { Standing } from '../standing.js';
import type { Moving } from './context.js';
import { seasonInputs, speciesOf } from './strain.js';

/** From this width on a flat-sawn board is worth a line: common practice, 6 in. */
const wide = (m: Moving): number => (m.piece.units === 'in' ? inches(6) : mm(150));
/** Hollow that the eye and a straightedge find: 1/16 in (1.5 mm); our default. Twice as much warns. */
const seen = (m: Moving): number => (m.piece.units === 'in' ? inches(1 / 16) : mm(1.5));
/** Distance of the board from the pith: a flat-sawn board of a middling log; our default. */
const PITH = inches(4);
const SOURCES = [
  'curvature (T − R) × change / distance from the pith, hollow = curvature × width² / 8: plane geometry, first order, an estimate',
  'limit: our default, 1/16 in (1.5 mm); twice as much warns',
];

/** Joints that hold a part flat reach over at least half of its width; a groove that it floats in does not. */
function heldFlat(s: Standing, moving: Moving): boolean {
  const axis = AXES.find((a) => s.own[a] === s.part.width);
  if (axis === undefined) return true;
  const ends = moving.meetings.flatMap((m) =>
    (m.e === s || m.r === s) && m.joint.traits.freedom !== 'floats' ? [...m.contact.at[axis]] : [],
  );
  return ends.length > 0 && Math.max(...ends) - Math.min(...ends) >= width(s.box[axis]) / 2;
}

/** Wide boards of flat-sawn wood that nothing holds flat, such as panels in grooves: how hollow they go through the year. */
export function cups(moving: Moving): Single[] {
  return [...moving.stands.values()].flatMap((s): Single[] => {
    const { part } = s;
    const cut = moving.piece.stocks[part.stock]?.cut;
    const size = part.size[part.width].value;
    if (cut === 'quartered' || cut === 'rift' || size < wide(moving) || heldFlat(s, moving)) return [];
    const one = hollow(part, moving);
    return one ? [one] : [];
  });
}

function hollow(part: Part, moving: Moving): Single | undefined {
  const { piece, season } = moving;
  const species = speciesOf(piece, part);
  if (!species) return undefined;
  const staves = Math.max(1, part.staves ?? 1);
  const size = part.size[part.width].value / staves;
  const change = Math.max(Math.abs(season.driest - season.made), Math.abs(season.wettest - season.made));
  const figure = cupOfRings(species, size, PITH, change);
  const limit = seen(moving);
  const verdict: Verdict = figure <= limit ? 'pass' : figure <= 2 * limit ? 'note' : 'warning';
  const number = Math.ceil((part.size[part.width].value / size) * Math.sqrt(figure / limit));
  const say = (v: number): string => sayQuantity(quantity('fine', v), piece.units);
  const c = (name: string, f: typeof species.tangential): Single['worked']['inputs'][number] => ({
    name,
    quantity: quantity('coefficient', f.value),
    source: f.source,
    ...(f.memory ? { memory: true } : {}),
  });
  return {
    code: 'board-cups',
    verdict,
    marks: [part.mark],
    about:
      staves > 1
        ? `goes hollow, each of ${staves} staves, rings turned in turn, by`
        : 'goes hollow, held by nothing, by',
    figure: quantity('fine', figure),
    limit: quantity('fine', limit),
    margin: ratio(limit, figure),
    worked: {
      rule: '(T − R) × change of moisture × width² / (8 × distance from the pith)',
      sources: SOURCES,
      inputs: [
        { name: staves > 1 ? 'width of a stave' : 'width', quantity: quantity('length', Math.round(size)) },
        { name: 'distance from the pith', quantity: quantity('length', PITH), source: 'our default' },
        c('change flat-sawn per 1 %, T', species.tangential),
        c('change quartered per 1 %, R', species.radial),
        ...seasonInputs(season),
        {
          name: 'besides, with one face 1 % wetter',
          quantity: quantity('fine', cupOfFaces(species.tangential.value, size, part.size[part.thickness].value, 1)),
        },
      ],
    },
    ...(verdict === 'pass'
      ? {}
      : {
          remedy: `Take quartered or rift wood, or ${number} staves with their rings turned in turn (${say(figure / (number / staves) ** 2)} each); finish both faces alike.`,
        }),
    touches: [part.id],
    path: partEntry(part),
  };
}
