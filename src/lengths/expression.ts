/** Syntax tree of a length expression; `at` is the character range in the typed text. */
export type Expr = { readonly at: readonly [number, number] } & (
  | { readonly kind: 'length'; readonly nm: number } // with a unit: 7/8in, 30 1/2", 2' 6, 19mm
  /**
   * Bare: a number beside a number, a length in file units beside a length. `fraction` keeps how it was typed
   * (whole, numerator, denominator; `7/8` is [0, 7, 8]), since a bare fraction is no length in a file in millimetres.
   */
  | { readonly kind: 'number'; readonly value: number; readonly fraction?: readonly [number, number, number] }
  | { readonly kind: 'name'; readonly name: string } // W, row_2, side_left, rail_{i-1} after substitution
  | { readonly kind: 'face'; readonly part: string; readonly face: string } // side_left.right
  | { readonly kind: 'binary'; readonly op: '+' | '-' | '*' | '/'; readonly left: Expr; readonly right: Expr }
  | { readonly kind: 'negate'; readonly of: Expr }
  | { readonly kind: 'call'; readonly name: 'min' | 'max' | 'round'; readonly args: readonly Expr[] }
);
export interface SyntaxFault {
  readonly code: string;
  readonly at: readonly [number, number];
  readonly message: string;
  readonly hint?: string;
}
