import { CASE } from './whole.js';

/** The sound case with its use, its way and its shop, an entry a line from line 13. */
const MORE = `  "use": {
    "kind": "clothes", "floor": "carpet",
    "loads": { "shelf_*": { "perArea": 40 }, "shelf_2": { "middle": 50 } },
    "sag": { "shelf_{1..2}": 384 }
  },
  "delivery": {
    "doors": [{ "name": "front door", "width": "32", "height": "6' 6" }],
    "corners": [{ "name": "hall", "widths": ["36", "40"] }],
    "stairs": [{ "name": "stair", "width": "34", "headroom": "78", "pitch": 38 }],
    "ceiling": "96", "vehicle": { "length": "96", "width": "50", "height": "52" }, "wrap": "1", "apart": ["top"]
  },
  "accepted": [{ "finding": "front-moves-much", "of": "drawer_1.front", "why": "kept at 45 %", "by": "sample", "on": "2027-02-01" }],
`;
const SHOP = `"machines": { "jointer": { "width": "8" }, "planer": { "width": "15", "shortest": "9" } }, "clamps": [{ "opening": "24", "count": 12 }, { "opening": "50", "count": 8 }], "lift": 50, "alone": { "length": "W * 2", "width": "30" }, "door": { "width": "42", "height": "80" }, "woods": { "my-oak": { "like": "oak-white", "gravity": 0.7, "source": "own weighing" } }, `;
/** The sound case of whole.ts with all that can be said of its use, its way and its shop. */
export const WHOLE = CASE.replace('  "parts": {', () => `${MORE}  "parts": {`).replace(
  '"moisture": 8',
  () => `${SHOP}"moisture": 8`,
);
