import { inches } from '../lengths/length.js';
import { formatLength } from '../lengths/format.js';
import { SLIDES, type SlideFamily } from '../data/slides.js';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Hardware, Part, Piece } from '../piece/piece.js';

/** The screws of one slide, as bought: `into` names the wood. */
export interface SlideScrews {
  readonly name: string;
  readonly count: number;
  readonly into: 'case' | 'drawer';
}

/** The slide's family, by the name that it begins with. */
const familyOf = (slide: Hardware, piece: Piece): SlideFamily | undefined =>
  SLIDES.find((s) => slide.name.startsWith(s.name) && s.id.endsWith('metric') === (piece.units === 'mm'));

/** The part of the case that carries a slide: the one, not of a drawer, that has its line. */
const carrier = (slide: Hardware, piece: Piece): Part | undefined =>
  piece.parts.find(
    (p) => p.drawer === undefined && p.cuts.some((c) => c.shape === 'mark' && c.mates.includes(slide.id)),
  );

/** Slides on both faces at heights less than the slide's own apart: their screws come from both sides at one place. */
function sharesItsCarrier(slide: Hardware, part: Part, family: SlideFamily): boolean {
  const lines = part.cuts.filter((c) => c.shape === 'mark' && c.as === 'slide-line');
  const own = lines.find((c) => c.mates.includes(slide.id));
  if (own?.shape !== 'mark') return false;
  return lines.some((c) => c.shape === 'mark' && c.face !== own.face && Math.abs(c.at - own.at) < family.height);
}

/**
 * What screws a slide takes. In a part with slides on both faces the case screws are as short as the drawer's: the tips
 * of two of them share its thickness (common practice).
 */
export function slideScrews(slide: Hardware, piece: Piece): readonly SlideScrews[] {
  const family = familyOf(slide, piece);
  if (!family) return [];
  const part = carrier(slide, piece);
  const short = family.screws.find((s) => s.into === 'drawer');
  const thin = part && part.size[part.thickness].value < inches(1.25) && sharesItsCarrier(slide, part, family);
  return family.screws.map((s) => (s.into === 'case' && thin && short ? { ...s, name: short.name } : s));
}

/** A note on each thin part that carries slides on both faces. */
export function sharedCarriers(piece: Piece): Diagnostic[] {
  const parts = new Map<string, Diagnostic>();
  for (const slide of piece.hardware.filter((h) => h.kind === 'slide')) {
    const family = familyOf(slide, piece);
    const part = carrier(slide, piece);
    if (!family || !part || part.size[part.thickness].value >= inches(1.25)) continue;
    if (!sharesItsCarrier(slide, part, family)) continue;
    const short = family.screws.find((s) => s.into === 'drawer')?.name ?? '';
    parts.set(part.id, {
      code: 'slide-screws-meet',
      severity: 'note',
      path: ['parts', part.id],
      message: `${part.mark} is ${formatLength(part.size[part.thickness].value, piece.units)} thick and carries slides on both faces: longer screws would meet.`,
      hint: `Use ${short} there.`,
      touches: [part.id],
    });
  }
  return [...parts.values()].sort((a, b) => (String(a.path[1]) < String(b.path[1]) ? -1 : 1));
}
