import type { Box3 } from '../../geom/box.js';
import { placedBox } from '../model.js';
import type { Rect } from '../dimensions.js';
import type { Standing } from '../model.js';
import { cuttingPlanes } from '../model.js';
import { balloonColumn, showing } from '../balloons.js';
import type { Target } from '../balloons.js';
import { drawDimensions } from '../chains.js';
import { group, label, line, planeEnd, scaleBar, scaleBarFor } from '../draw.js';
import type { Point } from '../draw.js';
import { fieldOf, LETTER } from '../frame.js';
import { sheetOf } from '../input.js';
import type { Prepared, SheetKind } from '../input.js';
import { SIZE } from '../pens.js';
import type { Line2 } from '../../geom/hiddenLines.js';
import type { Item } from '../picture.js';
import { setBlock } from '../text.js';
import type { View } from '../views.js';
import { drawLines, ELEVATION_PENS, onPaper, rectOf, withoutReveals } from '../views.js';
import { hiddenParts } from './hiddenParts.js';
import { shapeNotes } from './shapeNotes.js';
import { arrange } from './arrangement.js';
import type { Arrangement } from './arrangement.js';
import { elevationDimensions, lanesBelow } from './elevationDimensions.js';
import { frontTable, frontTableHeight, frontRows, keyRows, partsKey, partsKeyHeight } from './partsKey.js';
import type { KeyRow } from './partsKey.js';
import { IDENTITY } from '../../geom/placement.js';
import { NM_PER_MM } from '../../lengths/length.js';
import { byAxis } from '../../geom/box.js';

/** Front, right side and plan, exactly aligned, with balloons, openings, members and overall sizes. */
export const elevations: SheetKind = {
  id: 'elevations',
  title: 'Elevations',
  plan: () => 1,
  draw(input, _page, place) {
    const { lay, rows } = withKey(input);
    const scale = `1:${lay.oneTo}`;
    return sheetOf(input, place, {
      id: 'elevations',
      title: 'Front, right side and plan',
      folder: 'drawings',
      alt: `${input.piece.header.title}: front, right side and plan, ${scale}`,
      scale,
      projection: true,
      items: [
        ...hiddenParts(input, lay),
        ...views(input, lay),
        ...drawerNames(input, lay.front),
        ...pullMarks(input, lay.front),
        ...shapeNotes(input, lay.front),
        ...shapeNotes(input, lay.side),
        ...planeMarks(input, lay),
        ...dimensions(input, lay),
        ...balloons(input, lay),
        ...keys(input, lay, rows),
        ...bar(input, lay),
      ],
    });
  },
};

/** Lines of wood, and lines of bought things, which are drawn lighter. */
export function hardwarePen(
  input: Prepared,
  lines: readonly Line2[],
): { readonly parts: readonly Line2[]; readonly bought: readonly Line2[] } {
  const ids = new Set(input.piece.hardware.map((h) => h.id));
  const isBought = (l: Line2): boolean => l.ids.every((id) => ids.has(id));
  return { parts: lines.filter((l) => !isBought(l)), bought: lines.filter(isBought) };
}
const BOUGHT = { silhouette: 'N', edge: 'N', flush: 'N' } as const;
function views(input: Prepared, lay: Arrangement): Item[] {
  const drawers = new Set(input.piece.parts.filter((p) => p.drawer !== undefined).map((p) => p.id));
  return (['front', 'side', 'plan'] as const).map((name) => {
    const view = lay[name];
    const { visible } = input.views.lines(view.direction);
    const { parts, bought } = hardwarePen(
      input,
      withoutReveals(visible, lay.oneTo, (id) => drawers.has(id)),
    );
    const seen = name === 'plan' ? [] : drawLines(view, bought, BOUGHT);
    return group(`view-${name}`, [...drawLines(view, parts, ELEVATION_PENS), ...seen], { role: 'view', alt: name });
  });
}
/** The scale bar, as long as it stays clear of the plan. */
function bar(input: Prepared, lay: Arrangement): Item[] {
  const [x, y] = barAt(input, lay);
  const full = scaleBarFor(input.piece.units, 1 / lay.oneTo);
  const beside = y + 8 > lay.plan.box.y - 2 && y < lay.plan.box.y + lay.plan.box.h;
  const room = beside ? Math.floor((lay.plan.box.x - 4 - x) / full.block) : full.figures.length - 1;
  const figures = full.figures.slice(0, Math.max(1, room) + 1);
  return scaleBar(input.faces, { ...full, figures }, x, y);
}
/** Upper left: above the plan where there is room, else beside it. */
const barAt = (input: Prepared, lay: Arrangement): [number, number] => {
  const [x, y] = (input.paper ?? LETTER).frame;
  return [x + 7, lay.plan.box.y > y + 20 ? y + 8.8 : Math.max(y + 8.8, lay.plan.box.y + 4)];
};

function drawerNames(input: Prepared, view: View): Item[] {
  const fronts = new Map(input.model.standing.map((s) => [s.part.id, s]));
  return input.piece.drawers.flatMap((d) => {
    const front = fronts.get(d.front);
    if (!front) return [];
    const r = rectOf(view, front.shoulder);
    return r.h < 5 || r.w < 9
      ? []
      : label(input.faces, d.mark, r.x + 2.2, r.y + 5.2, { size: SIZE.name, face: 'semibold' });
  });
}

/** Boxes of the pulls, piece axes, nm. */
export function pullBoxes(input: Prepared): Box3[] {
  return input.piece.hardware
    .filter((h) => h.kind === 'pull')
    .flatMap((h) => {
      const b = input.kernel.bounds(h.body);
      return b
        ? [
            placedBox(
              byAxis((a) => [b[a][0] * NM_PER_MM, b[a][1] * NM_PER_MM] as const),
              IDENTITY,
            ),
          ]
        : [];
    });
}
function pullMarks(input: Prepared, view: View): Item[] {
  return pullBoxes(input).flatMap((b) => {
    const r = rectOf(view, b);
    const [x, y] = [r.x + r.w / 2, r.y + r.h / 2];
    const reach = Math.max(r.w, r.h) / 2 + 1.6;
    return [...line('H', x - reach, y, x + reach, y), ...line('H', x, y - reach, x, y + reach)];
  });
}

/** Ends of the cutting planes: A–A on the front, looking left; B–B on the side, looking down. */
function planeMarks(input: Prepared, lay: Arrangement): Item[] {
  const at = cuttingPlanes(input.model, pullBoxes(input));
  const { front, side } = lay;
  const [x] = onPaper(front, [at.across, 0, 0]);
  const [, y] = onPaper(side, [0, 0, at.up]);
  const { faces } = input;
  const out = Math.max(0, ...pullBoxes(input).map((b) => side.box.x - rectOf(side, b).x));
  return [
    ...planeEnd(faces, 'A', [x, front.box.y - 2.8], [0, 1], [-1, 0]),
    ...planeEnd(faces, 'A', [x, front.box.y + front.box.h + 2.8], [0, -1], [-1, 0]),
    ...planeEnd(faces, 'B', [side.box.x - Math.max(5.6, out + 2.4), y], [1, 0], [0, 1]),
    ...planeEnd(faces, 'B', [side.box.x + side.box.w + 4, y], [-1, 0], [0, 1]),
  ];
}

function dimensions(input: Prepared, lay: Arrangement): Item[] {
  const at = cuttingPlanes(input.model, pullBoxes(input));
  const [x] = onPaper(lay.front, [at.across, 0, 0]);
  const marks = [
    { x: x - 10, y: lay.front.box.y - 4.6, w: 10.5, h: 4 },
    { x: x - 10, y: lay.front.box.y + lay.front.box.h + 0.6, w: 10.5, h: 4.6 },
  ];
  const plans = elevationDimensions(input, lay, marks);
  const sums = plans.heights ? label(input.faces, plans.heights.words, ...plans.heights.at, { anchor: 'end' }) : [];
  const note: Item[] = [];
  if (plans.further.length > 0) {
    const { right } = fieldOf(input.paper);
    const words = [{ string: 'Further sizes: ', face: 'semibold' as const }, { string: plans.further.join(', ') }];
    const box = { x: lay.side.box.x, y: lay.side.box.y + lay.side.box.h + 13, size: SIZE.text };
    note.push(...setBlock(input.faces, words, { ...box, width: right - lay.side.box.x }).items);
  }
  return [
    ...note,
    ...plans.views.flatMap(({ id, plan }) => drawDimensions(input.faces, id, plan, lay.oneTo)),
    ...plans.air,
    ...sums,
  ];
}

/** Each part gets one balloon: in the front when it lies across there, else in the side view, else in the plan. */
function balloons(input: Prepared, lay: Arrangement): Item[] {
  const columns: { view: View; targets: Target[]; x: number }[] = [
    { view: lay.front, targets: [], x: lay.front.box.x + lay.front.box.w + 14 },
    { view: lay.side, targets: [], x: lay.side.box.x + lay.side.box.w + 16 },
  ];
  const shown = new Set<string>();
  const all = input.model.standing;
  const take = (column: number, s: Standing, at: Point | undefined): void => {
    if (!at || shown.has(s.part.id)) return;
    shown.add(s.part.id);
    columns[column]?.targets.push({ mark: s.part.mark, at });
  };
  for (const s of input.model.case) {
    const r = rectOf(lay.front, s.shoulder);
    if (r.w >= r.h) take(0, s, showing(lay.front, s, all, 0.3));
  }
  for (const s of input.model.case) take(1, s, showing(lay.side, s, input.model.case, 0.45));
  for (const s of input.model.case) {
    const r = rectOf(lay.side, s.shoulder);
    const small = Math.min(r.w, r.h) < 0.12 * Math.max(lay.side.box.w, lay.side.box.h);
    const at: Point = [r.x + r.w / 2, r.y + r.h / 2];
    // Of parts one behind another only the first is named here: the key says which are alike.
    const named = columns[1]?.targets.some((t) => Math.abs(t.at[0] - at[0]) < 25 && Math.abs(t.at[1] - at[1]) < 2);
    if (small && !named && r.x + r.w > lay.side.box.x + lay.side.box.w * 0.55) take(1, s, at);
  }
  const items = columns.flatMap(
    (c) => balloonColumn(input.faces, c.targets, c.x, [c.view.box.y - 4, c.view.box.y + c.view.box.h + 4]).items,
  );
  return [...items, ...planBalloons(input, lay, shown)];
}
/** At the left of the plan: what found no place in the other two views and is thin in plan (the divider). */
function planBalloons(input: Prepared, lay: Arrangement, shown: ReadonlySet<string>): Item[] {
  const { plan } = lay;
  const found = input.model.case.flatMap((s): { mark: string; r: Rect }[] => {
    if (shown.has(s.part.id)) return [];
    const r = rectOf(plan, s.shoulder);
    const inner = r.x > plan.box.x + plan.box.w * 0.1 && r.x + r.w < plan.box.x + plan.box.w * 0.9;
    const thin = Math.min(r.w, r.h) < 0.12 * Math.max(plan.box.w, plan.box.h);
    return inner && thin && r.h > r.w ? [{ mark: s.part.mark, r }] : [];
  });
  // Farther ones lower, so that leaders do not run over nearer dots.
  const sorted = [...found].sort((a, b) => a.r.x - b.r.x);
  const targets = sorted.map(({ mark, r }, i): Target => ({
    mark,
    at: [r.x + r.w / 2, r.y + (r.h * (i + 1)) / (sorted.length + 1)],
  }));
  const top = plan.box.y + 12;
  return balloonColumn(input.faces, targets, plan.box.x - 14, [top, plan.box.y + plan.box.h - 2]).items;
}

/**
 * The arrangement and as many rows of the key as it holds: a long key is cut short (and says so) before it costs more
 * than a third of the scale.
 */
function withKey(input: Prepared): { readonly lay: Arrangement; readonly rows: readonly KeyRow[] } {
  const all = keyRows(input);
  const lanes = lanesBelow(input);
  const fronts = frontTableHeight(frontRows(input).rows.length);
  const best = arrange(input, 0, lanes);
  if (!best) throw new RangeError('a piece too large for any scale was to be told before');
  for (let count = all.length; count > 2; count -= 2) {
    const lay = arrange(input, partsKeyHeight(count) + fronts, lanes);
    if (!lay || lay.oneTo > best.oneTo * 1.34) continue;
    const rows =
      count === all.length ? all : [...all.slice(0, count - 1), { marks: '…', name: 'the cut list has all' }];
    return { lay, rows };
  }
  return { lay: arrange(input, partsKeyHeight(2) + fronts, lanes) ?? best, rows: all.slice(0, 2) };
}
function keys(input: Prepared, lay: Arrangement, rows: readonly KeyRow[]): Item[] {
  const { x, y, w } = lay.key;
  const key = partsKey(input.faces, rows, x, y, w);
  if (input.piece.drawers.length === 0) return key.items;
  return [...key.items, ...frontTable(input, x, key.y + 6.6, w).items];
}
