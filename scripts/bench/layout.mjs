// npm run bench -- layout: the sheet layout on published instances, beside general packing libraries of the registry in the
// same run. For each set: sheets used, fewest known, bound, how many proved fewest, time, and the ratio of the sheets used.
// `npm run bench -- layout quick` takes every tenth instance; `bins`, `orders` and `bars` name sets. None of the libraries knows stages or proof; only the shelf
// packer's layouts can be sawn edge to edge. All layouts of ours are checked for stages, sizes and counts.
import { readFileSync } from 'node:fs';
import { load, processor } from './_measure.mjs';
import { cutBars } from '../../dist/layout/bars/cutting.js';
import { chooseFleet } from '../../dist/layout/fleet.js';
import { Packer } from '../../dist/layout/pack/goal.js';

const read = (name) => {
  const all = JSON.parse(readFileSync(new URL(`../../test/layout/published/${name}.json`, import.meta.url), 'utf8'));
  return Object.entries(all).filter(([key]) => !key.startsWith('_'));
};
const kindsOf = (items, turn) => {
  const kinds = new Map();
  for (const [w, h, n = 1] of items) {
    const key = `${w}x${h}`;
    const kind = kinds.get(key) ?? { w, h, turn, n: 0 };
    kind.n += n;
    kinds.set(key, kind);
  }
  return [...kinds.values()];
};
const each = (items) => items.flatMap(([w, h, n = 1]) => Array.from({ length: n }, () => ({ w, h })));

/** Faults of a layout by its trees alone: sizes, counts, stages (a last cut to size not counted). */
function faults(filled, kinds, bin, stages) {
  const left = kinds.map((k) => k.n);
  let bad = 0;
  const walk = (t, w, h, way, depth) => {
    if (t.kind === 'empty') return;
    if (t.kind === 'piece') {
      const k = kinds[t.item];
      if ((t.turned ? k.h : k.w) !== w || (t.turned ? k.w : k.h) !== h || (t.turned && !k.turn) || left[t.item]-- <= 0)
        bad++;
      return;
    }
    const d = t.way === way ? depth : depth + 1;
    const toSize = t.first.kind === 'piece' && t.second.kind === 'empty';
    if (d > stages && !(toSize && d === stages + 1)) bad++;
    const length = t.way === 'cross' ? w : h;
    if (t.at <= 0 || t.at + t.rest !== length) bad++;
    if (t.way === 'cross') (walk(t.first, t.at, h, t.way, d), walk(t.second, t.rest, h, t.way, d));
    else (walk(t.first, w, t.at, t.way, d), walk(t.second, w, t.rest, t.way, d));
  };
  for (const f of filled) walk(f.tree, bin[0], bin[1], undefined, 0);
  return bad + left.filter((n) => n !== 0).length;
}

function ours(set, turn, budget, stages) {
  let [sheets, proved, wrong, longest] = [0, 0, 0, 0];
  const from = spent();
  for (const [, x] of set) {
    const at = spent();
    const kinds = kindsOf(x.items, turn);
    const rules = { stages, first: 'either', kerf: 0 };
    const packer = new Packer(
      kinds,
      kinds.map((k) => k.n),
      rules,
    );
    const choice = { w: x.bin[0], h: x.bin[1], cost: 1, count: Infinity };
    const fleet = chooseFleet(packer, [choice], 0, budget);
    sheets += fleet.sheets.length;
    if (fleet.proved) proved++;
    wrong += faults(fleet.filled, kinds, x.bin, stages);
    longest = Math.max(longest, spent() - at);
  }
  return { sheets, proved, wrong, ms: (spent() - from) / set.length, longest };
}

async function libraries() {
  const { MaxRectsPacker } = await import('../../node_modules/maxrects-packer/dist/maxrects-packer.mjs');
  const { default: ShelfPack } = await import('@mapbox/shelf-pack');
  const { MaxRectBinPack, Rect, FindPosition } = await import('bin-packing-core');
  const two = await import('../../node_modules/binpackingjs/dist/esm/2d/index.js');
  return {
    'maxrects-packer 2.7.4': (x, turn) => {
      const p = new MaxRectsPacker(x.bin[0], x.bin[1], 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: turn,
        logic: 0,
      });
      p.addArray(each(x.items).map(({ w, h }) => ({ width: w, height: h })));
      return p.bins.length;
    },
    'bin-packing-core 0.1.7': (x, turn) => {
      let left = each(x.items);
      let bins = 0;
      while (left.length > 0) {
        const rects = left.map(({ w, h }) => Object.assign(new Rect(), { width: w, height: h }));
        const placed = new MaxRectBinPack(x.bin[0], x.bin[1], turn).insertRects(rects, FindPosition.ContactPoint);
        if (placed.length === 0) throw new Error('nothing placed');
        for (const r of placed) {
          const [w, h] = r.isRotated ? [r.height, r.width] : [r.width, r.height];
          const i = left.findIndex((l) => (l.w === w && l.h === h) || (turn && l.h === w && l.w === h));
          left.splice(i, 1);
        }
        bins++;
      }
      return bins;
    },
    'binpackingjs 4.1.0': (x, turn) => {
      const boxes = each(x.items).map(({ w, h }) => ({ width: w, height: h, constrainRotation: !turn }));
      const bins = boxes.map(() => ({ width: x.bin[0], height: x.bin[1] }));
      const out = two.pack2D({ bins, boxes, heuristic: new two.BestAreaFit() });
      if (out.unpackedBoxes.length > 0) throw new Error('a box was left over');
      return out.packedBins.filter((b) => b.boxes.length > 0).length;
    },
    '@mapbox/shelf-pack 3.2.0': (x, turn) => {
      if (turn) return undefined;
      const open = [];
      for (const { w, h } of each(x.items).sort((a, b) => b.h - a.h || b.w - a.w)) {
        if (open.some((s) => s.packOne(w, h) !== null)) continue;
        const s = new ShelfPack(x.bin[0], x.bin[1]);
        s.packOne(w, h);
        open.push(s);
      }
      return open.length;
    },
  };
}

/** Processor time of this process, ms: hardly changed by what else the machine does. */
const spent = processor;

function barsRun(every) {
  const set = read('bars-67').filter((_, i) => i % every === 0);
  const from = spent();
  let [best, proved, known, wrong] = [0, 0, 0, 0];
  for (const [, x] of set) {
    const [lengths, demand] = [x.items.map(([l]) => l), x.items.map(([, n]) => n)];
    const found = cutBars(lengths, demand, [{ room: x.c, cost: 1, count: Infinity }]);
    if (found.cost <= (x.opt ?? x.ub)) best++;
    if (x.opt !== undefined) known++;
    if (found.cost === found.bound) proved++;
    const took = demand.map((n, i) => n - found.bars.reduce((t, b) => t + b.take[i], 0));
    const over = found.bars.filter((b) => b.take.reduce((t, n, i) => t + n * lengths[i], 0) > x.c);
    wrong += over.length + took.filter((n) => n !== 0).length;
  }
  const each = (spent() - from) / set.length;
  console.log(
    `${set.length} bar instances, ${known} with known optimum: ${best} as few as known, ${proved} proved, ${wrong} faults, ${each.toFixed(0)} ms each`,
  );
}

const SETS = {
  bins: ['500 classic instances', 'bins-500', 20e6],
  orders: ['43 orders of a furniture maker', 'furniture-43', 60e6],
};

export async function run(args = []) {
  const every = args.includes('quick') ? 10 : 1;
  const wanted = ['bins', 'orders', 'bars'].filter((s) => args.includes(s));
  const asked = (s) => wanted.length === 0 || wanted.includes(s);
  const libs = await libraries();
  console.log(`processor time; ${load()}`);
  for (const key of Object.keys(SETS).filter(asked)) {
    const [title, file, budget] = SETS[key];
    const set = read(file).filter((_, i) => i % every === 0);
    for (const turn of [false, true]) {
      const sum = (k) => set.reduce((t, [, x]) => t + x[k], 0);
      const known = sum(turn ? 'rg' : 'og');
      const bound = sum(turn ? 'lr' : 'lo');
      console.log(
        `${title}${every > 1 ? ` (every ${every}th)` : ''}, ${turn ? 'turned' : 'grain kept'}: fewest known ${known}, bound ${bound}`,
      );
      let ourTime = NaN;
      const row = (name, sheets, ms, more = '') =>
        console.log(
          `  ${name.padEnd(28)} ${String(sheets).padStart(6)} sheets  ${(sheets / known).toFixed(4)} of fewest known  ${ms.toFixed(1).padStart(8)} ms each  ${(ms / ourTime).toPrecision(3).padStart(8)} of our time${more}`,
        );
      for (const stages of [3, Infinity]) {
        const o = ours(set, turn, budget, stages);
        if (stages === 3) ourTime = o.ms;
        const how = stages === 3 ? 'three stages' : 'any stages';
        row(
          `benchpacket, ${how}`,
          o.sheets,
          o.ms,
          `  longest ${o.longest.toFixed(0)} ms, ${o.proved} of ${set.length} proved fewest, ${o.wrong} faults`,
        );
      }
      for (const [name, pack] of Object.entries(libs)) {
        const from = spent();
        try {
          const counts = set.map(([, x]) => pack(x, turn));
          if (counts.includes(undefined)) continue;
          row(
            name,
            counts.reduce((a, b) => a + b, 0),
            (spent() - from) / set.length,
          );
        } catch (error) {
          console.log(`  ${name}: ${error.message}`);
        }
      }
    }
  }
  if (asked('bars')) barsRun(every);
}
if (process.argv[1] && import.meta.url.endsWith(process.argv[1].split('/').slice(-2).join('/')))
  await run(process.argv.slice(2));
