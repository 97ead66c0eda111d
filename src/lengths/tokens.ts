import { stop } from './faults.js';
import { NM_PER_IN, NM_PER_MM } from './length.js';

/** One word of an expression. `before`/`after`: is there a space on that side (the ends of the text count as one). */
export interface Token {
  readonly kind: 'number' | 'length' | 'name' | 'sign' | 'end';
  readonly text: string;
  readonly at: readonly [number, number];
  readonly before: boolean;
  readonly after: boolean;
  /** number: its value; length: nanometres, unrounded. */
  readonly value: number;
  readonly fraction?: readonly [number, number, number];
}
interface Figure {
  readonly end: number;
  readonly value: number;
  readonly fraction?: readonly [number, number, number];
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '\u00bc': '1/4',
  '\u00bd': '1/2',
  '\u00be': '3/4',
  '\u2153': '1/3',
  '\u2154': '2/3',
  '\u215b': '1/8',
  '\u215c': '3/8',
  '\u215d': '5/8',
  '\u215e': '7/8',
  '\u2155': '1/5',
  '\u2156': '2/5',
  '\u2157': '3/5',
  '\u2158': '4/5',
  '\u2159': '1/6',
  '\u215a': '5/6',
};
const DASHES = '\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe63\uff0d';
const QUOTES: Readonly<Record<string, string>> = {
  '\u2032': "'",
  '\u2018': "'",
  '\u2019': "'",
  '\u00b4': "'",
  '`': "'",
  '\u2033': '"',
  '\u201c': '"',
  '\u201d': '"',
};
const SIGNS: Readonly<Record<string, string>> = {
  '\u00d7': '*',
  '\u22c5': '*',
  '\u00b7': '*',
  '\u00f7': '/',
  '\u2044': '/',
  '\u2215': '/',
};
const UNITS: Readonly<Record<string, number>> = { mm: NM_PER_MM, in: NM_PER_IN, '"': NM_PER_IN, ft: 12 * NM_PER_IN };
const NAME = /[A-Za-z](?:[A-Za-z0-9_]|\{[^{}]*\}|\.(?=[A-Za-z]))*/y;
const MIXED = /(\d+) (\d+)\/(\d+)(?![\d.])/y;
const FRACTION = /(\d+)\/(\d+)(?![\d.])/y;
const DECIMAL = /\d+(?:\.\d+)?|\.\d+/y;
const UNIT = / ?(mm|in|ft)(?![A-Za-z0-9_])|"/y;

const at = (re: RegExp, text: string, from: number): RegExpExecArray | null => {
  re.lastIndex = from;
  return re.exec(text);
};
/** The run without spaces that holds the character range: what the maker sees as one word. */
const wordAround = (text: string, from: number, to: number): readonly [number, number] => {
  let [a, b] = [from, to];
  while (a > 0 && !/\s/.test(text[a - 1] as string)) a -= 1;
  while (b < text.length && !/\s/.test(text[b] as string)) b += 1;
  return [a, b];
};

/** Stops with the remedy for a character that a word processor or a keyboard puts in place of the plain one. */
function strangeCharacter(text: string, i: number): never {
  const c = String.fromCodePoint(text.codePointAt(i) as number);
  const here: readonly [number, number] = [i, i + c.length];
  const fraction = FRACTIONS[c];
  if (fraction !== undefined) {
    const whole = /(\d+) ?$/.exec(text.slice(0, i))?.[1];
    const plain = whole === undefined ? fraction : `${whole} ${fraction}`;
    stop('fraction-character', here, `${c} is one character, not a figure`, `write ${plain}`);
  }
  if (DASHES.includes(c))
    stop('dash-character', here, `${c} is a dash, not a minus`, 'write - with a space on each side');
  const quote = QUOTES[c];
  if (quote !== undefined) stop('quote-character', here, `${c} is not the mark for feet or inches`, `write ${quote}`);
  const sign = SIGNS[c];
  if (sign !== undefined) stop('sign-character', here, `${c} is not a sign that is read here`, `write ${sign}`);
  if (/\s/.test(c)) stop('space-character', here, 'this space is not a plain one', 'write a plain space');
  if (c === '^') stop('character-not-known', here, 'powers are not read here', 'multiply instead: 2 * 2');
  if (c === '%') stop('character-not-known', here, '% is not read here', 'write a number: W * 0.05');
  if (c === '.') stop('number-form', here, 'a point needs a digit after it', 'write 1.5 or .5, or leave the point off');
  stop(
    'character-not-known',
    here,
    `${c} has no meaning in an expression`,
    'figures, names, + - * / ( ) and , are read',
  );
}

/** `8 1/4`, `7/8`, `12`, `.5` at `from`; undefined when no figure stands there. */
function figure(text: string, from: number): Figure | undefined {
  const m = at(MIXED, text, from);
  if (m !== null) {
    const [whole, top, bottom] = [Number(m[1]), Number(m[2]), Number(m[3])];
    const end = from + m[0].length;
    checkBottom(bottom, [from, end]);
    if (top >= bottom || top === 0) improper(m, whole, top, bottom, [from, end]);
    return { end, value: whole + top / bottom, fraction: [whole, top, bottom] };
  }
  const f = at(FRACTION, text, from);
  if (f !== null) {
    const [top, bottom] = [Number(f[1]), Number(f[2])];
    const end = from + f[0].length;
    checkBottom(bottom, [from, end]);
    return { end, value: top / bottom, fraction: [0, top, bottom] };
  }
  const d = at(DECIMAL, text, from);
  return d === null ? undefined : { end: from + d[0].length, value: Number(d[0]) };
}
function checkBottom(bottom: number, range: readonly [number, number]): void {
  if (bottom === 0)
    stop('fraction-over-nothing', range, 'a fraction over 0 is no figure', 'write the divisions, such as 1/8');
}
function improper(
  m: RegExpExecArray,
  whole: number,
  top: number,
  bottom: number,
  range: readonly [number, number],
): never {
  const sum = whole + Math.floor(top / bottom);
  const rest = top % bottom;
  const plain = rest === 0 ? `${sum}` : `${sum} ${rest}/${bottom}`;
  stop(
    'fraction-not-proper',
    range,
    `${m[0]}: the fraction of a mixed number is less than 1`,
    `write ${plain}, or ${whole} + ${top}/${bottom} if that was meant`,
  );
}

/** `2' 6 1/2"` from the foot mark on: the length token, or the fault that the maker is most likely to make there. */
function feet(text: string, from: number, f: Figure): Token {
  const mark = f.end + 1;
  const minus = /^ ?-(?=[\d.])/.exec(text.slice(mark));
  if (minus !== null) {
    const next = figure(text, mark + minus[0].length);
    const end = next?.end ?? mark + minus[0].length;
    const [head, tail] = [text.slice(from, mark), text.slice(mark + minus[0].length, end)];
    stop(
      'feet-minus-inches',
      [from, end],
      `there are two ways to read ${text.slice(from, end)}`,
      `write ${head} ${tail} for feet and inches, or ${head} - ${tail} to take away`,
    );
  }
  const gap = text[mark] === ' ' ? 1 : 0;
  const more = figure(text, mark + gap);
  if (more === undefined) return lengthToken(text, [from, mark], f.value * 12 * NM_PER_IN, undefined);
  if (more.value >= 12) {
    stop(
      'inches-beside-feet',
      [from, more.end],
      `${text.slice(from, more.end)}: inches beside feet are less than 12`,
      `write ${text.slice(from, mark)} + ${text.slice(mark + gap, more.end)} if the sum was meant`,
    );
  }
  const unit = at(UNIT, text, more.end);
  const named = unit?.[0].trim();
  if (named === 'mm' || named === 'ft') {
    stop('inches-beside-feet', [from, more.end + named.length], 'feet and then another unit', 'write a + between them');
  }
  const end = more.end + (unit?.[0].length ?? 0);
  return lengthToken(text, [from, end], (f.value * 12 + more.value) * NM_PER_IN, more.fraction);
}
function lengthToken(text: string, range: readonly [number, number], value: number, f: Token['fraction']): Token {
  return {
    kind: 'length',
    text: text.slice(...range),
    at: range,
    ...sides(text, range),
    value,
    ...(f ? { fraction: f } : {}),
  };
}
const sides = (text: string, [a, b]: readonly [number, number]): { before: boolean; after: boolean } => ({
  before: a === 0 || text[a - 1] === ' ',
  after: b >= text.length || text[b] === ' ',
});

/** A figure with what follows it: a unit, a foot mark, or nothing. */
function figureToken(text: string, from: number, f: Figure): Token {
  if (text[f.end] === "'") return feet(text, from, f);
  checkAfterFigure(text, from, f);
  const unit = at(UNIT, text, f.end);
  if (unit !== null) {
    const per = UNITS[unit[0].trim()] as number;
    return lengthToken(text, [from, f.end + unit[0].length], f.value * per, f.fraction);
  }
  const range: readonly [number, number] = [from, f.end];
  const word = text.slice(from, f.end);
  const fraction = f.fraction ? { fraction: f.fraction } : {};
  return { kind: 'number', text: word, at: range, ...sides(text, range), value: f.value, ...fraction };
}
function checkAfterFigure(text: string, from: number, f: Figure): void {
  const word = text.slice(from, f.end);
  const rest = text.slice(f.end);
  if (f.fraction && /^\/\d/.test(rest)) {
    const [a, b] = wordAround(text, from, f.end);
    const run = text.slice(a, b);
    stop(
      'fraction-run-on',
      [a, b],
      `there are two ways to read ${run}`,
      `put spaces where you divide: ${word} / ${rest.slice(1)}`,
    );
  }
  if (/^\.(?!\d)/.test(rest))
    stop('number-form', [from, f.end + 1], `${word}. has no digit after the point`, `write ${word}`);
  if (/^\.\d/.test(rest))
    stop('number-form', [from, f.end + 2], `${word}${rest.slice(0, 2)} is no number`, 'write one point only');
  if (/^[eE][+-]?\d/.test(rest)) {
    stop('number-form', [from, f.end + 2], 'powers of ten are not read here', 'write the number in full');
  }
  const unit = /^ ?(cm|m|inch|inches|feet|foot|mil|yd)(?![A-Za-z0-9_.])/.exec(rest);
  if (unit?.[1] !== undefined) {
    const perUnit = { cm: 10, m: 1000 }[unit[1]];
    const instead = perUnit ? `${Number((f.value * perUnit).toFixed(6))}mm` : `${word}in, ${word}mm or ${word}'`;
    stop('unit-not-known', [f.end, f.end + unit[0].length], `the unit ${unit[1]} is not read here`, `write ${instead}`);
  }
}

/** The text as tokens, the last one `end`. Stops with a fault at the first thing that is no word of an expression. */
export function tokens(text: string): Token[] {
  const out: Token[] = [];
  let i = 0;
  while (i < text.length) {
    const c = text[i] as string;
    if (c === ' ') {
      i += 1;
      continue;
    }
    const token = oneToken(text, i, c);
    out.push(token);
    i = token.at[1];
  }
  const end: readonly [number, number] = [text.length, text.length];
  out.push({ kind: 'end', text: '', at: end, before: true, after: true, value: 0 });
  return out;
}
function oneToken(text: string, i: number, c: string): Token {
  const f = figure(text, i);
  if (f !== undefined) return figureToken(text, i, f);
  const name = at(NAME, text, i) ?? (c === '{' ? /^\{[^{}]*\}/.exec(text.slice(i)) : null);
  if (name !== null) {
    const range: readonly [number, number] = [i, i + name[0].length];
    return { kind: 'name', text: name[0], at: range, ...sides(text, range), value: 0 };
  }
  if (c === '{' || c === '}')
    stop('braces-form', [i, i + 1], 'a brace without its other half', 'write {i}, {i-1} or {i+1}');
  if (c === '_') stop('name-form', [i, i + 1], 'a name begins with a letter', 'such as rail_1');
  if (!'+-*/(),'.includes(c)) strangeCharacter(text, i);
  const range: readonly [number, number] = [i, i + 1];
  return { kind: 'sign', text: c, at: range, ...sides(text, range), value: 0 };
}
