import type { Piece } from '../piece/piece.js';
import { peopleFor } from '../wood/lifting.js';
import { densityOf, kilograms, pounds } from '../wood/mass.js';

export interface Weights {
  readonly parts: readonly { readonly part: string; readonly kg: number }[];
  readonly kg: number;
  readonly lb: number;
  /** Parts whose material is in no table: the total is too low by them. */
  readonly unknown: readonly string[];
  /** How many people carry it all at once, 51 lb (23 kg) each; three stands for three and more. */
  readonly carriers: 1 | 2 | 3;
}

/** Wood only, at 12 % moisture, from the volumes (mm3) of the solids; bought things are not in it. An estimate. */
export function weights(piece: Piece, volumes: readonly { readonly id: string; readonly volume: number }[]): Weights {
  const unknown: string[] = [];
  const parts = piece.parts.map((p) => {
    const stock = piece.stocks[p.stock];
    const perCubicMetre = stock && densityOf(stock);
    const volume = volumes.find((v) => v.id === p.id)?.volume;
    if (perCubicMetre === undefined || volume === undefined) unknown.push(p.id);
    return { part: p.id, kg: kilograms(volume ?? 0, perCubicMetre ?? 0) };
  });
  const kg = parts.reduce((s, p) => s + p.kg, 0);
  const lb = pounds(kg);
  return { parts, kg, lb, unknown, carriers: Math.min(3, peopleFor(kg)) as 1 | 2 | 3 };
}
