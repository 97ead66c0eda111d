import type { Detail } from './details.js';

/** A detail with its upper left corner on the sheet; it is lettered in the order in which it is read. */
export interface PlacedDetail {
  readonly detail: Detail;
  readonly x: number;
  readonly y: number;
}
/** Least air between details across and down, and the most that is shared out, mm. */
const BESIDE = 7;
const UNDER = 5;
const MOST = 26;

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly bottom: number;
}

/** Details in rows, over as many pages of one size as they take: in their order, else as takes fewer pages. */
export function packed(details: readonly Detail[], area: Area): PlacedDetail[][] {
  const tries = [details, [...details].sort((p, q) => q.h - p.h), ...splits(details)].map((d) => inOrder(d, area));
  return tries.reduce((p, q) => (q.length < p.length ? q : p));
}
/** Few details in every order of two halves: what goes into the first row, what into the second. */
function splits(details: readonly Detail[]): Detail[][] {
  if (details.length > 7) return [];
  return Array.from({ length: 1 << details.length }, (_, set) => [
    ...details.filter((_d, i) => (set >> i) & 1),
    ...details.filter((_d, i) => !((set >> i) & 1)),
  ]);
}
function inOrder(details: readonly Detail[], area: Area): PlacedDetail[][] {
  const rows: Detail[][] = [];
  let left = 0;
  for (const d of details) {
    const row = rows.at(-1);
    if (row && d.w + BESIDE <= left) {
      row.push(d);
      left -= d.w + BESIDE;
    } else {
      rows.push([d]);
      left = area.right - area.x - d.w;
    }
  }
  const pages: { rows: Detail[][]; height: number }[] = [];
  for (const row of rows) {
    const h = Math.max(...row.map((d) => d.h));
    const page = pages.at(-1);
    if (page && page.height + UNDER + h <= area.bottom - area.y) {
      page.rows.push(row);
      page.height += UNDER + h;
    } else pages.push({ rows: [row], height: h });
  }
  return pages.map((page) => {
    const spare = Math.max(0, area.bottom - area.y - page.height) / page.rows.length;
    let y = area.y;
    return page.rows.flatMap((row) => {
      const mine = y;
      y += Math.max(...row.map((d) => d.h)) + UNDER + Math.min(spare, UNDER);
      return inRow(row, area, mine);
    });
  });
}
function inRow(
  row: readonly Detail[],
  area: { readonly x: number; readonly right: number },
  y: number,
): PlacedDetail[] {
  const free = area.right - area.x - row.reduce((s, d) => s + d.w, 0);
  const gap = row.length < 2 ? 0 : Math.min(MOST, free / (row.length - 1));
  let x = area.x;
  return row.map((detail) => {
    const placed = { detail, x, y };
    x += detail.w + gap;
    return placed;
  });
}
/** As many details as find room in an area of one page, the others on whole pages; second looks only where they cost none. */
export function shared(
  details: readonly Detail[],
  area: Area,
  page: Area,
): { readonly inline: readonly PlacedDetail[]; readonly pages: readonly (readonly PlacedDetail[])[] } {
  let inline: Detail[] = [];
  for (const d of details) {
    const more = [...inline, d];
    const fits = d.w <= area.right - area.x && more.every((k) => k.h <= area.bottom - area.y);
    if (fits && packed(more, area).length === 1) inline = more;
  }
  const others = details.filter((d) => !inline.includes(d));
  const pages = packed(others, page);
  const seconds = others.filter((d) => d.spot.second);
  const last = seconds.at(-1);
  const fewer = last && packed(others.filter((d) => !d.spot.second), page).length < pages.length; // prettier-ignore
  if (fewer) return shared(details.filter((d) => d !== last), area, page); // prettier-ignore
  // A sheet for one detail is not worth its paper where five are shown already.
  const alone = pages.length > 1 && pages.at(-1)?.length === 1 && details.length > 5;
  if (alone) return shared(details.slice(0, -1), area, page);
  return { inline: packed(inline, area)[0] ?? [], pages };
}

/** The same details as large as the page holds: all of them if it may be, else one after the other, the smallest first. */
export function enlarged(
  page: readonly PlacedDetail[],
  area: Area,
  grown: (d: Detail) => Detail | undefined,
): readonly PlacedDetail[] {
  const fits = (all: readonly Detail[]): PlacedDetail[] | undefined => {
    const pages = all.every((d) => d.w <= area.right - area.x && d.h <= area.bottom - area.y) ? packed(all, area) : [];
    return pages.length === 1 ? pages[0] : undefined;
  };
  let best = page;
  let details = page.map((p) => p.detail);
  const order = [...details].sort((p, q) => p.w * p.h - q.w * q.h).map((d) => d.spot);
  for (const set of [order, ...order.map((s) => [s])]) {
    const tried = details.map((d) => (set.includes(d.spot) ? (grown(d) ?? d) : d));
    const placed = tried.every((d, i) => d === details[i]) ? undefined : fits(tried);
    if (placed) [best, details] = [placed, tried];
  }
  return best;
}
