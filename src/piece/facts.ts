import { nameHint } from '../diag/didYouMean.js';
import type { Face } from '../geom/axis.js';
import { AXES, FACES, faceAxis } from '../geom/axis.js';
import type { Box3 } from '../geom/box.js';
import { byAxis } from '../geom/box.js';
import { shifted } from '../geom/placement.js';
import type { Body } from './body.js';
import { originOf } from './body.js';
import type { Findings } from './fault.js';
import type { Joint, Part, Status } from './piece.js';
import { referenceOf, roleOf, wholeOf, wordsOf } from './role.js';

/** All bodies as parts: marks, face words, references and status by policy where the definition does not say. */
export function partsOf(bodies: readonly Body[], joints: readonly Joint[], findings: Findings): Part[] {
  const whole = wholeOf(bodies);
  const roles = new Map(bodies.map((b) => [b.id, roleOf(b, whole)]));
  const legs = [...roles.values()].includes('leg');
  const marks = marksOf(bodies, findings);
  return bodies.map((b) => {
    const role = roles.get(b.id) ?? 'standing';
    const faceWords = named(b, b.own.faceWords ?? wordsOf(b, role, whole), findings);
    const reference = b.own.reference ?? chosen(b, referenceOf(b, role, whole, legs), findings);
    const { status, why } = statusOf(b, joints, whole);
    const staves = joints.find((j) => j.entering === b.id && j.receiving === b.id);
    const count = staves?.sizes['staves'];
    return {
      id: b.id,
      mark: marks.get(b.id) ?? b.id,
      name: b.own.name ?? nameOf(b.id),
      stock: b.stock.id,
      place: b.place ?? shifted(originOf(b)),
      size: b.size,
      growth: byAxis((a) => [b.growth[a][0] + 0, b.growth[a][1] + 0] as const) as Box3,
      thickness: b.thickness,
      width: b.width,
      length: b.length,
      ...(b.grain === undefined ? {} : { grain: b.grain }),
      show: b.show,
      faceWords,
      reference,
      cuts: [...b.cuts].sort((x, y) => x.rank - y.rank),
      status,
      statusWhy: why,
      ...(staves ? { staves: count?.value ?? 0 } : {}),
      ...(b.own.drawer === undefined ? {} : { drawer: b.own.drawer }),
      ...(b.own.hand === undefined ? {} : { hand: b.own.hand }),
      notes: b.own.notes,
    };
  });
}

/** Short endings of ids that say where a part stands. */
const PLACES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(FACES.map((f) => [f, f])),
  l: 'left',
  r: 'right',
  fl: 'front left',
  fr: 'front right',
  bl: 'back left',
  br: 'back right',
};
/** `side_left` is the left side, `leg_fl` the front left leg, `rail_2` is rail 2. */
export function nameOf(id: string): string {
  const words = id.split(/[_.]/);
  const place: string[] = [];
  for (let last = PLACES[words[words.length - 1] ?? '']; words.length > 1 && last !== undefined;) {
    place.unshift(last);
    words.pop();
    last = PLACES[words[words.length - 1] ?? ''];
  }
  return [...place, ...words].join(' ');
}

/** Marks as given; the others A1, A2 … in the order of the definition, passing over those in use. */
function marksOf(bodies: readonly Body[], findings: Findings): Map<string, string> {
  const used = new Map<string, string>();
  for (const b of bodies) {
    const mark = b.own.mark;
    if (mark === undefined) continue;
    const other = used.get(mark);
    if (other !== undefined)
      findings.error(
        'mark-twice',
        [...b.path, 'mark'],
        `"${b.id}" and "${other}" are both marked ${mark}.`,
        'Give each its own mark; {i} counts.',
        [b.id, other],
      );
    else used.set(mark, b.id);
  }
  const out = new Map<string, string>();
  let n = 0;
  for (const b of bodies) {
    if (b.own.mark !== undefined) out.set(b.id, b.own.mark);
    else {
      do n++;
      while (used.has(`A${n}`));
      out.set(b.id, `A${n}`);
    }
  }
  return out;
}

function named(b: Body, words: Part['faceWords'], findings: Findings): Part['faceWords'] {
  const out: Record<string, string> = { ...words };
  for (const [face, word] of Object.entries(b.own.faces ?? {})) {
    if ((FACES as readonly string[]).includes(face)) out[face] = word.toUpperCase();
    else
      findings.error('face-unknown', [...b.path, 'faces', face], `"${face}" is not a face.`, nameHint(face, FACES), [
        b.id,
      ]);
  }
  const twice = FACES.find((f) => FACES.some((g) => g < f && out[f] === out[g]));
  if (twice)
    findings.error(
      'face-word-twice',
      [...b.path, 'faces'],
      `Two faces of "${b.id}" are both called ${out[twice]}.`,
      'Give each face a word of its own.',
      [b.id],
    );
  return out as Part['faceWords'];
}

function chosen(b: Body, policy: Part['reference'], findings: Findings): Part['reference'] {
  const own = b.own.referenceWords;
  if (!own) return policy;
  const pick = (field: 'face' | 'edge' | 'end', axis: Body['thickness']): Face => {
    const word = own[field];
    if (word === undefined) return policy[field];
    if ((FACES as readonly string[]).includes(word) && faceAxis(word as Face) === axis) return word as Face;
    const fit = FACES.filter((f) => faceAxis(f) === axis);
    findings.error(
      'reference-unknown',
      [...b.path, 'reference', field],
      `"${word}" is no ${field} of "${b.id}".`,
      `Say "${fit.join('" or "')}".`,
      [b.id],
    );
    return policy[field];
  };
  return { face: pick('face', b.thickness), edge: pick('edge', b.width), end: pick('end', b.length) };
}

/** A size is settled when nothing made later decides it: policy, our default, after common practice. */
export function statusOf(
  b: Body,
  joints: readonly Joint[],
  whole: Box3,
): { readonly status: Status; readonly why: string } {
  if (b.own.status) return { status: b.own.status, why: b.own.statusWhy ?? 'as the definition says' };
  const enters = joints.filter((j) => j.entering === b.id && j.receiving !== b.id);
  const into = new Set(enters.map((j) => j.receiving));
  const entersOthers = (id: string): boolean => joints.some((j) => j.entering === id && j.receiving !== id);
  const floats = enters.length > 0 && enters.every((j) => j.traits.freedom !== 'fixed');
  if (b.stock.kind === 'sheet' && enters.length >= 2)
    return { status: 'fit to the piece', why: 'measure the opening after the glue-up' };
  if (floats) return { status: 'cut now', why: 'it floats: its size has room' };
  if (into.size >= 2 && [...into].every(entersOthers))
    return { status: 'fit to the piece', why: 'it stands between parts that are themselves fitted' };
  // Only screws hold it: nothing is cut in it by which its length would be set.
  const loose = joints.every((j) => j.receiving !== b.id || j.entering === b.id || j.traits.glue === 'none');
  const overall = AXES.filter((a) => a !== 2 && b.box[a][0] === whole[a][0] && b.box[a][1] === whole[a][1]);
  if (b.thickness === 2 && overall.length > 0 && b.box[2][1] === whole[2][1] && enters.length === 0 && loose)
    return { status: 'leave long', why: 'trimmed when the case under it stands' };
  if (
    enters.length > 0 &&
    enters.every((j) => j.traits.holds === 'no' || j.traits.glue === 'none') &&
    b.growth.every((g) => g[0] === 0 && g[1] === 0)
  )
    return { status: 'leave long', why: 'its ends are trimmed to the shoulders between which it goes' };
  return { status: 'cut now', why: 'nothing made later changes it' };
}
