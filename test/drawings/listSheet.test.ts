import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DrawInput } from '../../src/drawings/index.js';
import type { Prepared } from '../../src/drawings/input.js';
import { modelOf } from '../../src/drawings/model.js';
import { listSheet } from '../../src/drawings/sheets/listSheet.js';
import type { ListBlock } from '../../src/drawings/sheets/listSheet.js';
import { viewsOf } from '../../src/drawings/views.js';
import { loadFaces } from '../../src/io/fonts.js';
import { chestFixture } from './fixture.js';

let ready: Prepared;
beforeAll(async () => {
  const input: DrawInput = { ...(await chestFixture()), faces: loadFaces(), hash: '7f3c91', findings: [] };
  ready = { ...input, model: modelOf(input.piece, input.solids), views: viewsOf(input.piece, input.solids) };
}, 60_000);
afterAll(() => ready.kernel.dispose());

const block = (id: string, rows: number, half = false): ListBlock => ({
  id,
  title: id,
  table: {
    id,
    columns: [{ id: 'a', label: 'A', align: 'left' }],
    rows: Array.from({ length: rows }, (_, i) => [`${id}${i}`]),
  },
  look: {},
  half,
});
const plan = (...blocks: ListBlock[]) => {
  const kind = listSheet({ id: 'test', title: 'Test', blocks: () => blocks });
  return { pages: kind.plan(ready), entries: kind.entries?.(ready) ?? [] };
};

/** Rows are 4.9 high, a heading row 6.4, a block's heading 6.6 and 7 under it: 161 mm of a Letter page hold 31 rows. */
describe('lists on pages', () => {
  it('share a page while they are short', () => {
    expect(plan(block('p', 5), block('q', 5)).pages).toBe(1);
    expect(plan(block('p', 20), block('q', 20)).pages).toBe(2);
  });
  it('are left out when they are empty', () => {
    expect(plan(block('p', 0)).pages).toBe(0);
    expect(plan(block('p', 0), block('q', 1)).entries.map((e) => e.id)).toEqual(['q']);
  });
  it('run on over as many pages as they need, and never leave one row alone', () => {
    const { pages, entries } = plan(block('p', 32));
    expect(pages).toBe(2);
    expect(entries).toEqual([{ id: 'p', title: 'p', from: 0, to: 1 }]);
    const kind = listSheet({ id: 'test', title: 'Test', blocks: () => [block('p', 32)] });
    const last = kind.draw(ready, 1, { n: 2, of: 2, hash: '7f3c91', index: [] });
    const said = JSON.stringify(last.picture);
    expect(['p29', 'p30', 'p31'].every((w) => said.includes(`"${w}"`))).toBe(true);
  });
  it('stand side by side at half the width', () => {
    expect(plan(block('p', 20, true), block('q', 20, true)).pages).toBe(1);
    // Too long for one column: filled down column by column.
    expect(plan(block('p', 50, true)).pages).toBe(1);
    expect(plan(block('p', 70, true)).pages).toBe(2);
  });
  it('each have a line in the index, on the page where they begin', () => {
    const { entries } = plan(block('p', 20), block('q', 20), block('r', 2, true));
    expect(entries.map((e) => [e.id, e.from, e.to])).toEqual([
      ['p', 0, 0],
      ['q', 1, 1],
      ['r', 1, 1],
    ]);
  });
});
