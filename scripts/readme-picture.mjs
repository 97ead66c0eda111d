// node scripts/readme-picture.mjs      renews golden/readme/elevations.png from the shipped nightstand (after npm run build)
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';

const WIDTH = 1100;
const CAP = 150 * 1024;
const target = join('golden', 'readme', 'elevations.png');
if (process.env.CI) {
  console.error('pictures are never written in CI');
  process.exit(2);
}
const dir = mkdtempSync(join(tmpdir(), 'benchpacket-'));
try {
  const definition = join('templates', 'pieces', 'nightstand.jsonc');
  execFileSync(process.execPath, [join('dist', 'main.js'), 'build', definition, '--out', dir], { stdio: 'pipe' });
  const drawings = join(dir, readdirSync(dir)[0], 'drawings');
  const svg = readFileSync(
    join(
      drawings,
      readdirSync(drawings).find((f) => f.endsWith('-elevations.svg')),
    ),
    'utf8',
  );
  const fontFiles = ['Regular', 'SemiBold'].map((w) => join('templates', 'fonts', `IBMPlexSansCondensed-${w}.ttf`));
  const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: 'IBM Plex Sans Condensed' };
  const image = new Resvg(svg, { font, fitTo: { mode: 'width', value: WIDTH } }).render();
  const png = new PNG({ width: image.width, height: image.height });
  png.data = Buffer.from(image.pixels);
  const bytes = PNG.sync.write(png, { colorType: 0, inputColorType: 6, deflateLevel: 9 });
  if (bytes.length > CAP) throw new Error(`${target} would be ${bytes.length} bytes; the cap is ${CAP}`);
  mkdirSync(join('golden', 'readme'), { recursive: true });
  writeFileSync(target, bytes);
  console.log(`${target}: ${image.width} by ${image.height}, ${statSync(target).size} bytes`);
} finally {
  rmSync(dir, { recursive: true, force: true });
}
