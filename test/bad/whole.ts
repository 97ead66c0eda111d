import type { Diagnostic } from '../../src/diag/diagnostic.js';
import type { Location } from '../../src/diag/print.js';
import { readDefinition } from '../../src/definition/read.js';
import { createKernel } from '../../src/geom/kernel.js';
import { layoutPiece } from '../../src/layout/layout-piece.js';
import { roomFaults } from '../../src/wood/moisture.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { makeSolids } from '../../src/solids/make.js';

/** A small case that is sound, one entry a line, for the bad ones to depart from. */
export const CASE = `{
  "format": 1,
  "piece": { "title": "Sample case", "number": "T-2", "revision": "A", "date": "2027-02-01" },
  "units": "in",
  "room": { "humidity": [30, 60], "temperature": 70 },
  "shop": { "moisture": 8, "read": "2027-01-25" },
  "measures": { "W": "30", "D": "15", "H": "36", "t": "3/4", "gap": "8" },
  "stock": {
    "oak": { "lumber": "oak-white", "quarter": "4/4", "cut": "quartered" },
    "maple": { "lumber": "maple-hard", "quarter": "4/4" },
    "ply": { "sheet": "plywood-birch", "nominal": "1/4", "thickness": "0.205", "size": ["96", "48"] }
  },
  "parts": {
    "side_left": { "mark": "A1", "stock": "oak", "grain": "up", "show": ["left", "front"], "across": ["0", "t"], "deep": ["0", "D"], "up": ["0", "H - t"] },
    "side_right": { "mark": "A2", "mirror": "side_left", "about": "W / 2" },
    "top": { "mark": "A3", "stock": "oak", "grain": "across", "show": ["top", "front"], "across": ["0", "W"], "deep": ["0", "D"], "up": { "to": "H", "size": "t" } },
    "shelf_{i}": { "each": "i = 1..3", "mark": "S{i}", "stock": "oak", "grain": "across", "show": ["front"], "across": ["side_left", "side_right"], "deep": ["0", "back.front"], "up": { "from": "{i} * gap", "size": "t" } },
    "back": { "mark": "A4", "stock": "ply", "grain": "up", "across": ["side_left", "side_right"], "deep": { "to": "D" }, "up": ["0", "top"] },
    "rail": { "mark": "R1", "stock": "oak", "grain": "across", "show": ["front"], "across": ["side_left", "side_right"], "deep": { "from": "0", "size": "2" }, "up": { "from": "2", "size": "t" } },
    "stop": { "mark": "B1", "stock": "maple", "grain": "across", "across": ["side_left", "side_right"], "deep": { "from": "3", "size": "t" }, "up": { "from": "2", "size": "1" } }
  },
  "joints": {
    "shelves": { "kind": "dado", "part": "shelf_*", "into": ["side_left", "side_right"], "from": "back", "stop": "3/8", "depth": "1/4" },
    "corners": { "kind": "half-blind-dovetail", "part": ["side_left", "side_right"], "into": "top" },
    "rails": { "kind": "sliding-dovetail", "part": "rail", "into": ["side_left", "side_right"], "from": "front", "depth": "5/16" },
    "backs": { "kind": "rabbet", "part": "back", "into": ["side_left", "side_right", "top"], "depth": "3/8" },
    "stops": { "kind": "screw", "part": "stop", "into": ["side_left", "side_right"], "hole": "pocket", "face": "back", "count": 1 }
  },
  "drawers": {
    "drawer": { "mark": "D{n}", "across": ["side_left", "side_right"], "up": ["shelf_2", "shelf_3"], "front": { "fit": "inset", "reveal": "1/16", "stock": "oak", "pulls": 1 }, "box": { "stock": "maple", "bottom": "ply", "corner": "half-blind-dovetail", "runner": "side-slide" } }
  }
}
`;

export interface Told extends Location {
  readonly finding: Diagnostic;
  /** The text over the carets. */
  readonly under: string;
}

/** Everything that is found in a definition, from its text to its sheets of plywood, each with its place. */
export async function judge(text: string): Promise<readonly Told[]> {
  const read = readDefinition(text, 'case.json');
  const found = [...read.findings];
  if (read.value) found.push(...roomFaults(read.value.room, read.value.shop?.moisture, read.value.units));
  const piece = read.value && resolvePiece(read.value);
  found.push(...(piece?.findings ?? []));
  if (piece?.value) {
    const kernel = await createKernel();
    try {
      found.push(...makeSolids(piece.value, kernel).findings, ...layoutPiece(piece.value).findings);
    } finally {
      kernel.dispose();
    }
  }
  return found.map((finding) => {
    const at = read.locate(finding.path, finding.key, finding.span);
    return { ...at, finding, under: at.lineText.slice(at.column - 1, at.endColumn - 1) };
  });
}
