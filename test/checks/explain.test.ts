import { beforeAll, describe, expect, it } from 'vitest';
import type { CheckInput } from '../../src/checks/check.js';
import { explainJudged } from '../../src/checks/explain.js';
import { runChecks, type Checked } from '../../src/checks/index.js';
import { inputOf } from './run.js';

/** A shelf of teak, whose figures are from memory, 30 in between two boards. */
const SHELF = {
  stock: { oak: { lumber: 'oak-white', quarter: '4/4' }, teak: { lumber: 'teak', quarter: '4/4' } },
  parts: {
    left: { mark: 'A1', stock: 'oak', grain: 'up', across: ['0', '3/4'], deep: ['0', '10'], up: ['0', '40'] },
    right: { mark: 'A2', stock: 'oak', grain: 'up', across: ['30 3/4', '31 1/2'], deep: ['0', '10'], up: ['0', '40'] },
    shelf: {
      mark: 'S1',
      stock: 'teak',
      grain: 'across',
      across: ['left', 'right'],
      deep: ['0', '10'],
      up: ['20', '20 3/4'],
    },
  },
  joints: { shelf_in: { kind: 'dado', part: 'shelf', into: ['left', 'right'], depth: '1/4' } },
  use: { loads: { shelf: { perArea: 40 } } },
};

describe('explain of what is judged', () => {
  let input: CheckInput;
  let checked: Checked;
  beforeAll(async () => {
    input = await inputOf(SHELF);
    const { value } = runChecks(input);
    if (!value) throw new Error('not checked');
    checked = value;
  });
  const told = (id: string): string[] => explainJudged(checked, input.piece, id);

  it('one of one, in full: figure and limit, rule, inputs with their sources and marks, the limit’s source', () => {
    const lines = told('sag-now of shelf');
    expect(lines[0]).toMatch(
      /^sag-now passes: S1 sags in the middle at first under 40\.0 lb\/ft²: \.\d+, limit \.208; \d+\.\d\d times over$/,
    );
    expect(lines).toContain('  free span = 30 in');
    expect(lines.find((l) => l.includes('modulus of elasticity'))).toMatch(/ million psi \(.*from memory.*\) \*$/);
    expect(lines.find((l) => l.startsWith('  rule:'))).toContain('5/384');
    expect(lines.filter((l) => l.startsWith('  source:')).join()).toContain(
      'Architectural Woodwork Standards, 2009, p. 279',
    );
    expect(lines.at(-1)).toBe('  * not read in its source');
    expect(told('sag-now of S1')).toEqual(lines);
  });
  it('a code tells all that it judges, a check or a part what passes in a line each', () => {
    expect(told('sag-now')).toEqual(told('sag-now of shelf'));
    const part = told('shelf');
    expect(part[0]).toBe('judged:');
    expect(part.some((l) => l.startsWith('  sag-now passes: S1'))).toBe(true);
    expect(part.at(-1)).toMatch(/^in full: /);
    expect(told('sag').filter((l) => l.startsWith('  sag-'))).toHaveLength(2);
  });
  it('what fails is told in full with its remedy, wherever it is asked for', () => {
    const long = {
      ...checked,
      checks: checked.checks.map((c) => ({
        ...c,
        judged: c.judged.map((j) => ({ ...j, verdict: 'fail' as const, remedy: 'Make it thicker.' })),
      })),
    };
    const lines = explainJudged(long, input.piece, 'shelf');
    expect(lines).toContain('    remedy: Make it thicker.');
    expect(lines.at(-1)).not.toMatch(/^in full/);
  });
  it('a code that judges nothing here says what it means; an unknown name says nothing', () => {
    expect(told('tip-open')).toEqual([
      'tip-open: empty drawers, all open, tip it over. Nothing in this piece is judged by it.',
    ]);
    expect(told('sag-now of left')).toEqual(['"sag-now" judges nothing of "left" here.']);
    expect([told('delivery'), told('no_such'), told('no of such')]).toEqual([
      ['delivery: nothing in this piece is judged by it.'],
      [],
      [],
    ]);
  });
});

describe('findings carry their figures', () => {
  it('in the units of the quantity, with the limit’s source', async () => {
    const thin = { ...SHELF, parts: { ...SHELF.parts, shelf: { ...SHELF.parts.shelf, up: ['20', '20 1/4'] } } };
    const found = runChecks(await inputOf(thin)).findings.find((f) => f.code === 'sag-now');
    expect(found?.judged?.figure.of).toBe('fine');
    // L/144 of 30 in.
    expect((found?.judged?.limit?.value ?? 0) / 25.4e6).toBeCloseTo(30 / 144, 3);
    expect(found?.judged?.margin).toBeLessThan(1);
    expect(found?.judged?.sources.join()).toContain('1/144');
  });
});
