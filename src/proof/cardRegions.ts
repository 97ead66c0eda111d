import type { PdfText } from './pdfTexts.js';

/** The words of one card in reading order, and the page where it begins. */
export interface CardText {
  readonly page: number;
  readonly text: string;
}
/** Strings whose baselines differ by less than this stand in one line, mm. */
const LINE = 0.5;
/** A half card is this wide, the words' column of a full one this wide, mm. */
const HALF = 116;
const COLUMN = 126;

interface Heading {
  readonly x: number;
  readonly y: number;
  readonly continued: boolean;
}

/** Finds the cards of a packet by their headings and gives each one's words, column by column, line by line. */
export function cardTexts(texts: readonly PdfText[]): CardText[] {
  const pages = new Map<number, PdfText[]>();
  for (const t of texts) {
    const list = pages.get(t.page);
    if (list) list.push(t);
    else pages.set(t.page, [t]);
  }
  const out: { page: number; text: string }[] = [];
  for (const [page, all] of pages) {
    for (const heading of headings(all)) {
      const text = read(region(all, heading));
      const last = out.at(-1);
      if (heading.continued && last) last.text += `\n${text}`;
      else out.push({ page, text });
    }
  }
  return out;
}
/** `Cuts, in this order` and `Cuts, continued`, from the left. */
function headings(all: readonly PdfText[]): Heading[] {
  return all
    .filter((t) => t.string.trim() === 'Cuts,')
    .flatMap((t) => {
      const next = after(all, t)?.string.trim();
      return next === 'in' || next === 'continued' ? [{ x: t.x, y: t.y, continued: next === 'continued' }] : [];
    })
    .sort((a, b) => a.x - b.x || a.y - b.y);
}
const after = (all: readonly PdfText[], t: PdfText): PdfText | undefined =>
  all.filter((o) => Math.abs(o.y - t.y) < LINE && o.x > t.x + 0.1).sort((a, b) => a.x - b.x)[0];

function region(all: readonly PdfText[], heading: Heading): PdfText[] {
  const below = (t: PdfText): boolean => t.y > heading.y - LINE;
  if (heading.continued) return all.filter((t) => t.x > heading.x - 1 && t.y > heading.y + LINE);
  const measures = all.filter((t) => t.string.trim() === 'Measure' && after(all, t)?.string.trim() === 'from');
  const own = measures.find((m) => m.x > heading.x - 1 && m.x < heading.x + HALF);
  if (own) return all.filter((t) => t.x > heading.x - 1 && t.x < heading.x + HALF);
  const head = measures[0]?.y ?? 0;
  const column = (t: PdfText): boolean => t.x > heading.x - 1 && t.x < heading.x + COLUMN;
  return all.filter((t) => (below(t) ? column(t) : t.y < head + LINE));
}
/** Lines from the top, each from the left. */
function read(texts: readonly PdfText[]): string {
  const sorted = [...texts].sort((a, b) => a.y - b.y || a.x - b.x);
  const lines: PdfText[][] = [];
  for (const t of sorted) {
    const line = lines.at(-1);
    if (line?.[0] && t.y - line[0].y < LINE) line.push(t);
    else lines.push([t]);
  }
  return lines
    .map((line) =>
      [...line]
        .sort((a, b) => a.x - b.x)
        .map((t) => t.string.trim())
        .join(' '),
    )
    .join('\n');
}
