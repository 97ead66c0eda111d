import { describe, expect, it } from 'vitest';
import { delivery } from '../../src/checks/delivery.js';
import { wardrobe } from './pieces.js';
import { inputOf, ran } from './run.js';

const verdicts = async (def: object): Promise<Record<string, string>> =>
  Object.fromEntries(ran(delivery, await inputOf(def)).checked.checks[0]!.judged.map((j) => [j.code, j.verdict]));

describe('delivery', () => {
  it('passes a door upright, and is refused by a narrow one', async () => {
    // 22 in deep with its top: 30 x 80 in lets it through upright, 16 in does not in any way.
    const wide = ran(delivery, await inputOf(wardrobe({ doors: [{ name: 'front door', width: '30', height: '80' }] })));
    expect(wide.findings).toEqual([]);
    expect(wide.checked.checks[0]?.judged[0]).toMatchObject({
      verdict: 'pass',
      about: 'through front door, upright, end first',
    });
    const narrow = ran(delivery, await inputOf(wardrobe({ doors: [{ name: 'hatch', width: '16', height: '80' }] })));
    expect(narrow.findings.map((f) => [f.code, f.severity])).toContainEqual(['delivery-door', 'fail']);
  });
  it('names the part that lets it through when it comes off', async () => {
    // With the top on it is 22 in deep, off 20: a clear 22 in less an inch for hands lets only the latter in.
    const { findings } = ran(
      delivery,
      await inputOf(wardrobe({ doors: [{ name: 'back door', width: '22', height: '80' }] })),
    );
    expect(findings[0]?.hint).toMatch(/^With A?\w+ off it passes/);
    expect(
      await verdicts(wardrobe({ doors: [{ name: 'back door', width: '22', height: '80' }], apart: ['top'] })),
    ).toEqual({
      'delivery-door': 'pass',
    });
  });
  it('goes round a wide corner and not a tight one', async () => {
    const corner = (w: string): object => wardrobe({ corners: [{ name: 'hall', widths: [w, w] }], ceiling: '96' });
    expect((await verdicts(corner('40')))['delivery-corner']).toBe('pass');
    expect((await verdicts(corner('20')))['delivery-corner']).toBe('fail');
  });
  it('is tipped up under a ceiling of 96 in, not of 74', async () => {
    // sqrt(72² + 22²) = 75.3.
    expect((await verdicts(wardrobe({ ceiling: '96' })))['delivery-ceiling']).toBe('pass');
    expect((await verdicts(wardrobe({ ceiling: '74' })))['delivery-ceiling']).toBe('fail');
  });
  it('goes up a stair of common size, not one with little headroom', async () => {
    const stair = (headroom: string): object =>
      wardrobe({ stairs: [{ name: 'stair', width: '48', headroom, pitch: 35 }] });
    expect((await verdicts(stair('80')))['delivery-stair']).toBe('pass');
    expect((await verdicts(stair('24')))['delivery-stair']).toBe('fail');
  });
  it('goes into a large vehicle and not into a small one, and leaves the shop by its door', async () => {
    expect(
      (await verdicts(wardrobe({ vehicle: { length: '120', width: '60', height: '60' } })))['delivery-vehicle'],
    ).toBe('pass');
    expect(
      (await verdicts(wardrobe({ vehicle: { length: '60', width: '40', height: '30' } })))['delivery-vehicle'],
    ).toBe('fail');
    const door = (width: string): object => wardrobe({}, { shop: { door: { width, height: '84' } } });
    expect((await verdicts(door('36')))['shop-door']).toBe('pass');
    expect((await verdicts(door('18')))['shop-door']).toBe('fail');
  });
  it('says nothing of a way that is not told, but gives the sizes', async () => {
    const { checked, findings } = ran(delivery, await inputOf(wardrobe({})));
    expect(findings).toEqual([]);
    expect(checked.checks[0]?.tables[0]?.rows).toEqual([['The piece', '44', '22', '72']]);
  });
});
