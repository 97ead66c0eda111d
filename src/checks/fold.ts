import type { Diagnostic } from '../diag/diagnostic.js';
import type { Units } from '../lengths/length.js';
import type { Accepted, Piece } from '../piece/piece.js';
import { sayQuantity } from '../value/quantity.js';
import type { Judgement } from './check.js';

/** A judgement and who answers for it, where somebody does. */
export interface Judged extends Judgement {
  readonly accepted?: Accepted;
}

const covers = (a: Accepted, j: Judgement): boolean =>
  a.finding === j.code && (a.of === undefined || (a.ids ?? [a.of]).some((id) => j.touches.includes(id)));
/** A reason, and behind it what no acceptance changes. */
const whole = (why: string, nevertheless: string | undefined): string =>
  nevertheless === undefined ? why : `${/[.!?]$/.test(why) ? why : `${why}.`} ${nevertheless}`;
const wantsAnswer = (j: Judgement): boolean => j.verdict === 'warning' || j.verdict === 'fail';

/** Every judgement with the acceptance that covers it: only what is wanting can be accepted. */
export const withAccepted = (judgements: readonly Judgement[], piece: Piece): Judged[] =>
  judgements.map((j) => {
    const accepted = wantsAnswer(j) ? (piece.accepted ?? []).find((a) => covers(a, j)) : undefined;
    return accepted ? { ...j, accepted: { ...accepted, why: whole(accepted.why, j.nevertheless) } } : j;
  });

/** One judgement in words: `S1 sags in the middle: 0.138, at most 0.095.` */
export function sentenceOf(j: Judgement, units: Units): string {
  const limit = j.limit ? `, limit ${sayQuantity(j.limit, units)}` : '';
  return `${j.subject} ${j.about}: ${sayQuantity(j.figure, units)}${limit}.`;
}

/** What is wanting becomes findings; what passes is only tabled. An accepted one is a note with the reason and the name. */
export function findingsOf(judged: readonly Judged[], units: Units): Diagnostic[] {
  return judged.flatMap((j): Diagnostic[] => {
    if (j.verdict === 'pass') return [];
    const { accepted } = j;
    const said = sentenceOf(j, units);
    return [
      {
        code: j.code,
        severity: accepted ? 'note' : j.verdict,
        path: j.path,
        message: accepted ? `${said} Accepted by ${accepted.by} on ${accepted.on}: ${accepted.why}` : said,
        ...(j.remedy ? { hint: j.remedy } : {}),
        touches: j.touches,
        judged: {
          figure: j.figure,
          ...(j.limit ? { limit: j.limit } : {}),
          ...(j.margin === undefined ? {} : { margin: j.margin }),
          sources: j.worked.sources,
        },
      },
    ];
  });
}

/** Acceptances that cover nothing: they would silence a later fault unseen. */
export function staleAccepted(judged: readonly Judged[], piece: Piece): Diagnostic[] {
  return (piece.accepted ?? []).flatMap((a, i): Diagnostic[] =>
    judged.some((j) => j.accepted === a || (wantsAnswer(j) && covers(a, j)))
      ? []
      : [
          {
            code: 'accepted-nothing',
            severity: 'warning',
            path: ['accepted', i],
            message: `Nothing is found that "${a.finding}"${a.of ? ` of ${a.of}` : ''} would accept.`,
            hint: 'Take the entry out, or look up the code that check prints.',
          },
        ],
  );
}

/** What stands over every sheet and card while something fails that nobody answers for; undefined when nothing does. */
export function stampOf(judged: readonly Judged[], units: Units): string | undefined {
  const fails = judged.filter((j) => j.verdict === 'fail' && !j.accepted);
  const [first] = fails;
  if (!first) return undefined;
  const said = sentenceOf(first, units).replace(/\.$/, '').replace(' (an estimate, not a test)', '');
  return `NOT FOR WORKSHOP: ${fails.length > 1 ? `${fails.length} checks fail, the first: ` : ''}${said}`;
}
