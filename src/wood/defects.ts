/** What may be wrong with a board, in the trade's words. `void` is no defect in wood but no wood. */
export const DEFECT_KINDS = [
  'knot',
  'sound knot',
  'check',
  'split',
  'sapwood',
  'wane',
  'void',
  'pith',
  'hole',
  'bark',
  'decay',
  'stain',
] as const;
export type DefectKind = (typeof DEFECT_KINDS)[number];
