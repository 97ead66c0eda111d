import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { svgPixels } from '../report/render.js';
import { definitionText, drawn, sheetOf, svgsOf } from './packet.js';
import { expectPicture } from './pictures.js';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const PICTURE = 'readme/elevations.png';

describe('the README', () => {
  it('shows the elevations of the shipped nightstand as they are: at most 1 pixel in 1000 differs', async () => {
    expect(readme).toContain(`(golden/${PICTURE})`);
    const packet = await drawn('nightstand');
    const [svg = ''] = await svgsOf([sheetOf(packet, 'elevations')]);
    // Letter is 11 in wide: 1100 pixels are 100 an inch.
    expectPicture(PICTURE, svgPixels(svg, 100 / 72), 0.001);
  });
  it('keeps its picture light', () => {
    expect(statSync(new URL(`../../golden/${PICTURE}`, import.meta.url)).size).toBeLessThan(150 * 1024);
  });
  it('has for its example a definition that is built: the wall shelf', async () => {
    const example = /```jsonc\n([^]*?)```/.exec(readme)?.[1];
    expect(example).toBe(definitionText('wall-shelf'));
    const { sheets, findings } = await drawn('wall-shelf');
    expect(findings).toEqual([]);
    expect(sheets.length).toBeGreaterThan(5);
  });
});
