import type { Diagnostic, JsonPath } from '../../diag/diagnostic.js';
import { mm } from '../../lengths/length.js';
import type { Piece } from '../../piece/piece.js';
import { blanksOf } from './blanks.js';
import type { Blank, Board, LaidBoards } from './board.js';
import { BOARD_BUDGET, layBoards } from './lay.js';

/** Every blank of a piece on these boards. */
export function pieceOnBoards(piece: Piece, stock: readonly Board[], effort: number): LaidBoards {
  const blanks = blanksOf(piece);
  const { kerf } = piece.shop;
  const metric = piece.units === 'mm' ? { step: mm(1), endTrim: mm(12), keep: [mm(400), mm(75)] as const } : {};
  return { ...layBoards({ boards: stock, blanks, kerf, budget: BOARD_BUDGET * effort, ...metric }), stock, blanks };
}

/** What does not come out, those with one reason and one remedy together; spares are told with their parts. */
export function missingFindings(
  laid: LaidBoards,
  piece: Piece,
  pathOf: (part: string) => JsonPath,
): readonly Diagnostic[] {
  const blanks = new Map(laid.blanks.map((b) => [b.id, b]));
  const groups = new Map<string, Blank[]>();
  for (const m of laid.missing) {
    const blank = blanks.get(m.blank);
    const key = JSON.stringify([m.why, m.would]);
    if (blank) groups.set(key, [...(groups.get(key) ?? []), blank]);
  }
  return [...groups].map(([key, of]): Diagnostic => {
    const [why, would] = JSON.parse(key) as [string, string];
    const parts = [...new Set(of.flatMap((b) => b.gang ?? [b.part]))];
    const marks = [...new Set(of.map((b) => b.mark))];
    const said = marks.length > 6 ? `${marks.slice(0, 6).join(', ')} and ${marks.length - 6} more` : marks.join(', ');
    const run = of.length > 1 ? piece.runs?.find((r) => r.id === of[0]?.run?.id) : undefined;
    return {
      code: 'boards-missing',
      severity: 'warning',
      path: run && of.every((b) => b.run?.id === run.id) ? ['runs', run.id] : pathOf(parts[0] ?? ''),
      message: `${said} ${marks.length > 1 ? 'do' : 'does'} not come out of the boards: ${why}.`,
      hint: `${would.charAt(0).toUpperCase()}${would.slice(1)}.`,
      touches: parts,
    };
  });
}
