import type { Severity } from '../../diag/diagnostic.js';
import { FACES, faceAxis, faceOf, opposite } from '../../geom/axis.js';
import type { Axis, Face } from '../../geom/axis.js';
import { byAxis, middle } from '../../geom/box.js';
import type { Span } from '../../geom/box.js';
import { formatLength } from '../../lengths/format.js';
import type { Joint, Part, Piece } from '../../piece/piece.js';
import type { Callout } from '../../words/callout.js';
import { saySize } from '../../words/card.js';
import type { Cut } from '../../words/cut.js';
import { blankSize, called, distance, frameOf } from '../../words/frame.js';
import type { Frame } from '../../words/frame.js';
import { compareMarks } from '../../words/markOrder.js';
import { placedBox } from '../model.js';
import type { Run } from '../text.js';
import type { CardInput } from './input.js';
import { markWords, turnedWords } from './turned.js';

/** A row under the cuts: label and text, with a box where it is done and ticked. */
export interface Row {
  readonly label: string;
  readonly text: readonly Run[];
  readonly tick?: boolean;
  /** May be left out where it alone would make a card larger: nothing that is cut or measured by. */
  readonly spare?: boolean;
}
/** All that the words of a card need; nothing that is drawn. */
export type WordsInput = Pick<CardInput, 'piece' | 'findings' | 'checks' | 'revisionOf' | 'layout'>;
/** What the rows are written from. */
export interface Draft {
  readonly part: Part;
  readonly frame: Frame;
  readonly all: readonly Part[];
  readonly mirror?: Part;
  readonly callouts: readonly Callout[];
}
interface Look extends Draft {
  readonly piece: Piece;
  readonly say: (nm: number) => string;
}

/** The sides of the part that a cut takes wood from or marks, as far as its kind tells. */
export function facesOf(cut: Cut, f: Frame): Face[] {
  const reach = (axis: Axis, s: Span): Face[] => [
    ...(s[0] <= f.blank[axis][0] ? [faceOf(axis, -1)] : []),
    ...(s[1] >= f.blank[axis][1] ? [faceOf(axis, 1)] : []),
  ];
  switch (cut.shape) {
    case 'box':
      return byAxis((a) => reach(a, cut.at[a])).flat();
    case 'dovetail':
      return [cut.face, ...reach(cut.run, cut.runSpan)];
    case 'tails':
    case 'tenon':
      return [cut.end];
    case 'taper':
      return [cut.face, cut.end];
    case 'arris':
      return [...cut.faces];
    case 'bore':
      return cut.depth === 'through' ? [cut.face, opposite(cut.face)] : [cut.face];
    case 'outline':
      return FACES.filter((x) => faceAxis(x) !== faceAxis(cut.face));
    case 'plane':
      return FACES.filter((x) => (FACES.indexOf(x) % 2 === 0 ? -1 : 1) * cut.normal[faceAxis(x)] > 0.5);
    default:
      return [cut.face];
  }
}
export const isRelief = (c: Cut): boolean => c.shape === 'box' && c.as === 'relief';
/** Sides with no work at all. */
export const quietFaces = (part: Part, f: Frame): Face[] => {
  const busy = new Set(part.cuts.flatMap((c) => facesOf(c, f)));
  return FACES.filter((x) => !busy.has(x));
};
/** The sides where a cut is set out; on its others it only runs out. */
function workedFaces(cut: Cut, f: Frame): Face[] {
  const plain = cut.shape === 'box' || cut.shape === 'bore' || (cut.shape === 'dovetail' && cut.as !== 'end-socket');
  return plain ? [cut.face] : facesOf(cut, f);
}

const spare = (rows: readonly Row[]): Row[] => rows.map((r) => ({ ...r, spare: true }));
const row = (label: string, text: string | undefined, tick = false): Row[] =>
  text === undefined || text === ''
    ? []
    : [{ label, text: [{ string: text.slice(0, 1).toUpperCase() + text.slice(1) }], ...(tick ? { tick } : {}) }];
/** `2, 3 and 5`. */
const listed = (items: readonly (string | number)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${String(items.at(-1))}`;

/** The rows under a card's cuts, in the order a maker asks for them. */
export function rowsOf(input: WordsInput, draft: Draft): Row[] {
  const { units } = input.piece;
  const look: Look = { ...draft, piece: input.piece, say: (nm) => formatLength(nm, units) };
  // What Prove says in large need not stand here too.
  const size = saySize(draft.part, units, betweenEnds(draft.part) === undefined).map((p): Run => ({
    string: p.text,
    ...(p.bold ? { face: 'semibold' } : {}),
  }));
  const mine = (touches: readonly string[] = []): boolean => draft.all.some((p) => touches.includes(p.id));
  const found = (input.findings ?? []).filter((f) => mine(f.touches));
  const told = (severity: Severity): string[] => found.flatMap((f) => (f.severity === severity ? [f.message] : []));
  const cautions = (input.checks?.cautions ?? []).filter((c) => c.on.includes('cards') && (c.touches.length === 0 || mine(c.touches))); // prettier-ignore
  return [
    { label: 'Size', text: size },
    ...row('No work', noWorkWords(look)),
    ...spare(row('Way in', wayWords(look))),
    ...row('Letter', letterWords(look)),
    ...row('Mates', mateWords(look)),
    ...row('Alike', alikeWords(look)),
    ...draft.all.flatMap((p) => row('Marks', markWords(input.piece, draft.part, p))),
    ...draft.all.flatMap((p) => row('Turned', turnedWords(input.piece, draft.part, p, draft.frame))),
    ...row('Break', breakWords(look), true),
    ...row('Prepare', prepareWords(look), true),
    ...spare(row('If spoilt', spoiltWords(look))),
    ...draft.part.notes.flatMap((note) => row('Note', note)),
    ...told('fail').flatMap((said) => row('Fails', said)),
    ...told('warning').flatMap((said) => row('Warning', said)),
    ...cautions.flatMap((c) => row('Caution', c.text)),
  ];
}

/** `FRONT edge. BACK edge: only where cuts 2 and 5 run out.` */
function noWorkWords({ part, frame: f, callouts }: Look): string | undefined {
  if (part.cuts.length === 0) return 'All six sides: to size only.';
  const worked = new Set(part.cuts.flatMap((c) => workedFaces(c, f)));
  // A relief is work on its end: that it goes through the thickness makes it none on the faces.
  const comes = (c: Cut, face: Face): boolean => facesOf(c, f).includes(face) && !(isRelief(c) && faceAxis(face) === f.thickness); // prettier-ignore
  const out = (face: Face): number[] =>
    callouts.filter((k) => !k.trial && part.cuts.some((c) => k.cuts.includes(c.id) && comes(c, face))).map((k) => k.number); // prettier-ignore
  const free = FACES.filter((x) => !worked.has(x));
  const none = free.filter((x) => out(x).length === 0).map((x) => called(f, x));
  const some = new Map<string, string[]>();
  for (const x of free) {
    const numbers = out(x);
    if (numbers.length === 0) continue;
    const where = numbers.length > 1 ? `cuts ${listed(numbers)} run out` : `cut ${listed(numbers)} runs out`;
    some.set(where, [...(some.get(where) ?? []), called(f, x)]);
  }
  const rest = [...some].map(([where, faces]) => `${listed(faces)}: only where ${where}.`);
  return [...(none.length > 0 ? [`${none.join(', ')}.`] : []), ...rest].join(' ');
}

const FROM: Readonly<Record<Face, string>> = {
  left: 'the right',
  right: 'the left',
  front: 'the back',
  back: 'the front',
  bottom: 'above',
  top: 'below',
};
/** Joints that need no way in of their own: the screw and glue line come when the part is there. */
const STILL: readonly string[] = ['screw', 'edge', 'butt'];
const entered = (piece: Piece, part: Part): readonly Joint[] =>
  piece.joints.filter((j) => j.entering === part.id && j.receiving !== part.id && !STILL.includes(j.kind));
function wayOf(piece: Piece, part: Part): Face | undefined {
  const ways = [...new Set(entered(piece, part).map((j) => j.way.join()))];
  const first = entered(piece, part)[0]?.way;
  return ways.length === 1 && first?.length === 1 ? first[0] : undefined;
}
/** `Broadside, from the left, on to D1.1 and D1.4 at once.` Nothing where its joints go home different ways. */
function wayWords({ piece, part, all, frame: f }: Look): string | undefined {
  const way = wayOf(piece, part);
  if (way === undefined || all.some((p) => wayOf(piece, p) !== way)) return undefined;
  const mates = marksOf(piece, entered(piece, part).map((j) => j.receiving)); // prettier-ignore
  const onto = `${listed(mates)}${mates.length === 2 ? ' at once' : mates.length > 2 ? ', all at once' : ''}`;
  const broad = isMember(piece, part) && f.thickness === faceAxis(way) && mates.length > 1;
  return broad ? `Goes on broadside, from ${FROM[way]}, on to ${onto}.` : `From ${FROM[way]}, into ${onto}.`;
}
const marksOf = (piece: Piece, ids: readonly string[]): string[] =>
  [...new Set(ids)].flatMap((id) => piece.parts.filter((p) => p.id === id).map((p) => p.mark)).sort(compareMarks);

/** The corners of a drawer box: its handed sides and the parts that join them at their ends. */
const CORNERS: readonly string[] = ['groove', 'rabbet', ...STILL];
function cornersOf(piece: Piece, part: Part): readonly { side: Part; member: Part }[] {
  if (part.drawer === undefined) return [];
  const of = (id: string): Part | undefined => piece.parts.find((p) => p.id === id && p.drawer === part.drawer);
  return piece.joints.flatMap((j) => {
    const [a, b] = [of(j.entering), of(j.receiving)];
    if (!a || !b || (a !== part && b !== part) || CORNERS.includes(j.kind)) return [];
    if (a.hand && !b.hand) return [{ side: a, member: b }];
    return b.hand && !a.hand ? [{ side: b, member: a }] : [];
  });
}
const isMember = (piece: Piece, part: Part): boolean => cornersOf(piece, part).length > 0;
/** Where the middle of a part stands along a piece axis, nm. */
const stands = (p: Part, a: Axis): number =>
  middle(placedBox(byAxis((k): Span => [0, p.size[k].value]), p.place)[a]); // prettier-ignore
/** Clockwise from above, from the front left: the same four letters on all members of a box. */
const LETTERS: Readonly<Record<string, string>> = { leftFRONT: 'A', rightFRONT: 'B', rightBACK: 'C', leftBACK: 'D' };
function letterWords({ piece, part }: Look): string | undefined {
  const said = cornersOf(piece, part).map(({ side, member }) => {
    const at = stands(member, 1) < stands(side, 1) ? 'FRONT' : 'BACK';
    const end = part === side ? at : (side.hand as string).toUpperCase();
    return { end, letter: LETTERS[`${side.hand as string}${at}`] as string };
  });
  if (said.length === 0) return undefined;
  const order = ['FRONT', 'BACK', 'LEFT', 'RIGHT'];
  const ends = [...new Map(said.map((s) => [s.end, s])).values()].sort((a, b) => order.indexOf(a.end) - order.indexOf(b.end)); // prettier-ignore
  return `${ends.map((s) => `${s.end} end ${s.letter}`).join(' · ')}, INSIDE near TOP; on the mate too.`;
}
/** `D1.1 and D1.4 15 23/32 long, fit to the piece. D1.6 15 5/32 × 15 7/16, in before the last side.` */
function mateWords({ piece, part, say }: Look): string | undefined {
  const corners = cornersOf(piece, part);
  if (corners.length === 0) return undefined;
  const mates = [...new Set(corners.map((c) => (c.side === part ? c.member : c.side)))].sort((a, b) => compareMarks(a.mark, b.mark)); // prettier-ignore
  const long = (p: Part): string => {
    const f = frameOf(p, piece.units);
    return `${say(blankSize(f, f.length))} long${p.status === 'fit to the piece' ? ', fit' : ''}`;
  };
  const sizes = [...new Set(mates.map(long))].map((size) => `${listed(mates.filter((m) => long(m) === size).map((m) => m.mark))} ${size}.`); // prettier-ignore
  const grooves = piece.joints.filter((j) => j.kind === 'groove' && piece.parts.some((p) => p.id === j.entering && p.drawer === part.drawer)); // prettier-ignore
  const bottom = piece.parts.find((p) => grooves.some((j) => j.entering === p.id && j.receiving === part.id));
  if (!bottom) return sizes.join(' ');
  const f = frameOf(bottom, piece.units);
  const held = grooves.filter((j) => j.entering === bottom.id).length === 4;
  const panel = `${bottom.mark} ${say(blankSize(f, f.width))} × ${say(blankSize(f, f.length))}`;
  return `${sizes.join(' ')} ${panel}${held ? ', in before the last side' : ''}.`;
}

const isLeg = ({ part, frame: f }: Draft): boolean =>
  blankSize(f, f.thickness) === blankSize(f, f.width) && part.cuts.some((c) => c.shape === 'box' && c.as === 'mortise');
/** A side of a case: INSIDE and OUTSIDE, and rails or shelves let into its INSIDE. */
const isCaseSide = ({ part, frame: f }: Draft): boolean =>
  part.drawer === undefined &&
  f.words[faceOf(f.length, 1)] === 'TOP' &&
  part.cuts.some((c) => (c.shape === 'dovetail' || (c.shape === 'box' && c.as === 'dado')) && f.words[c.face] === 'INSIDE' && faceAxis(c.face) === f.thickness); // prettier-ignore
const endJoints = (part: Part): Extract<Cut, { shape: 'tails' | 'tenon' }>[] =>
  part.cuts.filter((c) => c.shape === 'tails' || c.shape === 'tenon');
/** Between base lines or shoulders of both ends, nm; undefined where not both ends have them. */
function betweenEnds(part: Part): number | undefined {
  const ends = endJoints(part);
  const [a] = ends;
  const b = a && ends.find((c) => c.end === opposite(a.end));
  const at = (c: (typeof ends)[number]): number => (c.shape === 'tails' ? c.base : c.shoulder);
  return a && b ? Math.abs(at(a) - at(b)) : undefined;
}

/** What is cut at one setting with others. */
function alikeWords(look: Look): string | undefined {
  const { piece, part, all, mirror, frame: f } = look;
  const level = `${f.words[part.reference.end]} ends level`;
  const face = f.words[part.reference.face];
  const kin = mirror ? [...all, mirror, ...piece.parts.filter((p) => p.turnOf === mirror.id)] : all;
  const others = kin.filter((p) => p !== part).map((p) => p.mark).sort(compareMarks); // prettier-ignore
  if (isLeg(look)) {
    const legs = piece.parts.filter((p) => p !== part && isLeg({ ...look, part: p, frame: frameOf(p, piece.units) }));
    const marks = legs.map((p) => p.mark).sort(compareMarks);
    if (marks.length > 0) return `With ${listed(marks)}: one fence for like mortises, one stick for their heights, ${level}.`; // prettier-ignore
  }
  if (mirror && isCaseSide(look)) return `With ${listed(others)}: one stop for each height; ${face} to ${face}, ${level}.`; // prettier-ignore
  const own = betweenEnds(part);
  const same = piece.parts.filter((p) => p.drawer === part.drawer && own !== undefined && betweenEnds(p) === own && sameWay(p, part)); // prettier-ignore
  const marks = [...new Set([...others, ...same.filter((p) => p !== part).map((p) => p.mark)])].sort(compareMarks);
  if (marks.length === 0) return undefined;
  const groove = part.cuts.some((c) => c.shape === 'box' && c.as === 'groove') ? ', one groove fence' : '';
  const stop =
    own === undefined || part.drawer !== undefined
      ? `one stop${groove === '' ? '' : ' for length'}`
      : 'one stop, shoulder to shoulder';
  return `With ${listed(marks)}: ${stop}${groove}${mirror && part.drawer === undefined ? `; laid ${face} to ${face}, ${level}` : ''}.`;
}
const sameWay = (a: Part, b: Part): boolean => a.faceWords[faceOf(a.length, -1)] === b.faceWords[faceOf(b.length, -1)];

/** Common practice: a sharp arris dents and cuts, a joint's arris must stay sharp to close. */
function breakWords(look: Look): string {
  const { piece, part, frame: f } = look;
  const mm = piece.units === 'mm';
  const [fine, round, half] = mm ? ['0.8', '1.5', '12'] : ['1/32', '1/16', '1/2'];
  if (piece.stocks[part.stock]?.kind === 'sheet') return 'arrises dulled only.';
  const top = FACES.find((x) => f.words[x] === 'TOP' && faceAxis(x) === f.width);
  if (isMember(piece, part) && top !== undefined && !piece.drawers.some((d) => d.front === part.id)) return `TOP edge round ${round}, stop ${half} from ends.`; // prettier-ignore
  if (isLeg(look)) {
    const foot = f.length === 2 ? `; BOTTOM end ${round} all round` : '';
    return `Long arrises ${fine}, not within ${round} of a shoulder${foot}.`;
  }
  if (isCaseSide(look)) return `OUTSIDE long arrises ${fine}. Sharp: ${sharp(look).join(', ')}.`;
  const joints = endJoints(part).length > 0;
  if (joints) return `Long arrises ${fine}, not within ${round} of a shoulder; tails and tenons stay sharp.`.replace('tails and tenons', endWord(part)); // prettier-ignore
  const plain = part.cuts.every((c) => c.shape === 'bore' || c.shape === 'mark' || c.shape === 'arris');
  return plain ? `Long arrises ${fine}.` : `Long arrises ${fine}; joints stay sharp.`;
}
const endWord = (part: Part): string => (endJoints(part).some((c) => c.shape === 'tails') ? 'tails' : 'tenons');
/** What must meet another part closely on a case side. */
function sharp({ part, frame: f }: Look): string[] {
  const ends = [...new Set(part.cuts.flatMap((c) => (c.shape === 'dovetail' && c.as === 'end-socket' ? facesOf(c, f) : []))), ...endJoints(part).map((c) => c.end)]; // prettier-ignore
  const named = [...new Set(ends.filter((x) => faceAxis(x) === f.length))].map((x) => called(f, x));
  return [
    `INSIDE arris of ${called(f, part.reference.edge)}`,
    ...(part.cuts.some((c) => c.shape === 'box' && c.as === 'rabbet') ? ['rabbet'] : []),
    ...named,
  ];
}

/** What is sanded and finished before glue-up, and where finish must not go. Common practice. */
function prepareWords(look: Look): string | undefined {
  const { piece, part, frame: f } = look;
  const near = piece.units === 'mm' ? '12' : '1/2';
  const joints = piece.joints.filter((j) => j.entering === part.id);
  const loose = part.cuts.length === 0 && joints.length > 0 && joints.every((j) => j.traits.freedom === 'floats' || STILL.includes(j.kind)); // prettier-ignore
  const sheet = piece.stocks[part.stock]?.kind === 'sheet';
  if (loose) return sheet ? 'both faces before it goes in.' : 'finish it all over before it goes in; bare wood shows when it shrinks.'; // prettier-ignore
  if (part.cuts.length === 0 && joints.some((j) => j.traits.glue !== 'none' && !STILL.includes(j.kind))) return 'faces before glue-up; what goes into its joints stays bare.'; // prettier-ignore
  if (!part.cuts.some((c) => c.glue && c.glue.where !== '') && !part.cuts.some((c) => c.shape === 'tails' || c.shape === 'tenon')) return undefined; // prettier-ignore
  const inside = FACES.find((x) => f.words[x] === 'INSIDE' && faceAxis(x) === f.thickness);
  if (isLeg(look)) return `all faces before glue-up; no finish within ${near} of a mortise.`;
  if (isMember(piece, part)) return `${called(f, inside ?? part.reference.face)} before glue-up; none in groove or joints.`; // prettier-ignore
  if (inside !== undefined && isCaseSide(look)) return `INSIDE face before glue-up; not in the joints nor within ${near} of them.`; // prettier-ignore
  if (endJoints(part).length > 0) return `all long sides before glue-up; no finish on ${endWord(part)} or shoulders.`;
  return `${called(f, part.reference.face)} before glue-up; none in the joints.`;
}

/** What can be saved when a cut goes wrong. Common practice; nothing where nothing can. */
function spoiltWords(look: Look): string | undefined {
  const { part, frame: f } = look;
  if (isLeg(look)) return 'a mortise out of place: glue in a slip, same wood and grain, and chop again. Through a face: the leg is lost.'; // prettier-ignore
  const across = part.cuts.some(
    (c) => (c.shape === 'dovetail' && c.as === 'socket') || (c.shape === 'box' && c.as === 'dado'),
  );
  const sockets = part.cuts.some((c) => c.shape === 'dovetail' && c.as === 'end-socket');
  if (!across && sockets && endJoints(part).length === 0)
    return 'a slack socket: glue a slip to its wall, same grain, and pare again.';
  if (isCaseSide(look) && across) {
    const hidden = part.cuts.some((c) => c.shape === 'mark' && c.as === 'slide-line') ? '; the drawers hide it' : '';
    const word = part.cuts.some((c) => c.shape === 'dovetail' && c.as === 'socket') ? 'socket' : 'dado';
    const grain = part.grain === 2 ? ', grain UP' : ', same grain';
    return `a ${word} at a wrong height: glue in a strip of the same wood${grain}, cut again${hidden}. Run out at ${f.words[part.reference.edge]}: the side is lost.`; // prettier-ignore
  }
  const own = betweenEnds(part);
  if (own === undefined) return undefined;
  const word = endWord(part).slice(0, -1);
  const between = endJoints(part).some((c) => c.shape === 'tails') ? 'base lines' : 'shoulders';
  return `a slack ${word}: glue a shaving to its cheek and fit again. Short between ${between}: the part is lost.`;
}

/** One measurement that proves the part: between base lines, shoulders or mortises, to the last socket, or over all. */
export function proveOf(look: Draft & { readonly units: Piece['units'] }): { what: string; figure: string } {
  const { part, frame: f, units } = look;
  const say = (nm: number): string => formatLength(nm, units);
  const between = betweenEnds(part);
  if (between !== undefined) {
    const tails = endJoints(part).some((c) => c.shape === 'tails');
    return { what: tails ? 'base line to base line' : 'shoulder to shoulder', figure: say(between) };
  }
  const mortises = proveMortises(look);
  if (mortises) return { what: mortises.what, figure: say(mortises.size) };
  const far = opposite(part.reference.end);
  const sockets = part.cuts.flatMap((c) =>
    c.shape === 'dovetail' && c.taper === part.length ? [distance(f, far, middle(c.atFace))] : [],
  );
  if (sockets.length > 1) return { what: `${called(f, far)} to centre of the nearest socket`, figure: say(Math.min(...sockets)) }; // prettier-ignore
  const [one] = endJoints(part);
  const line = one && (one.shape === 'tails' ? one.base : one.shoulder);
  if (one && line !== undefined && faceAxis(one.end) === part.length) {
    const word = one.shape === 'tails' ? 'base line' : 'shoulder';
    return { what: `${called(f, opposite(one.end))} to ${word}`, figure: say(distance(f, opposite(one.end), line)) };
  }
  return { what: 'over all, end to end', figure: say(f.blank[part.length][1] - f.blank[part.length][0]) };
}
/** The longest stretch of wood left between two mortises of one face, along the part. */
function proveMortises({ part, frame: f }: Draft): { what: string; size: number } | undefined {
  const upright = f.words[faceOf(part.length, 1)] === 'TOP';
  const what = upright ? 'top of lower mortise to bottom of upper' : 'between the two mortises';
  const found = FACES.flatMap((face) => {
    const spans = part.cuts.flatMap((c) => (c.shape === 'box' && c.as === 'mortise' && c.face === face ? [c.at[part.length]] : [])); // prettier-ignore
    const [low, high] = [...spans].sort((a, b) => a[0] - b[0]);
    if (spans.length !== 2 || !low || !high || high[0] <= low[1]) return [];
    return [{ what: `${called(f, face)}, ${what}`, size: high[0] - low[1] }];
  });
  return found.sort((a, b) => b.size - a.size)[0];
}
