import { expect, test } from 'vitest';
import { FAULTS } from './meaning.js';
import { CASE, judge } from './whole.js';

test('what the faulty cases depart from is sound', async () => {
  expect((await judge(CASE)).map((t) => t.finding)).toEqual([]);
});

test.each(FAULTS)('$name: $code', async (fault) => {
  let text = CASE;
  for (const [find, put] of fault.change) {
    expect(text).toContain(find);
    text = text.replace(find, () => put);
  }
  const told = (await judge(text)).filter((t) => t.finding.severity === 'error');
  const first = told[0];
  // One slip, one kind of message: what follows from it stays silent.
  expect([...new Set(told.map((t) => t.finding.code))]).toEqual([fault.code]);
  if (!first) return;
  const [line, column, under] = fault.at;
  expect([first.line, first.column, first.under.slice(0, under.length)]).toEqual([line, column, under]);
  // A caret stands under a word or a short entry, never under a whole part.
  expect(first.under.length).toBeLessThanOrEqual(32);
  expect(`${first.finding.message} ${first.finding.hint ?? ''}`.toLowerCase()).toContain(fault.says.toLowerCase());
  expect(first.finding.hint ?? '').not.toBe('');
});

test('no two faulty cases are the same', () => {
  expect(new Set(FAULTS.map((f) => JSON.stringify(f.change))).size).toBe(FAULTS.length);
});
