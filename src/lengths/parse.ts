import type { Expr, SyntaxFault } from './expression.js';
import { caught, stop } from './faults.js';
import { nm } from './length.js';
import type { Token } from './tokens.js';
import { tokens } from './tokens.js';

export interface ParseOptions {
  /** Values of the letters of an `each`: `{i-1}` becomes its number. Without it braces stay in the name as typed. */
  readonly letters?: Readonly<Record<string, number>>;
}
/** Longest expression read, characters, and deepest nesting of brackets and signs (our defaults). */
export const LONGEST_EXPRESSION = 500;
export const DEEPEST_EXPRESSION = 40;

const FACE_WORDS = ['left', 'right', 'front', 'back', 'bottom', 'top'];
const FUNCTIONS = ['min', 'max', 'round'] as const;
type FunctionName = (typeof FUNCTIONS)[number];
const isFunction = (name: string): name is FunctionName => (FUNCTIONS as readonly string[]).includes(name);
const BRACES = /\{\s*([a-z])\s*(?:([+-])\s*(\d{1,3}))?\s*\}/y;

/**
 * Reads a length expression: figures (`7/8`, `30 1/2`, `2' 6`, `19mm`), names, faces (`rail_1.top`), `+ - * / ( )`,
 * `min max round`. Spellings that could be read two ways are faults that name both readings.
 */
export function parseExpression(
  text: string,
  options: ParseOptions = {},
): { readonly tree: Expr } | { readonly fault: SyntaxFault } {
  return caught(() => {
    if (text.length > LONGEST_EXPRESSION) {
      stop(
        'expression-too-long',
        [0, text.length],
        `longer than ${LONGEST_EXPRESSION} characters`,
        'split it into measures',
      );
    }
    if (text.trim() === '')
      stop('expression-empty', [0, text.length], 'nothing is written here', 'write 0 if none is meant');
    return { tree: new Reader(text, tokens(text), options).whole() };
  });
}

/** Replaces `{i}`, `{i-1}`, `{i+2}` in a name. Stops over the braces when they hold anything else. */
function fillBraces(token: Token, options: ParseOptions): string {
  return token.text.replace(/\{[^{}]*\}/g, (all, offset: number) => {
    const at: readonly [number, number] = [token.at[0] + offset, token.at[0] + offset + all.length];
    BRACES.lastIndex = 0;
    const m = BRACES.exec(all);
    if (m === null || m[0].length !== all.length) {
      stop('braces-form', at, `${all} is not a place in a row`, 'write {i}, {i-1} or {i+1}');
    }
    if (options.letters === undefined) return all;
    const value = options.letters[m[1] as string];
    if (value === undefined) stop('braces-form', at, `${all}: no "each" gives ${m[1]}`, `add "each": "${m[1]} = 1..3"`);
    return String(value + (m[2] === '-' ? -1 : 1) * Number(m[3] ?? 0));
  });
}

class Reader {
  private next = 0;
  private depth = 0;
  constructor(
    private readonly text: string,
    private readonly words: readonly Token[],
    private readonly options: ParseOptions,
  ) {}

  whole(): Expr {
    const tree = this.sum();
    const left = this.peek();
    if (left.kind === 'end') return tree;
    if (left.text === ')') stop('bracket-extra', left.at, 'this bracket was never opened', 'take it away, or open it');
    if (left.text === ',') this.comma(left);
    this.sideBySide(left);
  }

  private peek(): Token {
    return this.words[this.next] as Token;
  }
  private previous(): Token | undefined {
    return this.words[this.next - 1];
  }
  private take(): Token {
    const t = this.peek();
    if (t.kind !== 'end') this.next += 1;
    return t;
  }

  private sum(): Expr {
    if (++this.depth > DEEPEST_EXPRESSION) {
      stop('expression-too-deep', this.peek().at, `nested deeper than ${DEEPEST_EXPRESSION}`, 'split it into measures');
    }
    let left = this.product();
    for (;;) {
      const t = this.peek();
      if (t.text !== '+' && t.text !== '-') break;
      if (t.text === '-' && !(t.before && t.after)) this.tightMinus(t);
      this.take();
      const right = this.product();
      left = { kind: 'binary', op: t.text, left, right, at: [left.at[0], right.at[1]] };
    }
    this.depth -= 1;
    return left;
  }

  private product(): Expr {
    let left = this.signed();
    for (;;) {
      const t = this.peek();
      if (t.text !== '*' && t.text !== '/') return left;
      this.take();
      if (t.text === '/') this.fractionBelow();
      const right = this.signed();
      left = { kind: 'binary', op: t.text, left, right, at: [left.at[0], right.at[1]] };
    }
  }

  private signed(): Expr {
    const t = this.peek();
    if (t.text === '+') {
      const first = this.next === 0;
      stop(
        'plus-not-needed',
        t.at,
        first ? 'a figure needs no plus in front' : 'two signs in a row',
        'leave this + off',
      );
    }
    if (t.text !== '-') return this.single();
    if (++this.depth > DEEPEST_EXPRESSION) stop('expression-too-deep', t.at, 'too many signs', 'write fewer');
    this.take();
    const of = this.signed();
    this.depth -= 1;
    return { kind: 'negate', of, at: [t.at[0], of.at[1]] };
  }

  private single(): Expr {
    const t = this.peek();
    if (t.text === '(') return this.brackets();
    if (t.kind === 'number' || t.kind === 'length') {
      this.take();
      if (t.kind === 'length') return { kind: 'length', nm: nm(t.value), at: t.at };
      return { kind: 'number', value: t.value, ...(t.fraction ? { fraction: t.fraction } : {}), at: t.at };
    }
    if (t.kind === 'name') return this.named();
    const before = this.previous();
    const at: readonly [number, number] = t.kind === 'end' && before ? before.at : t.at;
    const what = before === undefined ? 'at the beginning' : `after ${before.text}`;
    stop(
      'missing-value',
      at,
      `a figure or a name is missing ${what}`,
      'write the missing value, or take the sign away',
    );
  }

  private brackets(): Expr {
    const open = this.take();
    if (this.peek().text === ')') stop('bracket-empty', [open.at[0], this.peek().at[1]], 'nothing in the brackets');
    const inner = this.sum();
    const close = this.closing(open);
    return { ...inner, at: [open.at[0], close.at[1]] };
  }
  private closing(open: Token): Token {
    const t = this.peek();
    if (t.text === ')') return this.take();
    if (t.kind === 'end') stop('bracket-open', open.at, 'this bracket is never closed', 'write ) where it ends');
    if (t.text === ',') this.comma(t);
    this.sideBySide(t);
  }

  private named(): Expr {
    const t = this.take();
    const after = this.peek();
    if (after.text === '(' && isFunction(t.text)) return this.call(t, t.text);
    if (after.text === '(' && !after.before) {
      stop(
        'function-not-known',
        t.at,
        `no function is called ${t.text}`,
        `min, max and round are; to multiply write ${t.text} * (`,
      );
    }
    if (isFunction(t.text))
      stop('function-name-alone', t.at, `the function ${t.text} needs its brackets`, `write ${t.text}(a, b)`);
    return this.reference(t);
  }
  private reference(t: Token): Expr {
    const name = fillBraces(t, this.options);
    if (/^-?\d+$/.test(name)) return { kind: 'number', value: Number(name), at: t.at };
    if (!/^(?:\{[^}]*\}|[A-Za-z](?:[A-Za-z0-9]|_(?=[A-Za-z0-9{])|\{[^}]*\}|\.(?=[A-Za-z]))*)$/.test(name)) {
      stop(
        'name-form',
        t.at,
        `the word ${name} is not a name`,
        'letters and digits, joined by single _, such as rail_1',
      );
    }
    const dot = name.lastIndexOf('.');
    const face = name.slice(dot + 1);
    if (dot < 0 || !FACE_WORDS.includes(face)) return { kind: 'name', name, at: t.at };
    return { kind: 'face', part: name.slice(0, dot), face, at: t.at };
  }

  private call(t: Token, name: FunctionName): Expr {
    const open = this.take();
    const args: Expr[] = [];
    if (this.peek().text !== ')') args.push(this.sum());
    while (this.peek().text === ',') {
      this.take();
      args.push(this.sum());
    }
    const close = this.closing(open);
    const fits = name === 'round' ? args.length === 1 || args.length === 2 : args.length >= 2;
    const at: readonly [number, number] = [t.at[0], close.at[1]];
    if (!fits) {
      const hint = name === 'round' ? 'write round(W / 3, 1/16)' : `write ${name}(a, b), two or more`;
      stop(
        'function-arguments',
        at,
        `the function ${name} is given ${args.length} ${args.length === 1 ? 'value' : 'values'}`,
        hint,
      );
    }
    return { kind: 'call', name, args, at };
  }

  /** A binary minus without a space on both sides: names both readings. */
  private tightMinus(t: Token): never {
    const left = this.previous() as Token;
    const right = this.words[this.next + 1] as Token;
    const at: readonly [number, number] = [left.at[0], right.at[1]];
    const whole = left.kind === 'number' && /^\d+$/.test(left.text);
    const proper = right.fraction !== undefined && right.fraction[0] === 0 && right.value < 1 && right.value > 0;
    if (right.kind === 'end' || (right.kind === 'sign' && right.text !== '(')) {
      stop('minus-without-spaces', t.at, 'a minus stands between two spaces', 'put a space on both sides of it');
    }
    const minus = `${left.text} - ${right.text}`;
    const found = this.text.slice(...at);
    if (whole && proper && right.kind === 'number') {
      const hint = `write ${left.text} ${right.text} for the mixed number, or ${minus} to take away`;
      stop('minus-without-spaces', at, `there are two ways to read ${found}`, hint);
    }
    stop('minus-without-spaces', at, `a minus stands between two spaces, not as in ${found}`, `write ${minus}`);
  }

  /** `/ 1 1/2` and `/ 1/2`: a fraction straight after a division sign is read differently by different people. */
  private fractionBelow(): void {
    const t = this.peek();
    if (t.fraction === undefined) return;
    const over = this.words[this.next - 2] as Token;
    const [whole, top, bottom] = t.fraction;
    const at: readonly [number, number] = [over.at[0], t.at[1]];
    const other = whole === 0 && t.kind === 'number' ? `, or / ${top} / ${bottom} to divide twice` : '';
    stop(
      'fraction-after-over',
      at,
      `there are two ways to read ${this.text.slice(...at)}`,
      `write / (${t.text})${other}`,
    );
  }

  /** A comma outside a list: most often a decimal comma. */
  private comma(t: Token): never {
    const left = this.previous();
    const right = this.words[this.next + 1];
    const digits = (w: Token | undefined): w is Token => w?.kind === 'number' && /^\d+$/.test(w.text);
    if (digits(left) && digits(right) && left.at[1] === t.at[0] && right.at[0] === t.at[1]) {
      stop(
        'decimal-comma',
        [left.at[0], right.at[1]],
        'a comma is not a decimal point',
        `write ${left.text}.${right.text}`,
      );
    }
    stop('missing-operator', t.at, 'a comma stands only between the values of min, max and round', 'take it away');
  }

  /** Two values with nothing between them. */
  private sideBySide(t: Token): never {
    const left = this.previous() as Token;
    const at: readonly [number, number] = [left.at[0], t.at[1]];
    const [a, b] = [left.text, t.text];
    const figures = left.kind !== 'name' && t.kind !== 'name' && left.kind !== 'sign' && t.kind !== 'sign';
    const mixedSpaced = figures && /^\d+$/.test(a) && t.fraction?.[0] === 0 && t.value < 1;
    if (mixedSpaced) stop('missing-operator', at, 'more than one space in a mixed number', `write ${a} ${b}`);
    if (figures) stop('missing-operator', at, `${a} and ${b} side by side: missing + ?`, `write ${a} + ${b}`);
    const tight = left.at[1] === t.at[0];
    const hint = tight ? `write ${a} * ${b}` : `write ${a} + ${b}, or the sign that was meant`;
    stop('missing-operator', at, `no sign stands between ${a} and ${b}`, hint);
  }
}
