/** A definition that is sound, one entry a line, for the bad ones to depart from. */
export const SOUND = `{
  "format": 1,
  "piece": { "title": "Sample box", "number": "T-1", "revision": "A", "date": "2027-02-01" },
  "units": "in",
  "room": { "humidity": [30, 60] },
  "measures": { "W": "36", "D": "19", "row": ["5 1/4", "7"], "g": { "graduate": 4, "in": "30", "by": "step 3/4" } },
  "stock": {
    "oak": { "lumber": "oak-white", "quarter": "5/4" },
    "ply": { "sheet": "plywood-birch", "thickness": "0.205", "size": ["96", "48"] }
  },
  "parts": {
    "side_left": { "stock": "oak", "across": ["0", "7/8"], "deep": ["0", "D"], "up": ["0", "30"], "grain": "up", "show": ["left"] },
    "side_right": { "mirror": "side_left", "about": "W / 2" },
    "rail_{i}": { "each": "i = 1..3", "stock": "oak", "across": ["side_left", "side_right"], "deep": { "from": "0", "size": "2 1/2" }, "up": { "to": "30 - {i} * 9", "size": "3/4" } },
    "foot": { "stock": "oak", "shape": [{ "cut": "arc", "edge": "bottom", "rise": "1" }, { "cut": "chamfer", "edges": ["front top"], "size": "1/8" }], "holes": [{ "face": "front", "at": ["1", "2"], "diameter": "1/4" }] }
  },
  "joints": { "rails": { "kind": "dado", "part": "rail_{1..3}", "into": ["side_left", "side_right"], "depth": "3/8" } },
  "drawers": { "short": { "across": ["side_left", "side_right"], "up": ["rail_2", "rail_1"], "front": { "fit": "inset", "pulls": 1 } } },
  "groups": { "frame": { "at": ["0", "0", "0"], "parts": { "post_{i}": { "each": "i = 1..2", "stock": "oak", "up": ["0", "9"] } } } },
  "runs": { "fronts": { "parts": ["short_*.front"] } },
  "finish": { "kind": "penetrating oil", "coats": 3 },
  "shop": { "kerf": "1/8", "dovetailBit": { "width": "1/2", "angle": 14 } }
}
`;

/**
 * What is wrong with a file: `find` in the sound one is replaced by `put`; the finding's code, and the text under the
 * carets, which must stand at exactly that place (`nth` of it, from 1, when it is there more than once).
 */
export interface Bad {
  readonly name: string;
  readonly find: string;
  readonly put: string;
  readonly code: string;
  readonly line: number;
  readonly column: number;
  readonly under: string;
  /** A word or words that the hint or message must hold: the remedy. */
  readonly says?: string;
  /** Ends in .jsonc when comments are wanted. */
  readonly jsonc?: boolean;
}
const bad = (
  name: string,
  change: readonly [find: string, put: string],
  code: string,
  at: readonly [line: number, column: number, under: string],
  says?: string,
): Bad => {
  const [find, put] = change;
  const [line, column, under] = at;
  return { name, find, put, code, line, column, under, ...(says === undefined ? {} : { says }) };
};

const SYNTAX: readonly Bad[] = [
  bad('comma missing', ['"format": 1,', '"format": 1'], 'json-comma-missing', [3, 3, '"piece"'], 'comma'),
  bad('comma too many', ['"step 3/4" } }', '"step 3/4" }, }'], 'json-trailing-comma', [6, 114, ','], '.jsonc'),
  bad('comment', ['"format": 1,', '"format": 1, // first'], 'json-comment', [2, 16, '// first'], '.jsonc'),
  bad('block comment', ['"format": 1,', '"format": 1, /* x */'], 'json-comment', [2, 16, '/* x */'], '.jsonc'),
  bad('colon missing', ['"units": "in"', '"units" "in"'], 'json-colon-missing', [4, 11, '"in"'], '"key": value'),
  bad('single quotes', ['"units": "in"', '"units": \'in\''], 'json-quote', [4, 12, "'"], '"'),
  bad('curly quotes', ['"units": "in"', '"units": \u201cin\u201d'], 'json-quote', [4, 12, '\u201c'], 'double quotes'),
  bad('plain key', ['"units": "in"', 'units: "in"'], 'json-key-plain', [4, 3, 'units'], '"units"'),
  bad('plain value', ['"units": "in"', '"units": in'], 'json-value-plain', [4, 12, 'in'], '"in"'),
  bad('bare fraction', ['"kerf": "1/8"', '"kerf": 1/8'], 'json-expression-plain', [22, 22, '/'], 'quotes'),
  bad('bare decimal', ['"kerf": "1/8"', '"kerf": .125'], 'json-number', [22, 21, '.125'], '0.5'),
  bad('value missing', ['"units": "in"', '"units": '], 'json-value-missing', [4, 12, ','], 'value'),
  bad('quote left open', ['"units": "in"', '"units": "in'], 'json-string-open', [4, 12, '"in,'], 'end'),
  bad('inch mark not escaped', ['"kerf": "1/8"', '"kerf": "1/8""'], 'json-inch-mark', [22, 26, '", "'], undefined),
  bad('strange escape', ['"Sample box"', '"Sample\\box \\q"'], 'json-escape', [3, 35, '\\q'], 'backslash'),
  bad('bracket left open', ['"angle": 14 } }\n}', '"angle": 14 } }\n'], 'json-bracket-missing', [22, 75, '}'], '}'),
  bad(
    'something after the end',
    ['"angle": 14 } }\n}', '"angle": 14 } }\n} }'],
    'json-after-end',
    [23, 3, '}'],
    'one object',
  ),
  bad(
    'nested too deep',
    ['"coats": 3', `"coats": ${'['.repeat(40)}${']'.repeat(40)}`],
    'nested-too-deep',
    [21, 81, '['],
    undefined,
  ),
  bad(
    'a character that cannot be printed',
    ['"Sample box"', '"Sample\\u0007box"'],
    'control-character',
    [3, 30, '\\u0007'],
    'take it away',
  ),
  bad('a line break in text', ['"Sample box"', '"Sample\\nbox"'], 'control-character', [3, 30, '\\n'], 'take it away'),
  bad('key twice', ['"units": "in",', '"units": "in", "format": 1,'], 'key-twice', [4, 18, '"format"'], '2:3'),
  bad('part twice', ['"side_right": {', '"side_left": {'], 'key-twice', [13, 5, '"side_left"'], '12:5'),
];

const STRUCTURE: readonly Bad[] = [
  bad('key not known', ['"room": {', '"rooom": {'], 'key-not-known', [5, 3, '"rooom"'], 'room'),
  bad('key not known in a part', ['"grain": "up"', '"grian": "up"'], 'key-not-known', [12, 99, '"grian"'], 'grain'),
  bad('key not known in a joint', ['"depth": "3/8"', '"dept": "3/8"'], 'key-not-known', [17, 102, '"dept"'], 'depth'),
  bad(
    'key misspelt that must be there',
    ['"quarter": "5/4"', '"quarte": "5/4"'],
    'key-not-known',
    [8, 37, '"quarte"'],
    'quarter',
  ),
  bad('key missing', [', "date": "2027-02-01"', ''], 'key-missing', [3, 3, '"piece"'], '"date"'),
  bad('units missing', ['"units": "in",\n', '\n'], 'key-missing', [1, 1, '{'], '"units"'),
  bad('kind of joint missing', ['"kind": "dado", ', ''], 'key-missing', [17, 15, '"rails"'], '"kind"'),
  bad('kind of joint not known', ['"dado"', '"dadoo"'], 'word-not-known', [17, 34, '"dadoo"'], 'dado'),
  bad('kind of cut not known', ['"cut": "arc"', '"cut": "ark"'], 'word-not-known', [15, 50, '"ark"'], 'arc'),
  bad('units not known', ['"units": "in"', '"units": "cm"'], 'word-not-known', [4, 12, '"cm"'], 'in, mm'),
  bad('grain not known', ['"grain": "up"', '"grain": "upp"'], 'word-not-known', [12, 108, '"upp"'], 'up'),
  bad('face not known', ['"show": ["left"]', '"show": ["lefft"]'], 'word-not-known', [12, 123, '"lefft"'], 'left'),
  bad('number of the form', ['"format": 1', '"format": 2'], 'value-not-known', [2, 13, '2'], '1'),
  bad('text for a list', ['"humidity": [30, 60]', '"humidity": "30-60"'], 'wrong-type', [5, 25, '"30-60"'], '[30, 60]'),
  bad('number for text', ['"number": "T-1"', '"number": 1'], 'wrong-type', [3, 47, '1'], '"C-021"'),
  bad('text for a number', ['"coats": 3', '"coats": "3"'], 'wrong-type', [21, 51, '"3"'], '3'),
  bad('half a coat', ['"coats": 3', '"coats": 2.5'], 'wrong-type', [21, 51, '2.5'], 'whole number'),
  bad('coats below nothing', ['"coats": 3', '"coats": -1'], 'number-range', [21, 51, '-1'], 'at least 0'),
  bad('object for a length', ['"kerf": "1/8"', '"kerf": {}'], 'wrong-type', [22, 21, '{}'], 'width of the saw cut'),
  bad('true for a length', ['"about": "W / 2"', '"about": true'], 'wrong-type', [13, 53, 'true'], 'W / 2'),
  bad('null with nothing to take away', ['"about": "W / 2"', '"about": null'], 'wrong-type', [13, 53, 'null'], 'W / 2'),
  bad(
    'list too long',
    ['"across": ["0", "7/8"]', '"across": ["0", "7/8", "1"]'],
    'list-length',
    [12, 46, '["0", "7/8", "1"]'],
    '2',
  ),
  bad('list too short', ['"size": ["96", "48"]', '"size": ["96"]'], 'list-length', [9, 70, '["96"]'], '2'),
  bad(
    'list for an object',
    ['"finish": { "kind": "penetrating oil", "coats": 3 }', '"finish": []'],
    'wrong-type',
    [21, 13, '[]'],
    'the finish',
  ),
  bad('stock of half a sort', [', "quarter": "5/4"', ''], 'key-missing', [8, 5, '"oak"'], '"quarter"'),
  bad('section not known', ['"runs": {', '"run": {'], 'key-not-known', [20, 3, '"run"'], 'runs'),
  bad(
    'key out of the language',
    ['"finish": {', '"__proto__": { "x": 1 }, "finish": {'],
    'key-not-known',
    [21, 3, '"__proto__"'],
    undefined,
  ),
  bad(
    'a word for a number of pulls',
    ['"pulls": 1', '"pulls": "two"'],
    'wrong-type',
    [18, 130, '"two"'],
    'how many pulls',
  ),
  bad('nothing in a row', ['["5 1/4", "7"]', '["5 1/4", null]'], 'wrong-type', [6, 56, 'null'], 'a length'),
  bad('each a number', ['"i = 1..3"', '3'], 'wrong-type', [14, 27, '3'], 'i = 1..3'),
  bad('cut missing', ['"cut": "arc", ', ''], 'key-missing', [15, 41, '{'], 'chamfer'),
  bad('an object for a list', ['["front top"]', '{}'], 'wrong-type', [15, 119, '{}'], 'a list'),
];

const NAMES: readonly Bad[] = [
  bad('capital in an id', ['"side_right": {', '"sideRight": {'], 'id-form', [13, 5, '"sideRight"'], 'side_right'),
  bad('hyphen in an id', ['"side_right": {', '"side-right": {'], 'id-form', [13, 5, '"side-right"'], 'side_right'),
  bad('space in an id', ['"foot": {', '"my foot": {'], 'id-form', [15, 5, '"my foot"'], 'my_foot'),
  bad('digit first', ['"foot": {', '"1_foot": {'], 'id-form', [15, 5, '"1_foot"'], 'foot'),
  bad('underscore twice', ['"foot": {', '"foot__a": {'], 'id-form', [15, 5, '"foot__a"'], 'foot_a'),
  bad('hyphen in a measure', ['"D": "19"', '"d-1": "19"'], 'id-form', [6, 28, '"d-1"'], 'd_1'),
  bad('a name that is a function', ['"foot": {', '"min": {'], 'id-reserved', [15, 5, '"min"'], 'another'),
  bad('a name that is a plane', ['"foot": {', '"floor": {'], 'id-reserved', [15, 5, '"floor"'], 'another'),
  bad(
    'a measure that is a face',
    ['"g": { "graduate"', '"top": { "graduate"'],
    'id-reserved',
    [6, 62, '"top"'],
    'a face',
  ),
  bad(
    'a measure that is a unit',
    ['"g": { "graduate"', '"mm": { "graduate"'],
    'id-reserved',
    [6, 62, '"mm"'],
    'a unit',
  ),
  bad('one name for two things', ['"rails": {', '"foot": {'], 'id-twice', [17, 15, '"foot"'], '"parts"'),
  bad('each of another form', ['"i = 1..3"', '"1..3"'], 'each-form', [14, 28, '1..3'], 'i = 1..3'),
  bad('each with three points', ['"i = 1..3"', '"i = 1...3"'], 'each-form', [14, 28, 'i = 1...3'], 'i = 1..3'),
  bad('each backwards', ['"i = 1..3"', '"i = 3..1"'], 'each-backwards', [14, 28, 'i = 3..1'], 'smaller'),
  bad('each too many', ['"i = 1..3"', '"i = 1..999"'], 'each-range', [14, 28, 'i = 1..999'], '200'),
  bad(
    'a grid too large',
    ['"post_{i}": { "each": "i = 1..2"', '"post_{i}_{j}": { "each": "i = 1..20, j = 1..20"'],
    'each-range',
    [19, 87, 'i = 1..20, j = 1..20'],
    '200',
  ),
  bad(
    'each letter twice',
    ['"i = 1..3"', '"i = 1..3, i = 1..2"'],
    'each-letter-twice',
    [14, 38, 'i = 1..2'],
    'two letters',
  ),
  bad(
    'each letter not in the key',
    ['"rail_{i}": {', '"rail": {'],
    'each-letter-unused',
    [14, 5, '"rail"'],
    'rail_{i}',
  ),
  bad('letter in the key without each', ['"each": "i = 1..3", ', ''], 'each-missing', [14, 5, '"rail_{i}"'], '"each"'),
  bad('shifted letter in the key', ['"rail_{i}": {', '"rail_{i-1}": {'], 'each-shift', [14, 5, '"rail_{i-1}"'], '{i}'),
  bad(
    'too many parts',
    ['"foot": {', `${[...'abcdefghijk'].map((c) => `"${c}_{i}": { "each": "i = 1..200" }, `).join('')}"foot": {`],
    'parts-too-many',
    [11, 3, '"parts"'],
    '600',
  ),
  bad('row of another form', ['rail_{1..3}', 'rail_{1-3}'], 'pattern-form', [17, 50, '"rail_{1-3}"'], 'rail_{2..5}'),
  bad('row backwards', ['rail_{1..3}', 'rail_{3..1}'], 'each-backwards', [17, 56, '{3..1}'], 'smaller'),
  bad(
    'part with a space',
    ['["rail_2", "rail_1"]', '["rail 2", "rail_1"]'],
    'pattern-form',
    [18, 73, '"rail 2"'],
    'rail_1',
  ),
];

const FORM: readonly Bad[] = [
  bad(
    'extent of one size',
    ['{ "from": "0", "size": "2 1/2" }', '{ "size": "2 1/2" }'],
    'extent-form',
    [14, 102, '{ "size": "2 1/2" }'],
    'from, to, mid',
  ),
  bad(
    'extent of three',
    ['{ "from": "0", "size": "2 1/2" }', '{ "from": "0", "to": "1", "size": "1" }'],
    'extent-form',
    [14, 94, '"deep"'],
    undefined,
  ),
  bad('extent of nothing', ['{ "from": "0", "size": "2 1/2" }', '{}'], 'extent-form', [14, 102, '{}'], undefined),
  bad('arris of one face', ['["front top"]', '["top"]'], 'edge-form', [15, 120, '"top"'], 'front top'),
  bad(
    'arris of faces that never meet',
    ['["front top"]', '["top bottom"]'],
    'edge-form',
    [15, 120, '"top bottom"'],
    'two faces that meet',
  ),
  bad('no such day', ['2027-02-01', '2027-02-30'], 'date-form', [3, 79, '"2027-02-30"'], 'year-month-day'),
  bad('date of another form', ['2027-02-01', '1 Feb 2027'], 'date-form', [3, 79, '"1 Feb 2027"'], 'year-month-day'),
  bad('row that grows otherwise', ['step 3/4', 'by 3/4'], 'graduate-form', [6, 102, '"by 3/4"'], 'step 3/4'),
  bad(
    'nothing to start from',
    ['"format": 1,', '"format": 1, "from": "no-such",'],
    'from-not-known',
    [2, 24, '"no-such"'],
    undefined,
  ),
];

const EXPRESSIONS: readonly Bad[] = [
  bad(
    'minus without spaces',
    ['"about": "W / 2"', '"about": "8-1/4"'],
    'minus-without-spaces',
    [13, 54, '8-1/4'],
    '8 - 1/4',
  ),
  bad('feet minus inches', ['"about": "W / 2"', '"about": "2\'-6"'], 'feet-minus-inches', [13, 54, "2'-6"], "2' 6"),
  bad('two values', ['"about": "W / 2"', '"about": "1/2 1/4"'], 'missing-operator', [13, 54, '1/2 1/4'], '1/2 + 1/4'),
  bad(
    'mixed number below',
    ['"about": "W / 2"', '"about": "W / 1 1/2"'],
    'fraction-after-over',
    [13, 54, 'W / 1 1/2'],
    '/ (1 1/2)',
  ),
  bad('improper mixed number', ['["5 1/4", "7"]', '["5 5/4", "7"]'], 'fraction-not-proper', [6, 48, '5 5/4'], '6 1/4'),
  bad('fraction over nothing', ['"kerf": "1/8"', '"kerf": "1/0"'], 'fraction-over-nothing', [22, 22, '1/0'], undefined),
  bad(
    'one-character fraction',
    ['"size": "3/4"', '"size": "2\u00be"'],
    'fraction-character',
    [14, 176, '\u00be'],
    '2 3/4',
  ),
  bad('dash', ['30 - {i} * 9', '30 \u2013 {i} * 9'], 'dash-character', [14, 154, '\u2013'], '-'),
  bad(
    'escaped inch mark before the fault',
    ['"kerf": "1/8"', '"kerf": "1\\" 2"'],
    'missing-operator',
    [22, 22, '1\\" 2'],
    '+',
  ),
  bad('letter that is not counted', ['30 - {i} * 9', '30 - {j} * 9'], 'braces-form', [14, 156, '{j}'], '"each"'),
  bad('letter with no each', ['"about": "W / 2"', '"about": "row_{i}"'], 'braces-form', [13, 58, '{i}'], '"each"'),
  bad('expression in a joint', ['"depth": "3/8"', '"depth": "3/8 +"'], 'missing-value', [17, 116, '+'], undefined),
  bad(
    'expression in a group',
    ['"up": ["0", "9"]', '"up": ["0", "9 9"]'],
    'missing-operator',
    [19, 123, '9 9'],
    '9 + 9',
  ),
  bad(
    'expression in a hole',
    ['"diameter": "1/4"', '"diameter": "1/4 in)"'],
    'bracket-extra',
    [15, 218, ')'],
    undefined,
  ),
  bad('expression in a shape', ['"rise": "1"', '"rise": ""'], 'expression-empty', [15, 84, '"'], '0'),
  bad(
    'expression in a stock',
    ['"thickness": "0.205"', '"thickness": "5mil"'],
    'unit-not-known',
    [9, 55, 'mil'],
    undefined,
  ),
  bad('expression in a row that grows', ['step 3/4', 'step 3/0'], 'fraction-over-nothing', [6, 108, '3/0'], undefined),
  bad('expression in a bit', ['"width": "1/2"', '"width": "1/2,5"'], 'missing-operator', [22, 58, ','], undefined),
];

export const BAD: readonly Bad[] = [...SYNTAX, ...STRUCTURE, ...NAMES, ...FORM, ...EXPRESSIONS];
