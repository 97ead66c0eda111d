import { inches } from '../../lengths/length.js';
import { assigned, type Piece } from './assign.js';
import type { Blank, Board, BoardCount, BoardJob, BoardLayout, CutBoard } from './board.js';
import { valueBound } from './bound.js';
import { BoardFiller } from './fill.js';
import { groundOf, suits, type Ground, type Kind } from './ground.js';
import { parted, partId, sorted, type Sorted } from './kinds.js';
import { whyNot, whyShort, type Missing } from './missing.js';
import { sawn } from './saw.js';
import { BoardSearch, valueOf, type Filled } from './search.js';
import { boardValues } from './value.js';

/** Our defaults: a square start at each end, sizes in sixteenths, and remnants that a small part could come from. */
const END_TRIM = inches(1 / 2);
const STEP = inches(1 / 16);
const KEEP = [inches(16), inches(3)] as const;
/** Thousands of places looked at for a whole job. */
export const BOARD_BUDGET = 3000;

interface Rules {
  readonly kerf: number;
  readonly endTrim: number;
  readonly step: number;
  readonly keep: readonly [number, number];
}

/**
 * Lays every blank on the boards: cut edge to edge, clear of what may not be in it, runs in order along one board. In order:
 * all blanks out, the least value of boards used, the longest clear remnants, panels and colour groups together. Same job,
 * same layout. What finds no place is listed with the reason and what would help.
 */
export function layBoards(job: BoardJob): BoardLayout {
  const rules: Rules = {
    kerf: job.kerf,
    endTrim: job.endTrim ?? END_TRIM,
    step: job.step ?? STEP,
    keep: job.keep ?? KEEP,
  };
  const { values, unit } = boardValues(job.boards);
  const boards = [...job.boards].sort((a, b) => (a.id < b.id ? -1 : 1));
  const classes = [...new Set(job.blanks.map(classOf))].sort();
  const cut: CutBoard[] = [];
  const missing: Missing[] = [];
  const counts: BoardCount[] = [];
  for (const key of classes) {
    const blanks = job.blanks.filter((b) => classOf(b) === key);
    const budget = ((job.budget ?? BOARD_BUDGET) * 1000 * blanks.length) / job.blanks.length;
    const laid = layClass(
      blanks,
      boards.filter((b) => classOf(b) === key),
      values,
      rules,
      budget,
    );
    cut.push(...laid.boards);
    missing.push(...laid.missing);
    const [wood, quarter] = key.split(' ') as [string, string];
    counts.push({ wood, quarter, ...laid.count });
  }
  const sum = (f: (c: BoardCount) => number): number => counts.reduce((s, c) => s + f(c), 0);
  return {
    boards: cut,
    missing: missing.sort((a, b) => (a.blank < b.blank ? -1 : 1)),
    used: sum((c) => c.used),
    bound: sum((c) => c.bound),
    unit,
    kerf: rules.kerf,
    endTrim: rules.endTrim,
    counts,
  };
}
const classOf = (x: { readonly wood: string; readonly quarter: string }): string => `${x.wood} ${x.quarter}`;

interface Laid {
  readonly boards: readonly CutBoard[];
  readonly missing: readonly Missing[];
  readonly count: Pick<BoardCount, 'boards' | 'used' | 'bound' | 'proved'>;
}
function layClass(
  blanks: readonly Blank[],
  boards: readonly Board[],
  values: ReadonlyMap<string, number>,
  rules: Rules,
  limit: number,
): Laid {
  const { kinds, members } = sorted(partedRuns(blanks, boards, rules), rules.kerf);
  const suited = boards.filter((b) => blanks.some((x) => suits(b, x)));
  const grounds = suited.map((b) => groundOf(b, kinds, rules.endTrim, values.get(b.id) ?? 0));
  const fits = kinds.map((_, k) => fitsSomewhere(kinds, k, grounds, rules));
  const counts = members.map((m, k) => (fits[k] ? m.length : 0));
  const bound = valueBound(kinds, counts, grounds, rules.kerf);
  const panels = new Set(members.flatMap((m, k) => (new Set(m.map((u) => u[0]?.part)).size < m.length ? [k] : [])));
  const search = new BoardSearch({
    panels,
    kinds,
    counts,
    grounds,
    ...rules,
    limit,
    bound: Number.isFinite(bound) ? bound : 0,
  });
  const { filled, left } = search.run();
  const told = tell(filled, grounds, members, rules);
  const used = valueOf({ grounds }, filled);
  const placed = counts.map((n, k) => n - (left[k] as number));
  const floor = left.some((n) => n > 0) ? valueBound(kinds, placed, grounds, rules.kerf) : bound;
  const proved = floor >= used * (1 - 1e-9);
  const lacking = lackingOf(members, told.taken);
  const short = lacking.filter((x) => fits[x.kind]).map((x) => x.unit);
  return {
    boards: told.boards,
    missing: lacking.flatMap(({ unit, kind }) => {
      if (fits[kind]) return whyShort(unit, short, rules);
      if (boards.length > 0) return whyNot(unit, boards, rules);
      const why = `there is no board of ${unit[0]?.wood} ${unit[0]?.quarter}`;
      return whyShort(
        unit,
        lacking.map((x) => x.unit),
        { kerf: rules.kerf, why },
      );
    }),
    count: { boards: filled.length, used, bound: proved ? used : Math.min(floor, used), proved },
  };
}

/** Runs that may come from several boards, cut into as few parts as there are boards that take them. */
function partedRuns(blanks: readonly Blank[], boards: readonly Board[], rules: Rules): readonly Blank[] {
  const out = blanks.filter((b) => !b.run);
  for (const id of [...new Set(blanks.flatMap((b) => (b.run ? [b.run.id] : [])))].sort()) {
    const run = blanks.filter((b) => b.run?.id === id).sort((a, b) => (a.run?.at ?? 0) - (b.run?.at ?? 0));
    const most = Math.min(run.length, run[0]?.run?.most ?? 1);
    let chosen = [run];
    for (let n = 1; n <= most; n++) {
      const tried = n === 1 ? [run] : parted(run, n, rules.kerf);
      const takes = tried.map((part) => {
        const { kinds } = sorted(part, rules.kerf);
        return fitsSomewhere(
          kinds,
          0,
          boards.map((b) => groundOf(b, kinds, rules.endTrim, 0)),
          rules,
        );
      });
      if (!takes.every(Boolean)) continue;
      chosen = tried;
      break;
    }
    chosen.forEach((part, i) =>
      out.push(
        ...part.map((b) => (chosen.length === 1 || !b.run ? b : { ...b, run: { ...b.run, id: partId(id, i + 1) } })),
      ),
    );
  }
  return out;
}

/** Does one piece of the kind come from some board when nothing else does? */
function fitsSomewhere(kinds: readonly Kind[], k: number, grounds: readonly Ground[], rules: Rules): boolean {
  const filler = new BoardFiller(kinds, rules.kerf, rules.step, () => 1);
  filler.pool = [k];
  return grounds.some((ground) =>
    (['cross', 'rip'] as const).some((first) => {
      filler.manner = { ...filler.manner, first };
      filler.left[k] = 1;
      filler.board(ground);
      return filler.left[k] === 0;
    }),
  );
}

function tell(
  filled: readonly Filled[],
  grounds: readonly Ground[],
  members: Sorted['members'],
  rules: Rules,
): { readonly boards: CutBoard[]; readonly taken: ReadonlySet<string> } {
  const boardOf = (g: number): Board | undefined => grounds[g]?.board;
  const blanks = assigned(filled, members, (g) => boardOf(g)?.group ?? boardOf(g)?.id ?? '');
  const boards = filled.map((f) =>
    sawn(f.node, grounds[f.ground] as Ground, (p: Piece) => blanks.get(p) as Blank, rules),
  );
  return { boards, taken: new Set([...blanks.values()].map((b) => b.id)) };
}
const lackingOf = (
  members: Sorted['members'],
  taken: ReadonlySet<string>,
): { readonly unit: readonly Blank[]; readonly kind: number }[] =>
  members.flatMap((units, kind) => units.filter((u) => !taken.has(u[0]?.id ?? '')).map((unit) => ({ unit, kind })));
