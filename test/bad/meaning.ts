/**
 * What is wrong with a case: each `change` is put into the sound one; the finding's code, and the text over the carets
 * (its beginning), which must stand at exactly that line and column.
 */
export interface Fault {
  readonly name: string;
  readonly change: readonly (readonly [find: string, put: string])[];
  readonly code: string;
  readonly at: readonly [line: number, column: number, under: string];
  /** Words that the message or the hint must hold: what was found, or the remedy. */
  readonly says: string;
}
const fault = (
  name: string,
  code: string,
  at: Fault['at'],
  says: string,
  ...change: readonly (readonly [find: string, put: string])[]
): Fault => ({ name, code, at, says, change });

const NAMES: readonly Fault[] = [
  fault('measures that wait for each other', 'cycle', [7, 69, '"row_high - 1"'], 'gap -> row_high -> gap', [
    '"gap": "8"',
    '"gap": "row_high - 1", "row_high": "gap + 1"',
  ]),
  fault('a face that waits for itself', 'cycle', [20, 105, '"deep"'], 'stop.back -> stop.deep.from -> stop.back', [
    '"from": "3", "size": "t"',
    '"from": "stop.back - t", "size": "t"',
  ]),
  fault(
    'two parts that wait for each other',
    'cycle',
    [19, 166, '{ "from": "stop", '],
    'rail.up.from',
    ['"up": { "from": "2", "size": "t" }', '"up": { "from": "stop", "size": "t" }'],
    ['"up": { "from": "2", "size": "1" }', '"up": { "from": "rail", "size": "1" }'],
  ),
  fault('measure misspelt', 'name-unknown', [17, 199, '* g'], 'Did you mean "gap"', ['"{i} * gap"', '"{i} * gpa"']),
  fault('part misspelt in an extent', 'name-unknown', [17, 164, 'bak.front'], 'Did you mean "back"', [
    '"back.front"',
    '"bak.front"',
  ]),
  fault('face misspelt', 'face-unknown', [17, 164, 'back.frunt'], 'Did you mean "front"', [
    '"back.front"',
    '"back.frunt"',
  ]),
  fault('neighbour that is not in the row', 'name-unknown', [17, 195, 'shelf_{i-1}'], 'Did you mean "shelf_1"', [
    '"{i} * gap"',
    '"shelf_{i-1}.top + gap"',
  ]),
  fault('bare part where any face could be meant', 'which-face', [20, 137, 'rail'], 'rail.left', [
    '"from": "3", "size": "t"',
    '"from": "3", "size": "rail"',
  ]),
  fault('bare part as a plane to mirror about', 'which-face', [15, 68, 'top'], 'top.left', [
    '"about": "W / 2"',
    '"about": "top"',
  ]),
  fault('measure given twice by a row', 'id-twice', [7, 102, '"3"'], 'row_1', [
    '"gap": "8"',
    '"gap": "8", "row": ["1", "2"], "row_1": "3"',
  ]),
  fault('row that leaves nothing for its last', 'graduation-too-steep', [7, 74, '"row"'], 'smaller step', [
    '"gap": "8"',
    '"gap": "8", "row": { "graduate": 4, "in": "3", "by": "step 2" }',
  ]),
];

const PARTS: readonly Fault[] = [
  fault('size of nothing', 'size-not-positive', [19, 153, '"0"'], 'above nothing', [
    '"from": "0", "size": "2"',
    '"from": "0", "size": "0"',
  ]),
  fault('size less than nothing', 'size-not-positive', [19, 153, '"-2"'], 'above nothing', [
    '"from": "0", "size": "2"',
    '"from": "0", "size": "-2"',
  ]),
  fault('ends that have changed places', 'size-not-positive', [16, 99, '["W", "0"]'], 'left, front or bottom', [
    '"across": ["0", "W"]',
    '"across": ["W", "0"]',
  ]),
  fault('longer than any room', 'length-out-of-range', [7, 23, '400000'], '100 m', ['"W": "30"', '"W": "400000"']),
  fault('extent missing', 'extent-missing', [20, 5, '"stop"'], '"up": [from, to]', [
    ', "up": { "from": "2", "size": "1" } }',
    ' }',
  ]),
  fault('one end of lumber', 'extent-short', [20, 149, '{ "from": "2" }'], 'sheet goods', [
    '"up": { "from": "2", "size": "1" }',
    '"up": { "from": "2" }',
  ]),
  fault('mirror of a part that is not there', 'part-unknown', [15, 45, '"side_lft"'], 'Did you mean "side_left"', [
    '"mirror": "side_left"',
    '"mirror": "side_lft"',
  ]),
  fault('mirror of itself', 'like-in-a-circle', [15, 45, '"side_right"'], 'like itself', [
    '"mirror": "side_left"',
    '"mirror": "side_right"',
  ]),
  fault('mirror about nothing', 'mirror-needs-about', [15, 5, '"side_right"'], '"about": "W / 2"', [
    ', "about": "W / 2"',
    '',
  ]),
  fault('mirror with a size of its own', 'mirror-with-size', [15, 64, '["0", "9"]'], 'use "like"', [
    '"mirror": "side_left", "about"',
    '"mirror": "side_left", "up": ["0", "9"], "about"',
  ]),
  fault('like a part that is not there', 'part-unknown', [20, 37, '"rial"'], 'Did you mean "rail"', [
    '"stop": { "mark": "B1",',
    '"stop": { "mark": "B1", "like": "rial",',
  ]),
  fault(
    'like in a circle',
    'like-in-a-circle',
    [19, 23, '"stop"'],
    'rail -> stop -> rail',
    ['"rail": { "mark": "R1",', '"rail": { "like": "stop", "mark": "R1",'],
    ['"stop": { "mark": "B1",', '"stop": { "like": "rail", "mark": "B1",'],
  ),
  fault('mark written twice', 'mark-twice', [19, 23, '"A1"'], 'own mark', ['"mark": "R1"', '"mark": "A1"']),
  fault('mark of a row that does not count', 'mark-twice', [17, 48, '"S"'], '{i} counts', [
    '"mark": "S{i}"',
    '"mark": "S"',
  ]),
  fault('two faces of one name', 'face-word-twice', [19, 29, '"faces"'], 'word of its own', [
    '"mark": "R1",',
    '"mark": "R1", "faces": { "front": "OUT", "back": "OUT" },',
  ]),
  fault('id of a part that a measure has', 'id-twice', [19, 5, '"rail"'], 'use another', [
    '"gap": "8"',
    '"gap": "8", "rail": "2"',
  ]),
  fault('group that is not there', 'group-unknown', [29, 34, '"frm"'], 'There is: frame', [
    '"drawers": {\n',
    '"groups": { "frame": { "like": "frm", "at": ["0", "0", "0"] } },\n  "drawers": {\n',
  ]),
  fault('group like itself', 'group-empty', [29, 32, '"g"'], 'written out', [
    '"drawers": {\n',
    '"groups": { "g": { "mirror": "g", "about": "W / 2" } },\n  "drawers": {\n',
  ]),
  fault('row of parts without end', 'each-range', [17, 29, 'i = 1..300'], '200', [
    '"each": "i = 1..3"',
    '"each": "i = 1..300"',
  ]),
];

const STOCK: readonly Fault[] = [
  fault('room from wet to dry', 'room-out-of-range', [5, 25, '[60, 30]'], 'driest first', [
    '"humidity": [30, 60]',
    '"humidity": [60, 30]',
  ]),
  fault('stock misspelt', 'stock-unknown', [19, 38, '"oka"'], 'Did you mean "oak"', [
    '"mark": "R1", "stock": "oak"',
    '"mark": "R1", "stock": "oka"',
  ]),
  fault('stock left out', 'stock-missing', [19, 5, '"rail"'], 'one of oak', [
    '"mark": "R1", "stock": "oak",',
    '"mark": "R1",',
  ]),
  fault('species misspelt', 'species-unknown', [9, 24, '"oak-whit"'], 'Did you mean "oak-white"', [
    '"oak-white"',
    '"oak-whit"',
  ]),
  fault('sheet misspelt', 'panel-unknown', [11, 23, '"plywood-brich"'], 'Did you mean "plywood-birch"', [
    '"sheet": "plywood-birch"',
    '"sheet": "plywood-brich"',
  ]),
  fault('lumber that is not sold so thick', 'quarter-unknown', [10, 51, '"7/4"'], '4/4, 5/4', [
    '"maple-hard", "quarter": "4/4"',
    '"maple-hard", "quarter": "7/4"',
  ]),
  fault('part thicker than its stock', 'thicker-than-stock', [20, 113, '{ "from": "3", "si'], 'next thicker stock', [
    '"from": "3", "size": "t" }, "up": { "from": "2", "size": "1" }',
    '"from": "3", "size": "1 1/2" }, "up": { "from": "2", "size": "1 1/2" }',
  ]),
  fault('sheet of nothing', 'stock-size', [11, 5, '"ply"'], 'Measure the sheet', [
    '"size": ["96", "48"]',
    '"size": ["0", "48"]',
  ]),
  fault('further size of nothing', 'stock-size', [11, 112, '{ "size"'], 'Measure the sheet', [
    '"size": ["96", "48"]',
    '"size": ["96", "48"], "sizes": [{ "size": ["60", "0"] }]',
  ]),
  fault('one size without its price', 'sheet-price', [11, 124, '[{ "size"'], 'or none', [
    '"size": ["96", "48"]',
    '"size": ["96", "48"], "price": 60, "sizes": [{ "size": ["60", "60"] }]',
  ]),
  fault('sheet for nothing', 'sheet-price', [11, 111, '0'], 'not known', [
    '"size": ["96", "48"]',
    '"size": ["96", "48"], "price": 0',
  ]),
  fault('spare of another stock', 'spare-elsewhere', [11, 112, '{ "rail"'], 'made of', [
    '"size": ["96", "48"]',
    '"size": ["96", "48"], "spares": { "rail": 1 }',
  ]),
  fault('two offcuts of one name', 'offcut-twice', [6, 143, '"K1"'], 'another name', [
    '"moisture": 8,',
    '"moisture": 8, "offcuts": [{ "id": "K1", "sheet": "plywood-birch", "thickness": "0.205", "length": "30", "width": "20" }, { "id": "K1", "sheet": "plywood-birch", "thickness": "0.205", "length": "30", "width": "20" }],',
  ]),
  fault('offcut of a sheet misspelt', 'panel-unknown', [6, 63, '"plywood-brich"'], 'plywood-birch', [
    '"moisture": 8,',
    '"moisture": 8, "offcuts": [{ "id": "K1", "sheet": "plywood-brich", "thickness": "0.205", "length": "30", "width": "20" }],',
  ]),
  fault('part not as thick as its sheet', 'thickness-not-stock', [18, 107, '{ "to": "D", "size'], '.205', [
    '"deep": { "to": "D" }',
    '"deep": { "to": "D", "size": "1/4" }',
  ]),
  fault('part larger than its sheet', 'part-larger-than-sheet', [18, 5, '"back"'], 'larger sheet', [
    '"size": ["96", "48"]',
    '"size": ["33", "34"]',
  ]),
  fault('saw cut less than nothing', 'shop-size', [6, 36, '"-1/8"'], '1/8', [
    '"moisture": 8,',
    '"moisture": 8, "kerf": "-1/8",',
  ]),
  fault('saw cut wider than a board', 'shop-size', [6, 36, '"100"'], '1/8', [
    '"moisture": 8,',
    '"moisture": 8, "kerf": "100",',
  ]),
  fault('step of nothing', 'step-not-positive', [6, 36, '"0"'], '1/64', [
    '"moisture": 8,',
    '"moisture": 8, "step": "0",',
  ]),
  fault('pitch of nothing', 'shop-size', [6, 37, '"0"'], '7/8', ['"moisture": 8,', '"moisture": 8, "pitch": "0",']),
  fault('room wetter than the table', 'room-out-of-range', [5, 30, '99'], '95', [
    '"humidity": [30, 60]',
    '"humidity": [30, 99]',
  ]),
  fault('wood not dried', 'room-out-of-range', [6, 25, '80'], '6 to 12', ['"moisture": 8,', '"moisture": 80,']),
];

const JOINTS: readonly Fault[] = [
  fault('joint of a part misspelt', 'part-unknown', [25, 52, '"rial"'], 'Did you mean "rail"', [
    '"part": "rail", "into"',
    '"part": "rial", "into"',
  ]),
  fault('joint into one misspelt of three', 'part-unknown', [26, 72, '"side_rihgt"'], 'Did you mean "side_right"', [
    '"into": ["side_left", "side_right", "top"]',
    '"into": ["side_left", "side_rihgt", "top"]',
  ]),
  fault('range that no part is in', 'part-unknown', [23, 42, '"shelf_{4..6}"'], 'Did you mean "shelf_1"', [
    '"part": "shelf_*"',
    '"part": "shelf_{4..6}"',
  ]),
  fault('range longer than the row', 'part-unknown', [23, 42, '"shelf_{1..6}"'], '"shelf_4"', [
    '"part": "shelf_*"',
    '"part": "shelf_{1..6}"',
  ]),
  fault('each of a joint that runs backwards', 'each-backwards', [23, 43, 'k = 3..1'], 'smaller number first', [
    '"part": "shelf_*"',
    '"each": "k = 3..1", "part": "shelf_{k}"',
  ]),
  fault('joint into itself', 'joint-into-itself', [25, 68, '"rail"'], 'goes into', [
    '"part": "rail", "into": ["side_left", "side_right"]',
    '"part": "rail", "into": "rail"',
  ]),
  fault('joint into nothing', 'joint-needs-into', [25, 5, '"rails"'], '"into"', [
    '"part": "rail", "into": ["side_left", "side_right"]',
    '"part": "rail"',
  ]),
  fault('joint with a gap', 'joint-does-not-touch', [25, 69, '"side_left"'], 'the gap is 1/2 in across', [
    '"show": ["front"], "across": ["side_left", "side_right"], "deep": { "from": "0", "size": "2" }',
    '"show": ["front"], "across": ["side_left.right + 1/2", "side_right"], "deep": { "from": "0", "size": "2" }',
  ]),
  fault('joint of parts that stand apart', 'joint-does-not-touch', [27, 5, '"stops"'], 'the gap is 1 in deep', [
    '"part": "stop", "into": ["side_left", "side_right"], "hole": "pocket", "face": "back", "count": 1',
    '"part": "stop", "into": "rail"',
  ]),
  fault('corner joint where there is no corner', 'no-corner', [24, 5, '"corners"'], 'sliding dovetail', [
    '"part": ["side_left", "side_right"], "into": "top"',
    '"part": "rail", "into": "side_left"',
  ]),
  fault('halving of parts that do not cross', 'joint-does-not-touch', [25, 5, '"rails"'], 'the two must cross', [
    '"kind": "sliding-dovetail", "part": "rail", "into": ["side_left", "side_right"], "from": "front", "depth": "5/16"',
    '"kind": "edge-halving", "part": "rail", "into": "stop"',
  ]),
  fault('socket deeper than the wood', 'socket-too-deep', [25, 123, '"7/8"'], '3/8', [
    '"depth": "5/16"',
    '"depth": "7/8"',
  ]),
  fault('dado right through the side', 'dado-too-deep', [23, 130, '"3/4"'], 'half', [
    '"stop": "3/8", "depth": "1/4"',
    '"stop": "3/8", "depth": "3/4"',
  ]),
  fault('dado less than nothing', 'joint-size', [23, 130, '"-1/4"'], 'leave it out', [
    '"stop": "3/8", "depth": "1/4"',
    '"stop": "3/8", "depth": "-1/4"',
  ]),
  fault('dado stopped before it begins', 'no-tongue-left', [23, 114, '"30"'], 'shorter stop', [
    '"stop": "3/8", "depth": "1/4"',
    '"stop": "30", "depth": "1/4"',
  ]),
  fault('joint made twice', 'joint-twice', [26, 5, '"rails"'], 'Keep one', [
    '"corners": {',
    '"rails_b": { "kind": "sliding-dovetail", "part": "rail", "into": "side_left", "from": "front", "depth": "5/16" },\n    "corners": {',
  ]),
  fault('part that leans in a joint', 'joint-leans', [25, 5, '"rails"'], 'mortise and tenon', [
    '"rail": { "mark": "R1",',
    '"rail": { "mark": "R1", "turn": { "about": "across", "by": 10 },',
  ]),
  fault(
    'screw out through the show face',
    'screw-through',
    [28, 81, '"#8 x 2"'],
    'shorter screw',
    [
      '"stop": { "mark": "B1",',
      '"cleat": { "mark": "C1", "stock": "maple", "grain": "deep", "across": { "from": "side_left", "size": "t" }, "deep": ["4", "12"], "up": ["4", "6"] },\n    "stop": { "mark": "B1",',
    ],
    [
      '"stops": {',
      '"cleats": { "kind": "screw", "part": "cleat", "into": "side_left", "screw": "#8 x 2", "count": 2 },\n    "stops": {',
    ],
  ),
  fault(
    'screw that is none',
    'screw-unread',
    [28, 81, '"eight"'],
    '#8 x 1 1/4',
    [
      '"stop": { "mark": "B1",',
      '"cleat": { "mark": "C1", "stock": "maple", "grain": "deep", "across": { "from": "side_left", "size": "t" }, "deep": ["4", "12"], "up": ["4", "6"] },\n    "stop": { "mark": "B1",',
    ],
    [
      '"stops": {',
      '"cleats": { "kind": "screw", "part": "cleat", "into": "side_left", "screw": "eight", "count": 2 },\n    "stops": {',
    ],
  ),
  fault('screw without end of number', 'joint-count', [27, 129, '5000'], 'Is this number meant', [
    '"face": "back", "count": 1',
    '"face": "back", "count": 5000',
  ]),
  fault('cutter that cannot be', 'cutter-angle', [6, 70, '50'], '7 to 14', [
    '"moisture": 8,',
    '"moisture": 8, "dovetailBit": { "width": "1/2", "angle": 50 },',
  ]),
];

const SHAPES: readonly Fault[] = [
  fault('arc higher than the part', 'shape-size', [20, 81, '"3"'], 'Change the size', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "arc", "edge": "bottom", "rise": "3" }],',
  ]),
  fault('arc that takes nothing', 'shape-size', [20, 81, '"0"'], 'nothing off', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "arc", "edge": "bottom", "rise": "0" }],',
  ]),
  fault('taper that begins beyond the end', 'shape-run', [20, 99, '"200"'], 'between the ends', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "taper", "faces": ["top"], "end": "left", "begin": "200", "to": "1/2" }],',
  ]),
  fault('chamfer larger than the part', 'shape-size', [20, 91, '"2"'], 'Change the size', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "chamfer", "edges": ["front top"], "size": "2" }],',
  ]),
  fault('outline of two points', 'outline-open', [20, 86, '[["0", "0"], ["1", "1"]]'], 'three points', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "outline", "face": "front", "points": [["0", "0"], ["1", "1"]] }],',
  ]),
  fault('outline that crosses itself', 'outline-crosses', [20, 76, '"points"'], 'in order', [
    '"mark": "B1",',
    '"mark": "B1", "shape": [{ "cut": "outline", "face": "front", "points": [["0", "0"], ["10", "1"], ["10", "0"], ["0", "1"]] }],',
  ]),
  fault('hole outside the face', 'hole-outside', [20, 64, '["100", "1/2"]'], 'low corner', [
    '"mark": "B1",',
    '"mark": "B1", "holes": [{ "face": "front", "at": ["100", "1/2"], "diameter": "1/4" }],',
  ]),
  fault('hole deeper than the part', 'shape-size', [20, 106, '"9"'], 'Change the size', [
    '"mark": "B1",',
    '"mark": "B1", "holes": [{ "face": "front", "at": ["5", "1/2"], "diameter": "1/4", "depth": "9" }],',
  ]),
  fault('leg that lies flat', 'slope-too-flat', [20, 59, '"stand"'], 'At most 60', [
    '"stop": { "mark": "B1",',
    '"leg": { "mark": "L1", "stock": "oak", "grain": "up", "stand": { "at": ["5", "5", "1"], "reach": "floor", "front": 89, "side": 0, "section": ["1", "3/4"] } },\n    "stop": { "mark": "B1",',
  ]),
  fault('leg to a floor misspelt', 'plane-unknown', [20, 59, '"stand"'], '"floor"', [
    '"stop": { "mark": "B1",',
    '"leg": { "mark": "L1", "stock": "oak", "grain": "up", "stand": { "at": ["5", "5", "1"], "reach": "flor", "front": 5, "side": 0, "section": ["1", "3/4"] } },\n    "stop": { "mark": "B1",',
  ]),
  fault('measured from a leaning part', 'face-leans', [21, 42, 'leg.right'], 'stands square', [
    '"stop": { "mark": "B1",',
    '"leg": { "mark": "L1", "stock": "oak", "grain": "up", "stand": { "at": ["5", "5", "1"], "reach": "floor", "front": 5, "side": 0, "section": ["1", "3/4"] } },\n    "peg": { "stock": "oak", "across": ["leg.right", "9"], "deep": ["3", "4"], "up": ["1", "2"] },\n    "stop": { "mark": "B1",',
  ]),
];

const DRAWERS: readonly Fault[] = [
  fault('bounds that do not face each other', 'opening-none', [30, 5, '"drawer"'], 'both sides', [
    '"across": ["side_left", "side_right"], "up": ["shelf_2"',
    '"across": ["side_left", "top"], "up": ["shelf_2"',
  ]),
  fault('bound misspelt', 'part-unknown', [30, 90, '"shlef_3"'], 'Did you mean "shelf_3"', [
    '"up": ["shelf_2", "shelf_3"]',
    '"up": ["shelf_2", "shlef_3"]',
  ]),
  fault('one bound only', 'drawer-bounds', [30, 78, '["shelf_2"]'], '"up"', [
    '"up": ["shelf_2", "shelf_3"]',
    '"up": ["shelf_2"]',
  ]),
  fault('drawers like none', 'drawer-unknown', [30, 25, '"drawr"'], 'Did you mean "drawer"', [
    '"drawer": { "mark"',
    '"drawer": { "like": "drawr", "mark"',
  ]),
  fault('corner that is no joint', 'joint-unknown', [30, 231, '"half-blind"'], 'half-blind-dovetail', [
    '"corner": "half-blind-dovetail"',
    '"corner": "half-blind"',
  ]),
  fault('box of sheet goods', 'stock-unknown', [30, 195, '"ply"'], 'maple, oak', [
    '"box": { "stock": "maple"',
    '"box": { "stock": "ply"',
  ]),
  fault('slide misspelt', 'unknown-slide', [30, 287, '"sied"'], 'Did you mean "side"', [
    '"runner": "side-slide"',
    '"runner": "side-slide", "slide": "sied"',
  ]),
  fault('opening too low', 'drawer-opening-too-small', [30, 5, '"drawer"'], 'larger', ['"gap": "8"', '"gap": "1 1/2"']),
  fault('reveal larger than the opening', 'size-not-positive', [30, 5, '"drawer"'], '"reveal"', [
    '"reveal": "1/16"',
    '"reveal": "20"',
  ]),
  fault('reveal less than nothing', 'drawer-size', [30, 139, '"-2"'], 'above nothing', [
    '"reveal": "1/16"',
    '"reveal": "-2"',
  ]),
  fault('box higher than its opening', 'drawer-box-too-high', [30, 264, '"20"'], 'the opening gives it', [
    '"runner": "side-slide"',
    '"height": "20", "runner": "side-slide"',
  ]),
  fault('case too shallow for a slide', 'no-slide-fits', [30, 5, '"drawer"'], 'deeper', ['"D": "15"', '"D": "6"']),
  fault('pulls without end', 'pulls-many', [30, 172, '100000'], 'One or two', ['"pulls": 1', '"pulls": 100000']),
  fault(
    'a made part that is not made',
    'part-unknown',
    [19, 22, '{ "notes": ["x"] }'],
    'Did you mean "drawer_1.front"',
    ['"rail": { "mark"', '"drawer_1.frnt": { "notes": ["x"] },\n    "rail": { "mark"'],
  ),
  fault('size of a made part', 'override-field', [19, 35, '["0", "1"]'], 'belong to the drawer', [
    '"rail": { "mark"',
    '"drawer_1.front": { "across": ["0", "1"] },\n    "rail": { "mark"',
  ]),
  fault('run of parts that are not there', 'part-unknown', [29, 35, '"darwer_*.front"'], 'There is', [
    '"drawers": {\n',
    '"runs": { "fronts": { "parts": ["darwer_*.front"] } },\n  "drawers": {\n',
  ]),
];

const SOLIDS: readonly Fault[] = [
  fault('part standing in another', 'parts-overlap', [17, 5, '"shelf_{i}"'], 'face of the other', [
    '"deep": { "from": "0", "size": "2" }, "up": { "from": "2", "size": "t" }',
    '"deep": { "from": "0", "size": "2" }, "up": { "from": "7 1/2", "size": "t" }',
  ]),
  fault('two screws that meet', 'joints-clash', [27, 5, '"stops_b"'], 'Move one of them', [
    '"stops": {',
    '"stops_b": { "kind": "screw", "part": "stop", "into": ["side_left", "side_right"], "hole": "pocket", "face": "back", "count": 1 },\n    "stops": {',
  ]),
];

export const FAULTS: readonly Fault[] = [...NAMES, ...PARTS, ...STOCK, ...JOINTS, ...SHAPES, ...DRAWERS, ...SOLIDS];
