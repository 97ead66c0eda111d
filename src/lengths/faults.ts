import type { SyntaxFault } from './expression.js';

/** Every way an expression can be wrong. The codes are stable; diag/messages.ts lists them beside all others. */
export const EXPRESSION_CODES = [
  'expression-empty',
  'expression-too-long',
  'expression-too-deep',
  'character-not-known',
  'fraction-character',
  'dash-character',
  'quote-character',
  'sign-character',
  'space-character',
  'minus-without-spaces',
  'feet-minus-inches',
  'inches-beside-feet',
  'fraction-after-over',
  'fraction-not-proper',
  'fraction-over-nothing',
  'fraction-run-on',
  'missing-operator',
  'missing-value',
  'decimal-comma',
  'number-form',
  'unit-not-known',
  'plus-not-needed',
  'bracket-open',
  'bracket-extra',
  'bracket-empty',
  'function-not-known',
  'function-arguments',
  'function-name-alone',
  'braces-form',
  'name-form',
  'name-not-known',
  'length-times-length',
  'number-over-length',
  'ratio-not-length',
  'mixed-arguments',
  'round-needs-step',
  'division-by-nothing',
  'fraction-in-millimetres',
  'length-out-of-range',
] as const;
export type ExpressionCode = (typeof EXPRESSION_CODES)[number];

/** Carries a fault out of a reader of tokens or trees; never leaves this folder. */
export class Stop extends Error {
  constructor(readonly fault: SyntaxFault) {
    super(fault.message);
  }
}

/** Stops with a fault over the character range. */
export function stop(code: ExpressionCode, at: readonly [number, number], message: string, hint?: string): never {
  throw new Stop({ code, at, message, ...(hint === undefined ? {} : { hint }) });
}

/** Runs `work`; a fault that stopped it becomes data. */
export function caught<T>(work: () => T): T | { readonly fault: SyntaxFault } {
  try {
    return work();
  } catch (e) {
    if (e instanceof Stop) return { fault: e.fault };
    throw e;
  }
}
