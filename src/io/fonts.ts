import { readFileSync } from 'node:fs';
import { readFace } from '../type/truetype.js';
import type { Faces } from '../type/type.js';

/** The folder of the two typeface files, found beside the program (both `src` and `dist` lie one folder below it). */
const FOLDER = new URL('../../templates/fonts/', import.meta.url);

/** Loads IBM Plex Sans Condensed Regular and SemiBold (SIL Open Font License 1.1, templates/fonts/OFL.txt). */
export function loadFaces(): Faces {
  const face = (weight: string) =>
    readFace(new Uint8Array(readFileSync(new URL(`IBMPlexSansCondensed-${weight}.ttf`, FOLDER))));
  return { regular: face('Regular'), semibold: face('SemiBold') };
}
