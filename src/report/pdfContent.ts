/** A sheet's picture as the content stream of a PDF page. */
import type { Path, Pen, Picture, Seg, Tone } from '../drawings/picture.js';
import { cosine, sine } from '../geom/angle.js';
import { PENS, TONES } from '../type/pens.js';
import type { Faces } from '../type/type.js';
import { paintsOf, type Paint } from './paint.js';
import { say, withoutArcs } from './paths.js';
import { hiddenOperators, lineOperators, type GlyphUse } from './pdfText.js';

/** Points in a millimetre. */
export const POINT = 72 / 25.4;

/** The figures that a document draws: one form each, used wherever the figure stands (PDF 1.7, 8.10). */
export class FigureUse {
  readonly forms: { readonly name: string; readonly content: string; readonly box: readonly number[] }[] = [];
  private readonly names = new Map<string, string>();
  /** The name of the form for a figure; the first one met gives its outlines, moved to its own origin. */
  nameOf({ fill, text, width }: Paint & { kind: 'figure' }): string {
    const key = `${text.face} ${text.size} ${text.string} ${width}`;
    const known = this.names.get(key);
    if (known !== undefined) return known;
    const name = `F${this.forms.length + 1}`;
    const content = `${pathOperators(moved(fill.d, -text.x, -text.y))}f`;
    this.forms.push({ name, content, box: [-1, -2 * text.size, Math.ceil(width + 1), 2 * text.size] });
    this.names.set(key, name);
    return name;
  }
}
function moved(d: Path, x: number, y: number): Path {
  return withoutArcs(d).map((s): Seg => {
    if (s[0] === 'M' || s[0] === 'L') return [s[0], s[1] + x, s[2] + y];
    return s[0] === 'C' ? ['C', s[1] + x, s[2] + y, s[3] + x, s[4] + y, s[5] + x, s[6] + y] : s;
  });
}

/** The state of the page that operators change; written only where it changes. */
interface State {
  fill: string;
  pen: string;
}
/** Content of a page `height` mm high; `use` remembers the glyphs, `figures` the figures. */
export function pageContent(faces: Faces, use: GlyphUse, figures: FigureUse, picture: Picture, height: number): string {
  const scale = String(Math.round(POINT * 1e6) / 1e6);
  const out = [`${scale} 0 0 -${scale} 0 ${say(height * POINT)} cm 1 j`];
  const writer = new ContentWriter(faces, use, figures, out);
  writer.paint(paintsOf(picture), { fill: '0 g', pen: '' });
  return `${out.join('\n')}\n`;
}
class ContentWriter {
  constructor(
    private readonly faces: Faces,
    private readonly use: GlyphUse,
    private readonly figures: FigureUse,
    private readonly out: string[],
  ) {}
  paint(paints: readonly Paint[], state: State): void {
    for (const paint of paints) {
      if (paint.kind === 'stroke') this.stroke(paint.pen, paint.d, state);
      else if (paint.kind === 'fill') this.fill(paint.tone, paint.d, state);
      else if (paint.kind === 'hidden') this.out.push(hiddenOperators(this.faces, this.use, paint.text, paint.width));
      else if (paint.kind === 'figure') this.figure(paint, state);
      else if (paint.kind === 'line') this.line(paint.words, state);
      else this.group(paint, state);
    }
  }
  private tone(tone: Tone, state: State): void {
    const fill = `${say(TONES[tone])} g`;
    if (fill !== state.fill) this.out.push(fill);
    state.fill = fill;
  }
  private stroke(pen: Pen, d: Path, state: State): void {
    if (pen !== state.pen) {
      const { width, dash = [], cap } = PENS[pen];
      this.out.push(`${say(width)} w ${cap === 'round' ? 1 : 0} J [${dash.map(say).join(' ')}] 0 d`);
    }
    state.pen = pen;
    this.out.push(`${pathOperators(d)}S`);
  }
  private fill(tone: Tone, d: Path, state: State): void {
    this.tone(tone, state);
    this.out.push(`${pathOperators(d)}f`);
  }
  private figure(paint: Paint & { kind: 'figure' }, state: State): void {
    this.tone(paint.fill.tone, state);
    const { text, width } = paint;
    this.out.push(`q 1 0 0 1 ${say(text.x)} ${say(text.y)} cm /${this.figures.nameOf(paint)} Do Q`);
    this.out.push(hiddenOperators(this.faces, this.use, text, width));
  }
  private line(words: Paint & { kind: 'line' } extends { words: infer W } ? W : never, state: State): void {
    const first = words[0];
    if (!first) return;
    this.tone(first.tone ?? 'black', state);
    this.out.push(lineOperators(this.faces, this.use, words, cosine(first.turn), sine(first.turn)));
  }
  private group({ group, paints }: Paint & { kind: 'group' }, state: State): void {
    const plain = !group.at && !group.clip;
    if (plain) return this.paint(paints, state);
    this.out.push('q');
    if (group.at) this.out.push(`1 0 0 1 ${say(group.at[0])} ${say(group.at[1])} cm`);
    if (group.clip) this.out.push(`${pathOperators(group.clip)}W n`);
    this.paint(paints, { ...state });
    this.out.push('Q');
  }
}
/** Path construction operators (PDF 1.7, 8.5.2), arcs as cubics. */
export function pathOperators(d: Path): string {
  let out = '';
  for (const s of withoutArcs(d)) {
    if (s[0] === 'M') out += `${say(s[1])} ${say(s[2])} m `;
    else if (s[0] === 'L') out += `${say(s[1])} ${say(s[2])} l `;
    else if (s[0] === 'C') out += `${say(s[1])} ${say(s[2])} ${say(s[3])} ${say(s[4])} ${say(s[5])} ${say(s[6])} c `;
    else out += 'h ';
  }
  return out;
}
