/** Errors are data: worded in diag/messages.ts, located by the JSON path, printed by diag/print.ts. */
/**
 * An error stops the packet; a fail is a judgement of the piece that stamps every sheet until it is mended or answered for;
 * a warning is printed on the cards that it touches; a note is said once.
 */
export type Severity = 'error' | 'fail' | 'warning' | 'note';
export type JsonPath = readonly (string | number)[];

export interface Diagnostic {
  /** kebab-case, stable, listed in diag/messages.ts or diag/codes.ts. */
  readonly code: string;
  readonly severity: Severity;
  /** Where in the definition: the value (or, with `key: true`, the key) that is at fault. */
  readonly path: JsonPath;
  readonly key?: boolean;
  /** Character range inside a string value (an expression), from its first character after the quote. */
  readonly span?: readonly [from: number, to: number];
  /** What was found and what was wanted, one sentence each, no trailing newline. */
  readonly message: string;
  /** The remedy. */
  readonly hint?: string;
  /** Parts and joints that it touches (ids): warnings are printed on their cards. */
  readonly touches?: readonly string[];
  /** Of a judgement: its figures, each in the unit that `of` has in value/quantity.ts, and where rule and limit are from. */
  readonly judged?: {
    readonly figure: { readonly of: string; readonly value: number };
    readonly limit?: { readonly of: string; readonly value: number };
    /** How many times over it passes. */
    readonly margin?: number;
    readonly sources: readonly string[];
  };
}

/** The outcome of a stage: its value where there is one, and all that was found. */
export interface Outcome<T> {
  readonly value?: T;
  readonly findings: readonly Diagnostic[];
}
export const hasErrors = (findings: readonly Diagnostic[]): boolean => findings.some((f) => f.severity === 'error');
