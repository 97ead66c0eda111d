import { overAll } from '../../geom/growth.js';
import { faceAxis, type Axis } from '../../geom/axis.js';
import { inches, mm, type Units } from '../../lengths/length.js';
import type { Part, Piece, Run, Stock } from '../../piece/piece.js';
import { gangOf, roughWithin, tooShort, type Rough, type Sizes } from '../../shop/rough.js';
import type { Blank, DefectKind } from './board.js';

interface Wanted {
  readonly part: Part;
  readonly stock: Stock;
  readonly finished: Sizes;
  readonly rough: Rough;
}
type Base = Pick<Blank, 'wood' | 'quarter' | 'cut' | 'thickness' | 'finished' | 'shows' | 'allows'>;

/**
 * The rough blanks of a piece: every part of lumber, every stave of those that are glued up (alike, and no wider than the
 * jointer, as far as it is known), short parts several in one length, runs in their order, and the spares and trial lengths
 * asked for. Sizes by the shop's rough rule (shop/rough.ts).
 */
export function blanksOf(piece: Piece): Blank[] {
  const wanted = new Map(piece.parts.flatMap((part) => wantedOf(part, piece)).map((w) => [w.part.id, w]));
  const out: Blank[] = [];
  const inRun = new Set<string>();
  for (const run of piece.runs ?? []) {
    const parts = run.parts.flatMap((id) => (inRun.has(id) ? [] : (wanted.get(id) ?? [])));
    parts.forEach((w) => inRun.add(w.part.id));
    out.push(...runBlanks(run, parts, piece));
  }
  const free = [...wanted.values()].filter((w) => !inRun.has(w.part.id));
  const short = free.filter((w) => isShort(w, piece));
  out.push(...free.filter((w) => !short.includes(w)).flatMap((w) => staves(w)));
  out.push(...short.filter((w) => w.rough.staves > 1).flatMap((w) => stavesTogether(w, piece)));
  out.push(
    ...gangs(
      short.filter((w) => w.rough.staves === 1),
      piece,
    ),
  );
  for (const w of wanted.values()) out.push(...sparesOf(w, piece.spares?.[w.part.id] ?? 0));
  out.push(...trials([...wanted.values()], piece));
  return out;
}

function wantedOf(part: Part, piece: Piece): Wanted[] {
  const stock = piece.stocks[part.stock];
  if (stock?.kind !== 'lumber') return [];
  const over = (axis: Axis): number => overAll(part, axis);
  const finished: Sizes = [over(part.thickness), over(part.width), over(part.length)];
  const widest = piece.profile?.machines.jointer?.width;
  const rough = roughWithin(finished, piece.shop.allowance, piece.units, part.staves ?? 1, widest);
  return [{ part, stock, finished, rough }];
}
const isShort = (w: Wanted, piece: Piece): boolean =>
  tooShort(w.finished[2], piece.units, piece.profile?.machines.planer?.shortest);

const baseOf = ({ part, stock, finished, rough }: Wanted): Base => ({
  wood: stock.material,
  quarter: stock.quarter ?? '',
  ...(stock.cut === undefined ? {} : { cut: stock.cut }),
  thickness: rough.thickness,
  finished: finished[0],
  shows: showing(part, finished),
  allows: (stock.allow ?? []) as readonly DefectKind[],
});

/** Of a part nearly as thick as it is wide all four sides are seen: our default from two thirds on. */
const SQUARE = 2 / 3;
/** How many faces of its board a part shows; an edge that shows wants one of them clear. */
function showing(part: Part, [thick, wide]: Sizes): Blank['shows'] {
  const broad = part.show.filter((f) => faceAxis(f) === part.thickness).length;
  const edges = part.show.filter((f) => faceAxis(f) === part.width).length;
  if (broad === 2 || (thick >= wide * SQUARE && broad + edges >= 2)) return 'both';
  return broad + edges > 0 ? 'one' : 'none';
}

/** A part as one blank, or each of its staves. */
function staves(w: Wanted): Blank[] {
  const { part, rough } = w;
  const one = { ...baseOf(w), part: part.id, width: rough.stave, length: rough.length };
  if (rough.staves === 1) return [{ ...one, id: part.id, mark: part.mark }];
  return Array.from({ length: rough.staves }, (_, i) => ({
    ...one,
    id: `${part.id}.${String(i + 1).padStart(String(rough.staves).length, '0')}`,
    mark: `${part.mark} ${letter(i)}`,
  }));
}
/** a, b .. z, aa. */
const letter = (i: number): string =>
  (i < 26 ? '' : letter(Math.floor(i / 26) - 1)) + String.fromCharCode(97 + (i % 26));

/** A run, blank by blank in its order; when one of its parts is too short to mill and all are of one section, one length. */
function runBlanks(run: Run, parts: readonly Wanted[], piece: Piece): Blank[] {
  const [first] = parts;
  if (!first) return [];
  const most = boardsIn(run.from);
  const section = (w: Wanted): string => [w.rough.staves, w.finished[0], w.finished[1]].join();
  const alike = parts.every((w) => section(w) === section(first));
  if (alike && first.rough.staves === 1 && parts.length > 1 && parts.some((w) => isShort(w, piece)))
    return [ganged(parts, lengthTogether(parts, piece))];
  return parts.flatMap((w) => staves(w)).map((b, at) => ({ ...b, run: { id: run.id, at, most } }));
}
const COUNTS = ['one', 'two', 'three', 'four', 'five', 'six'];
/** `one board`, `two boards`, `at most 3 boards`: how many; one when nothing is said. */
export function boardsIn(from: string | undefined): number {
  const found = /\b(\d+|one|two|three|four|five|six)\b/i.exec(from ?? '')?.[1]?.toLowerCase();
  if (found === undefined) return 1;
  const word = COUNTS.indexOf(found);
  return Math.max(1, word >= 0 ? word + 1 : Number(found));
}
function lengthTogether(parts: readonly Wanted[], { shop }: Piece): number {
  const all = parts.reduce((s, w) => s + w.finished[2] + shop.kerf, -shop.kerf);
  return all + shop.allowance[2];
}
function ganged(parts: readonly Wanted[], length: number): Blank {
  const first = parts[0] as Wanted;
  const id = parts.length === 1 ? first.part.id : `${first.part.id}.together`;
  const marks = parts.map((w) => w.part.mark).join(' + ');
  const one = { ...baseOf(first), id, part: first.part.id, mark: marks, width: first.rough.stave, length };
  const gang = parts.map((w) => w.part.id);
  const strictest = parts.map((w) => showing(w.part, w.finished));
  const shows = strictest.includes('both') ? 'both' : strictest.includes('one') ? 'one' : 'none';
  return { ...one, shows, ...(parts.length > 1 ? { gang } : {}) };
}

/** Staves too short to mill: several in one length, cut apart before they are glued. */
function stavesTogether(w: Wanted, piece: Piece): Blank[] {
  const all = staves(w);
  const out: Blank[] = [];
  for (let at = 0; at < all.length;) {
    const { of, length } = gangOf(w.finished[2], all.length - at, gangFacts(piece));
    const some = all.slice(at, at + of);
    const letters = some.map((b) => b.mark.slice(w.part.mark.length + 1)).join(' + ');
    const gang = of > 1 ? { gang: some.map(() => w.part.id) } : {};
    out.push({ ...(some[0] as Blank), mark: `${w.part.mark} ${letters}`, length, ...gang });
    at += of;
  }
  return out;
}
function gangFacts({ profile, shop, units }: Piece): Parameters<typeof gangOf>[2] {
  const shortest = profile?.machines.planer?.shortest;
  return { allowance: shop.allowance[2], kerf: shop.kerf, units, ...(shortest === undefined ? {} : { shortest }) };
}

/** Short parts of one section and length, as few in one length as the planer feeds. */
function gangs(short: readonly Wanted[], piece: Piece): Blank[] {
  const groups = new Map<string, Wanted[]>();
  for (const w of short) {
    const key = [w.stock.id, ...w.finished, showing(w.part, w.finished)].join('|');
    groups.set(key, [...(groups.get(key) ?? []), w]);
  }
  const facts = gangFacts(piece);
  return [...groups.values()].flatMap((group): Blank[] => {
    const out: Blank[] = [];
    for (let at = 0; at < group.length;) {
      const gang = gangOf(group[at]?.finished[2] ?? 0, group.length - at, facts);
      out.push(ganged(group.slice(at, at + gang.of), gang.length));
      at += gang.of;
    }
    return out;
  });
}

function sparesOf(w: Wanted, many: number): Blank[] {
  const [first] = staves(w);
  if (!first) return [];
  return Array.from({ length: many }, (_, i) => ({
    ...first,
    id: `${w.part.id}.spare${i + 1}`,
    mark: `${w.part.mark} (spare)`,
    spare: true,
  }));
}

/** Trial lengths: so long, and no wider than this (our default). */
const trialSize = (units: Units): readonly [number, number] =>
  units === 'in' ? [inches(16), inches(4)] : [mm(400), mm(100)];
/** So many lengths of each thickness as a stock asks for, to try settings on: what may be in them is not asked. */
function trials(wanted: readonly Wanted[], piece: Piece): Blank[] {
  const [length, widest] = trialSize(piece.units);
  const out: Blank[] = [];
  for (const id of Object.keys(piece.stocks).sort()) {
    const many = piece.stocks[id]?.trials ?? 0;
    const of = wanted.filter((w) => w.stock.id === id);
    for (const thick of [...new Set(of.map((w) => w.finished[0]))].sort((a, b) => b - a)) {
      const like = of.filter((w) => w.finished[0] === thick);
      const width = Math.min(widest, ...like.map((w) => w.rough.stave));
      for (let i = 1; i <= many; i++)
        out.push({
          ...baseOf(like[0] as Wanted),
          id: `${id}.trial${i}.${thick}`,
          part: like[0]?.part.id ?? id,
          mark: `trial ${i}`,
          width,
          length,
          shows: 'none',
          spare: true,
        });
    }
  }
  return out;
}
