/** One opening of a grid of bounding parts. */
export interface Cell {
  /** `short_1`, numbered left to right, top to bottom. */
  readonly id: string;
  readonly index: number;
  readonly left: string;
  readonly right: string;
  readonly bottom: string;
  readonly top: string;
}

/**
 * n + 1 parts `across` (left to right) and m + 1 parts `up` (bottom to top) make n × m openings, numbered left to right,
 * top to bottom. Fewer than two parts in either direction make none.
 */
export function gridCells(id: string, acrossParts: readonly string[], upParts: readonly string[]): Cell[] {
  const cells: Cell[] = [];
  for (let row = upParts.length - 1; row > 0; row--)
    for (let column = 1; column < acrossParts.length; column++) {
      const index = cells.length + 1;
      cells.push({
        id: `${id}_${index}`,
        index,
        left: acrossParts[column - 1] as string,
        right: acrossParts[column] as string,
        bottom: upParts[row - 1] as string,
        top: upParts[row] as string,
      });
    }
  return cells;
}
