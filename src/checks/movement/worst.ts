import type { Input, Verdict } from '../check.js';
import type { Single } from '../grouped.js';

const SAME = 1e3;
const key = (s: Single): string => JSON.stringify([s.code, s.marks, s.on ?? [], s.of ?? '', s.about, s.path]);
const rank = (v: Verdict): number => ['pass', 'note', 'warning', 'fail'].indexOf(v);
/** Boards at the edge of how they are sold are the fewer: what only they would do is told one step milder (our default). */
const milder = (v: Verdict): Verdict => (v === 'fail' ? 'warning' : v === 'warning' ? 'note' : v);
const BANDS = 'rings of flat wood 0 to 30°, rift 30 to 60°, quartered 60 to 90°: bands of the trade, from memory';

/**
 * Judged with the rings as the sawing is named; beside it, what boards at the worst angle of that sawing's band would do: as
 * an input of the figure where it differs, and as a judgement of its own, one step milder, where only they fail or warn.
 */
export function besideWorst(named: readonly Single[], atWorst: () => readonly Single[]): Single[] {
  const worst = new Map(atWorst().map((s) => [key(s), s]));
  const both = named.map((s): Single => withWorst(s, worst.get(key(s))));
  const known = new Map(named.map((s) => [key(s), s]));
  const more = [...worst.values()].flatMap((w): Single[] => {
    const least = rank('warning');
    const now = rank(known.get(key(w))?.verdict ?? 'pass');
    const verdict = milder(w.verdict);
    return rank(w.verdict) >= least && rank(verdict) > now ? [edge(w, verdict)] : [];
  });
  return [...both, ...more];
}

function withWorst(s: Single, w: Single | undefined): Single {
  if (!w || Math.abs(w.figure.value - s.figure.value) < SAME) return s;
  const input: Input = {
    name: 'the same at the worst rings of its sawing',
    quantity: w.figure,
    source: BANDS,
    memory: true,
  };
  return { ...s, worked: { ...s.worked, inputs: [...s.worked.inputs, input] } };
}
const edge = (w: Single, verdict: Verdict): Single => ({
  ...w,
  verdict,
  about: `at the worst rings of its sawing ${w.about}`,
  ...(w.remedy
    ? { remedy: `${w.remedy.replace(/\.$/, '')}, or pick boards whose rings stand as the sawing is named.` }
    : {}),
  worked: { ...w.worked, sources: [...w.worked.sources, BANDS] },
});
