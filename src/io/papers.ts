import { readFileSync, readdirSync } from 'node:fs';
import type { Paper } from '../drawings/frame.js';

const FOLDER = new URL('../../templates/sheets/', import.meta.url);

/** Papers that sheets can be drawn on, by id, as templates/sheets describes them. */
export function loadPapers(): Readonly<Record<string, Paper>> {
  const files = readdirSync(FOLDER)
    .filter((name) => name.endsWith('.json'))
    .sort();
  const papers = files.map((name) => paperOf(JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')), name));
  return Object.fromEntries(papers.map((paper) => [paper.id, paper]));
}
const isNumbers = (value: unknown, count: number): value is number[] =>
  Array.isArray(value) && value.length === count && value.every((v) => typeof v === 'number' && v > 0);
/** Checks a paper's file; a fault in it is a fault of the installation. */
function paperOf(value: unknown, name: string): Paper {
  const { id, name: title, size, frame } = (value ?? {}) as Record<string, unknown>;
  const sound = typeof id === 'string' && typeof title === 'string' && isNumbers(size, 2) && isNumbers(frame, 4);
  if (!sound) throw new RangeError(`templates/sheets/${name} does not describe a paper: id, name, size, frame`);
  const [w, h] = size as [number, number];
  const [x, y, fw, fh] = frame as [number, number, number, number];
  if (x + fw > w || y + fh > h) throw new RangeError(`templates/sheets/${name}: the frame is larger than the paper`);
  return { id, name: title, size: [w, h], frame: [x, y, fw, fh] };
}
