import { describe, expect, it } from 'vitest';
import { runChecks } from '../../src/checks/index.js';
import { inputOf, shippedInput } from './run.js';

const box = (more: object, wood = 'cherry', up = '20'): object => ({
  stock: { wood: { lumber: wood, quarter: '4/4' } },
  parts: { side: { stock: 'wood', across: ['0', '3/4'], deep: ['0', '12'], up: ['0', up], grain: 'up', name: 'side' } },
  ...more,
});
const keys = async (def: object): Promise<string[]> =>
  (runChecks(await inputOf(def)).value?.cautions ?? []).map((c) => c.key);
const text = async (def: object, key: string): Promise<string> =>
  (runChecks(await inputOf(def)).value?.cautions ?? []).find((c) => c.key === key)?.text ?? '';

describe('cautions stand where they apply, and only there', () => {
  it('a low board of cherry has the common ones alone', async () =>
    expect(await keys(box({}))).toEqual(['figures', 'guards', 'dust']));
  // NIOSH Pocket Guide: oak and beech A1, walnut and birch A2 of ACGIH.
  it('dust by species', async () => {
    expect(await text(box({}, 'oak-white'), 'dust')).toContain('That of white oak can cause cancer');
    expect(await text(box({}, 'walnut-black'), 'dust')).toContain('black walnut is suspected');
    expect(await text(box({}), 'dust')).not.toContain('cancer');
  });
  it('oily rags with an oil finish', async () => {
    expect(await keys(box({ finish: { kind: 'penetrating oil' } }))).toContain('oily-rags');
    expect(await keys(box({ finish: { kind: 'shellac' } }))).not.toContain('oily-rags');
  });
  it('tipping over from 27 in up', async () => {
    expect(await keys(box({}, 'cherry', '27'))).toContain('tip-over');
    expect(await keys(box({}, 'cherry', '26 15/16'))).not.toContain('tip-over');
    expect(await keys(box({ use: { fixed: true } }, 'cherry', '60'))).not.toContain('tip-over');
  });
  it('small parts on their own cards', async () => {
    const got = runChecks(await inputOf(box({}, 'cherry', '11'))).value?.cautions.find((c) => c.key === 'small-parts');
    expect(got).toMatchObject({ on: ['cards'], touches: ['side'] });
    expect(await keys(box({}, 'cherry', '20'))).not.toContain('small-parts');
  });
  it('glass where there is some', async () => {
    const pane = {
      side: {
        stock: 'wood',
        across: ['0', '1/4'],
        deep: ['0', '12'],
        up: ['0', '20'],
        grain: 'up',
        name: 'glass pane',
      },
    };
    expect(await keys(box({ parts: pane }))).toContain('glass');
  });
  it('panels of sheet goods, and lifting of what is heavy', async () => {
    const { cautions } = runChecks(await shippedInput('tall-chest')).value ?? { cautions: [] };
    expect(cautions.map((c) => c.key)).toEqual(
      expect.arrayContaining(['panels', 'lifting', 'tip-over', 'oily-rags']) as unknown,
    );
  });
});

describe('what is not certified', () => {
  it('a crib fails as a whole and nobody can answer for it; a desk is judged as any', async () => {
    const accepted = [{ finding: 'outside-checks', why: 'sample', by: 'sample', on: '2027-02-01' }];
    const { findings } = runChecks(await inputOf(box({ use: { kind: 'crib' }, accepted })));
    expect(findings.find((f) => f.code === 'outside-checks')?.severity).toBe('fail');
    expect(await keys(box({ use: { kind: 'crib' } }))).toContain('outside');
    const desk = runChecks(await inputOf(box({ use: { kind: 'desk' } })));
    expect(desk.findings.map((f) => f.code)).not.toContain('outside-checks');
  });
});
