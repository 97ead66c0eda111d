import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { machines } from '../../src/checks/machines.js';
import { clampsFor } from '../../src/shop/clamps.js';
import { inches } from '../../src/lengths/length.js';
import { bench } from './pieces.js';
import { inputOf, ran, shippedInput } from './run.js';

const codes = async (shop: object, staves = 3): Promise<string[]> =>
  ran(machines, await inputOf(bench(shop, staves))).findings.map((f) => f.code);

describe('machines of the shop', () => {
  it('say nothing where the shop file is silent', async () => expect(await codes({})).toEqual([]));

  // 18 in and 1/2 over in three staves: 6 1/6 each, sawn 6 1/2.
  it.each([
    ['wider-than-jointer', { jointer: { width: '8' } }, { jointer: { width: '6' } }],
    ['wider-than-planer', { planer: { width: '20' } }, { planer: { width: '15' } }],
    ['shorter-than-planer', { planer: { width: '20', shortest: '9' } }, { planer: { width: '20', shortest: '18' } }],
    ['thinner-than-planer', { planer: { width: '20', thinnest: '1/4' } }, { planer: { width: '20', thinnest: '7/8' } }],
    ['wider-than-crosscut', { tableSaw: { crosscut: '24' } }, { tableSaw: { crosscut: '12' } }],
    ['wider-than-rip', { tableSaw: { rip: '24' } }, { tableSaw: { rip: '12' } }],
    ['thicker-than-saw', { tableSaw: { height: '3' } }, { tableSaw: { height: '1/2' } }],
    ['longer-than-bench', { bench: { length: '72' } }, { bench: { length: '36' } }],
  ])('%s: found, and its twin is silent', async (code, large, little) => {
    expect(await codes({ machines: large })).not.toContain(code);
    expect(await codes({ machines: little })).toContain(code);
  });
  it('says how many staves the jointer takes', async () => {
    const { findings } = ran(machines, await inputOf(bench({ machines: { jointer: { width: '5' } } })));
    // A blank of 18 1/2 by 5 makes four of 4 5/8.
    expect(findings.map((f) => [f.severity, f.hint?.includes('4 staves of 4 5/8')])).toContainEqual(['warning', true]);
  });
  it('small parts are told, long ones are not', async () => {
    expect(await codes({})).not.toContain('small-at-machines');
    const short = ran(machines, await shippedInput('letter-cabinet')).checked.checks[0]?.judged ?? [];
    expect(short.filter((j) => j.code === 'small-at-machines').length).toBeGreaterThan(0);
  });
});

describe('clamps', () => {
  // Trade rule by hand: 60 in of 3 1/2 in staves, spacing 7: ceil(56 / 7) + 1 = 9.
  it('a panel of 60 in with staves of 3 1/2 in wants nine', () => expect(clampsFor(inches(60), inches(3.5))).toBe(9));
  it('a longer panel never wants fewer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 6, max: 100 }), fc.integer({ min: 1, max: 9 }), (long, stave) => {
        expect(clampsFor(inches(long + 1), inches(stave))).toBeGreaterThanOrEqual(
          clampsFor(inches(long), inches(stave)),
        );
      }),
      { seed: 3, numRuns: 80 },
    );
  });
  it('are counted by how far they open', async () => {
    const with_ = (opening: string, count: number): object => ({ clamps: [{ opening, count }] });
    // The top: 18 1/4 + 4 in open, ceil((41 - 4) / 10) + 1 = 5.
    expect(await codes(with_('50', 5))).toEqual([]);
    expect(await codes(with_('50', 4))).toEqual(['clamps-panel']);
    expect(await codes(with_('20', 9))).toContain('clamps-panel');
    // The rail: 40 + 4 in between the outsides.
    expect(await codes(with_('44', 9))).not.toContain('clamps-short');
    expect(await codes(with_('43', 9))).toContain('clamps-short');
  });
});

describe('what one person steers, and what stands on end', () => {
  it('a sheet of 96 x 48 is not for one person whose limit is 60 x 30', async () => {
    const def = (alone: object): object => ({
      stock: { ply: { sheet: 'plywood-birch', thickness: '0.7', size: ['96', '48'] } },
      parts: { shelf: { stock: 'ply', across: ['0', '20'], deep: ['0', '10'], up: ['0', '0.7'], grain: 'across' } },
      shop: { alone },
    });
    const found = async (length: string, width: string): Promise<string[]> =>
      ran(machines, await inputOf(def({ length, width }))).findings.map((f) => f.code);
    expect(await found('60', '30')).toContain('sheet-not-alone');
    expect(await found('96', '48')).not.toContain('sheet-not-alone');
  });
  it('tails of the chest’s long rails are not cut on end at a table for 24 in', async () => {
    const input = await shippedInput('tall-chest');
    const own = (tallest: number, stroke: number): string[] => {
      const profile = {
        machines: { routerTable: { tallest: inches(tallest) }, drillPress: { stroke: inches(stroke) } },
        clamps: [],
      };
      return ran(machines, { ...input, piece: { ...input.piece, profile } }).findings.map((f) => f.code);
    };
    expect(own(24, 4)).toContain('taller-than-router-table');
    expect(own(60, 4)).not.toContain('taller-than-router-table');
    expect(own(60, 0.25)).toContain('deeper-than-drill');
    expect(own(60, 4)).not.toContain('deeper-than-drill');
  });
});
