import type { Units } from '../lengths/length.js';
import type { Cut, Glue } from './cut.js';
import { frameOf } from './frame.js';
import type { Frame, PartLike } from './frame.js';
import { Reader, normalise } from './reader.js';
import { b, marks, merged, t } from './say.js';
import type { BareCut, Piece, SayContext } from './say.js';
import { SHAPES, wordsOf } from './shapes.js';

/** One numbered row of a card: equal cuts that differ only in where they stand. */
export interface Callout {
  readonly number: number;
  readonly name: string;
  readonly runs: readonly Piece[];
  /** The same as plain text: what `parseCallout` reads. */
  readonly text: string;
  readonly cuts: readonly string[];
  readonly mates: readonly string[];
  readonly trial?: true;
}
export interface CalloutContext extends SayContext {
  readonly units: Units;
}
/** A callout read back: the cuts it stands for, and what else it orders. */
export interface ParsedCallout {
  readonly cuts: readonly BareCut[];
  readonly scribe: boolean;
  readonly glue?: Glue;
}

const SCRIBE = 'Scribe from the mate; the figures are for checking.';

/** The callouts of a part, trial first, then in the order they are made (rank, then as the part lists them). */
export function sayCuts(part: PartLike, cuts: readonly Cut[], ctx: CalloutContext): Callout[] {
  const frame = frameOf(part, ctx.units);
  // A groove or a dado is tried in the offcut at hand; only a joint that is set up for is worth a row of its own.
  const trials = [...new Set(cuts.flatMap((c) => (c.trial === undefined || c.shape === 'box' ? [] : [c.trial])))];
  const first = trials.map((words) =>
    sayTrial(
      words,
      cuts.filter((c) => c.trial === words).map((c) => c.id),
    ),
  );
  const groups = grouped(cuts, frame);
  const numbers = new Map(groups.flatMap((g, i) => g.map((c) => [c.id, first.length + i + 1] as const)));
  const numberOf = (id: string): number => numbers.get(id) ?? 0;
  const rows = [...first, ...groups.map((g) => sayGroup(g, frame, { ...ctx, cuts, numberOf }))];
  return rows.map((row, i) => ({ ...row, number: i + 1 }));
}
const stop = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);
function sayTrial(words: string, ids: readonly string[]): Omit<Callout, 'number'> {
  const runs = [b('Trial first,'), t(` in an offcut of the same thickness: ${stop(words)}`)];
  return { name: 'Trial first', runs, text: plain(runs), cuts: ids, mates: [], trial: true };
}
function grouped(cuts: readonly Cut[], f: Frame): (readonly Cut[])[] {
  const ordered = cuts.map((c, i) => ({ c, i })).sort((x, y) => x.c.rank - y.c.rank || x.i - y.i);
  const groups = new Map<string, Cut[]>();
  for (const { c } of ordered) {
    const tail = [c.rank, c.scribe ?? false, c.glue?.where, c.glue?.not, ...(c.notes ?? [])].join('|');
    const key = `${wordsOf(c).key(c, f)}|${tail}`;
    groups.set(key, [...(groups.get(key) ?? []), c]);
  }
  return [...groups.values()].flatMap((g) => wordsOf(g[0] as Cut).split?.(g, f) ?? [g]);
}
function sayGroup(group: readonly Cut[], f: Frame, ctx: SayContext): Omit<Callout, 'number'> {
  const c = group[0] as Cut;
  const shared = group.every((g) => g.mates.join() === c.mates.join());
  const own = c.shape === 'tails' || c.shape === 'tenon';
  const said = wordsOf(c).print(shared && !own ? group.map((g) => ({ ...g, mates: [] })) : group, f, ctx);
  const mates = [...new Set(group.flatMap((g) => g.mates))];
  const placed = c.shape === 'box' || c.shape === 'dovetail' || c.shape === 'bore' || c.shape === 'mark';
  const beside = own || (!shared && placed && !said.asAnother);
  const runs: Piece[] = [...said.runs];
  if (!beside && mates.length > 0) runs.push(t(' For '), b(marks(mates, ctx)), t('.'));
  if (c.scribe) runs.push(t(' '), b('Scribe'), t(SCRIBE.slice(6)));
  runs.push(...sayGlue(c.glue));
  const dry =
    c.shape === 'box' && c.trial !== undefined && !(c.notes ?? []).some((n) => n.includes('in an offcut first'));
  if (dry) runs.push(t(` In an offcut first: ${stop(c.trial as string)}`));
  for (const note of c.notes ?? []) runs.push(t(` ${stop(note.slice(0, 1).toUpperCase() + note.slice(1))}`));
  const all = merged(runs);
  return { name: said.name.replace(/,$/, ''), runs: all, text: plain(all), cuts: group.map((g) => g.id), mates };
}
const plain = (runs: readonly Piece[]): string => normalise(runs.map((r) => r.text).join(''));
function sayGlue(glue: Glue | undefined): Piece[] {
  if (!glue) return [];
  if (glue.where === '') return [t(' '), b('No glue'), t(glue.not ? `, ${stop(glue.not)}` : '.')];
  const not = glue.not === undefined ? '' : `; none ${glue.not.replace(/^(none|no glue) /, '')}`;
  return [t(' '), b('Glue'), t(` ${stop(`${glue.where}${not}`)}`)];
}

/** Reads a card's callouts, numbered from 1, one after another: a later one may be `as cut 2`. Undefined where unread. */
export function parseCallouts(texts: readonly string[], frame: Frame): (ParsedCallout | undefined)[] {
  const out: (ParsedCallout | undefined)[] = [];
  for (const text of texts) out.push(parseCallout(text, frame, (n) => out[n - 1]?.cuts));
  return out;
}
/**
 * Reads one printed callout back, whatever its line breaks; undefined when it is not in the grammar. A trial gives no cuts.
 * `earlier`: the cuts of a callout before it, by its number.
 */
export function parseCallout(
  text: string,
  frame: Frame,
  earlier: (n: number) => readonly BareCut[] | undefined = () => undefined,
): ParsedCallout | undefined {
  const r = new Reader(normalise(text), frame, earlier);
  if (r.take('Trial first,')) return { cuts: [], scribe: false };
  for (const words of Object.values(SHAPES)) {
    const cuts = r.attempt(() => words.parse(r) as readonly BareCut[] | undefined);
    if (cuts) return parseTail(r, cuts);
  }
  return undefined;
}
function parseTail(r: Reader, cuts: readonly BareCut[]): ParsedCallout {
  const common = r.attempt(() => {
    const mates = r.take('For') ? r.mates() : [];
    return mates.length > 0 && r.take('.') ? mates : undefined;
  });
  const scribe = r.take(SCRIBE);
  const glue = parseGlue(r.rest());
  // Cuts that are said as another's have its mates, as far as they are named again.
  const own = (c: BareCut): readonly string[] => (r.asAnother ? c.mates.filter((m) => common?.includes(m)) : (common ?? c.mates)); // prettier-ignore
  const mated = cuts.map((c): BareCut => ({ ...c, mates: own(c) }));
  return { cuts: mated, scribe, ...(glue ? { glue } : {}) };
}
function parseGlue(rest: string): Glue | undefined {
  const none = /^No glue(?:, (.*?))?\.(?: |$)/.exec(rest);
  if (none) return { where: '', ...(none[1] === undefined ? {} : { not: none[1] }) };
  const some = /^Glue (.*?)(?:; none (.*?))?\.(?: |$)/.exec(rest);
  if (!some?.[1]) return undefined;
  return { where: some[1], ...(some[2] === undefined ? {} : { not: some[2] }) };
}
