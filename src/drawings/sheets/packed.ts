import type { Detail } from './details.js';

/** A detail with its upper left corner on the sheet. */
export interface PlacedDetail {
  readonly detail: Detail;
  readonly x: number;
  readonly y: number;
}
/** Least air between details across and down, and the most that is shared out, mm. */
const BESIDE = 10;
const UNDER = 5;
const MOST = 26;

export interface Area {
  readonly x: number;
  readonly y: number;
  readonly right: number;
  readonly bottom: number;
}

/** Details in their order in rows of like height, over as many pages of one size as they take. */
export function packed(details: readonly Detail[], area: Area): PlacedDetail[][] {
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
