import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import { BoardsFile } from '../../src/definition/boards.js';
import { readBoardsFile } from '../../src/definition/boardsFile.js';
import { boardsJsonSchema } from '../../src/definition/jsonSchema.js';
import { boardsAfter } from '../../src/layout/boards/after.js';
import type { Blank, Board } from '../../src/layout/boards/board.js';
import { layBoards } from '../../src/layout/boards/lay.js';
import { inches, toIn } from '../../src/lengths/length.js';
import { boardsJson } from '../../src/report/boardsJson.js';

const template = (name: string): string => readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8');
const SAMPLE = template('shop/sample-boards.csv');
const JSON_FILE = `{
  "format": 1,
  "units": "in",
  "boards": {
    "A1": { "species": "white-oak", "quarter": "5/4", "thickness": "1 1/4", "width": ["8 1/4", "7 7/8"], "length": 98,
            "cut": "quartered", "moisture": 7.5, "price": 72, "group": "log A", "crook": "1/8", "bow": "3/8",
            "defects": [{ "kind": "knot", "from": ["41", "2 1/2"], "to": ["43", "4"] }] }
  }
}
`;

test('the published schema of a boards file is the one that it is read by', () => {
  expect(JSON.parse(template('boards.schema.json'))).toEqual(boardsJsonSchema());
});

const ajv = new Ajv.Ajv2020({ strict: false });
const other = ajv.compile(boardsJsonSchema() as object);
test.each([
  ['as it should be', JSON_FILE, true],
  ['a key too many', JSON_FILE.replace('"bow"', '"bough"'), false],
  ['a face that is none', JSON_FILE.replace('"kind": "knot"', '"kind": "knot", "face": "top"'), false],
  ['a quarter that is none', JSON_FILE.replace('5/4', '5/8'), false],
  ['a board called nothing', JSON_FILE.replace('"A1"', '""'), false],
] as const)('both schemas judge alike: %s', (_, text, sound) => {
  const value: unknown = parse(text);
  expect(BoardsFile.safeParse(value).success).toBe(sound);
  expect(other(value)).toBe(sound);
});

test('a table and a JSON file say the same', () => {
  const csv = readBoardsFile(SAMPLE, 'b.csv');
  expect(csv.findings).toEqual([]);
  const json = readBoardsFile(JSON_FILE, 'b.json');
  expect(json.findings).toEqual([]);
  expect(csv.value?.boards.length).toBe(6);
  expect(csv.value?.boards[0]).toEqual(json.value?.boards[0]);
  expect(json.value?.boards[0]).toMatchObject({
    wood: 'oak-white',
    width: [8.25 * 25.4e6, 7.875 * 25.4e6],
    defects: [{ kind: 'knot', face: 'through', at: [41, 2.5, 43, 4].map(inches) }],
  });
  // A defect of its own row belongs to the board of its id.
  expect(csv.value?.boards[1]?.defects.map((d) => d.kind)).toEqual(['sapwood', 'check']);
});

const HEAD = 'id,units,species,quarter,thickness,width,length,defect,face,x0,y0,x1,y1';
const GOOD = 'A,in,oak-white,4/4,1,8,96';
test.each([
  ['a wood that is none', 'b.json', JSON_FILE.replace('white-oak', 'white-ork'), 'word-not-known', 5, 24],
  ['a length that names something', 'b.json', JSON_FILE.replace('"1 1/4"', '"W"'), 'shop-names', 5, 69],
  ['a defect off its board', 'b.json', JSON_FILE.replace('["43", "4"]', '["143", "4"]'), 'board-size', 7, 25],
  ['a column that is none', 'b.csv', `${HEAD},colour\n${GOOD}`, 'key-not-known', 1, 73],
  ['a length that is none', 'b.csv', `${HEAD}\nA,in,oak-white,4/4,1,8-1/4,96`, 'minus-without-spaces', 2, 22],
  ['a quarter that is none', 'b.csv', `${HEAD}\nA,in,oak-white,4/3,1,8,96`, 'word-not-known', 2, 16],
  ['no width', 'b.csv', `${HEAD}\nA,in,oak-white,4/4,1,,96`, 'key-missing', 2, 1],
  ['a board twice', 'b.csv', `${HEAD}\n${GOOD}\n${GOOD}`, 'key-twice', 3, 1],
  ['a row without id', 'b.csv', `${HEAD}\n${GOOD}\n,,oak-white`, 'key-missing', 3, 1],
  ['a quote left open', 'b.csv', `${HEAD}\n${GOOD}\n"B,in`, 'csv-quote', 3, 1],
  ['more cells than columns', 'b.csv', `${HEAD}\n${GOOD},knot,front,1,1,2,2,9`, 'csv-cells', 2, 46],
  ['a defect inside out', 'b.csv', `${HEAD}\n${GOOD},knot,front,9,1,2,2`, 'board-size', 2, 27],
  ['two units', 'b.csv', `${HEAD}\n${GOOD}\nB,mm,oak-white,4/4,25,200,2400`, 'word-not-known', 3, 3],
] as const)('told at its place: %s', (_, name, text, code, line, column) => {
  const read = readBoardsFile(text, name);
  expect(read.value).toBeUndefined();
  const [first] = read.findings;
  const at = first && read.locate(first.path, first.key, first.span);
  expect([first?.code, at?.line, at?.column]).toEqual([code, line, column]);
});

test('woods of the shop may be on the rack', () => {
  const text = JSON_FILE.replace('white-oak', 'my-oak');
  expect(readBoardsFile(text, 'b.json').findings.length).toBe(1);
  expect(readBoardsFile(text, 'b.json', ['my-oak']).value?.boards[0]?.wood).toBe('my-oak');
});

test('the stock after cutting is read again: untouched boards as they were, remnants with their defects', () => {
  const boards = readBoardsFile(SAMPLE, 'b.csv').value?.boards as readonly Board[];
  const blank: Blank = {
    id: 'x',
    part: 'x',
    mark: 'X',
    wood: 'oak-white',
    quarter: '5/4',
    thickness: inches(1),
    finished: inches(7 / 8),
    width: inches(6),
    length: inches(30),
    shows: 'one',
    allows: [],
  };
  const laid = layBoards({ boards, blanks: [blank], kerf: inches(1 / 8), budget: 50 });
  const [cut] = laid.boards;
  const after = boardsAfter(laid, boards);
  const read = readBoardsFile(boardsJson(after, 'in'), 'after.json');
  expect(read.findings).toEqual([]);
  expect(read.value?.boards).toEqual([...after].sort((a, b) => after.indexOf(a) - after.indexOf(b)));
  expect(after.filter((b) => !b.id.includes('-R')).length).toBe(boards.length - 1);
  const rest = after.filter((b) => b.id.startsWith(`${cut?.board}-`));
  expect(rest.length).toBe(cut?.remnants.length);
  // What is left and what was cut are no longer than the board.
  const whole = boards.find((b) => b.id === cut?.board);
  expect(Math.max(...rest.map((r) => toIn(r.length)))).toBeLessThanOrEqual(toIn(whole?.length ?? 0) - 30);
  expect(rest.reduce((s, r) => s + (r.price ?? 0), 0)).toBeLessThan(whole?.price ?? 0);
});
