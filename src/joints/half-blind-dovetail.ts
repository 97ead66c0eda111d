import { z } from 'zod';
import type { Diagnostic } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { opposite } from '../geom/axis.js';
import { tangent } from '../geom/angle.js';
import type { Span } from '../geom/box.js';
import { nm, snap, snapDown } from '../lengths/length.js';
import type { Sized } from '../value/sized.js';
import { byRule, derived } from '../value/sized.js';
import type { Tail, TailRow } from './corner.js';
import { cornerFault, grooveFaults, openSide, socketCuts, tailCuts } from './corner.js';
import { entering, inchBox } from './example.js';
import { choiceField, faceField, lengthField, maybe, sized, text } from './fields.js';
import type { Given, JointKind, Resolved, Site } from './joint.js';
import { breadth, either, fig, finding, gaugeDown, offAxis, onStep, resists, THICK, wall, WIDE } from './place.js';

interface HalfBlind {
  readonly single: boolean;
  /** Site face at which the sockets are open: there the tails go in. */
  readonly from: Face;
  readonly length: Sized;
  readonly lap: Sized;
  readonly tails: readonly Tail[];
  readonly bit?: { readonly width: number; readonly angle: number };
  readonly pitch?: Sized;
  readonly sizes: Readonly<Record<string, Sized>>;
}

const spec = z.strictObject({
  form: choiceField(
    ['row', 'single'],
    'A row of tails on the pitch of the jig, or one tail (a rail let down). Without it: a row where both parts are equally wide',
  ),
  from: faceField('The side of the receiving part at which the sockets are open and the tails go in', 'top'),
  lap: lengthField('Wood left in front of the tails', '1/4'),
  length: lengthField('Length of the tails: how far they go into the receiving part', '5/8'),
  shoulder: lengthField('One tail: shoulder at each edge, at the end of the tail', '1/4'),
  splay: lengthField('One tail: how much narrower it is at its shoulder, each side', '3/32'),
  pitch: lengthField('Row: distance from tail to tail', '7/8'),
});

/** Lap and length: one follows from the other and the thickness. */
function lengthAndLap(spec: Resolved, site: Site, single: boolean): { length: Sized; lap: Sized } {
  const T = wall(site);
  const inputs = [{ name: 'receiving thickness', value: T }];
  const length = maybe(spec, 'length');
  if (length) return { length, lap: derived(nm(T - length.value), 'receiving thickness less tail', inputs) };
  const lap = sized(spec, 'lap', () =>
    single
      ? byRule(
          either(site.world, 1 / 4, 6),
          '1/4 in (6 mm) left in front of the tail',
          'Fairham, Woodwork Joints',
          inputs,
        )
      : byRule(
          onStep(site.world, Math.max(either(site.world, 1 / 8, 3), T / 4)),
          'the greater of 1/8 in (3 mm) and a quarter of the thickness',
          'common practice',
          inputs,
        ),
  );
  const rest = nm(T - lap.value);
  const { width: cutter, angle } = site.world.bits.dovetail;
  const most = single ? either(site.world, 3 / 4, 19) : gaugeDown(site.world, cutter / 3 / tangent(angle));
  if (rest <= most || maybe(spec, 'lap')) return { length: derived(rest, 'receiving thickness less lap', inputs), lap };
  const rule = single
    ? 'one tail: at most 3/4 in (19 mm) long'
    : 'no longer than leaves a third of the cutter at its neck';
  return {
    length: byRule(most, rule, single ? 'common practice' : 'our default', inputs),
    lap: derived(nm(T - most), 'receiving thickness less tail', inputs),
  };
}

/** One tail: shoulders at both edges, slope between 1:6 and 1:8 (Fairham), splay on 1/32 in or 0.2 mm. */
function oneTail(spec: Resolved, site: Site, length: Sized): Pick<HalfBlind, 'tails' | 'sizes'> {
  const w = breadth(site);
  const shoulder = sized(spec, 'shoulder', () =>
    byRule(
      nm(Math.min(either(site.world, 1 / 4, 6), gaugeDown(site.world, w / 5))),
      'shoulder 1/4 in (6 mm) at each edge, on a narrow rail a fifth of it',
      'our default',
      [{ name: 'width', value: w }],
    ),
  );
  const splay = sized(spec, 'splay', () =>
    byRule(snap(length.value / 7, 2 * site.world.step), 'slope 1:7, rounded', 'common practice, 1:6 to 1:8 (Fairham)', [
      { name: 'length', value: length.value },
    ]),
  );
  const atEnd: Span = [shoulder.value, w - shoulder.value];
  const atBase: Span = [atEnd[0] + splay.value, atEnd[1] - splay.value];
  return { tails: [{ atBase, atEnd }], sizes: { shoulder, splay } };
}

const onPitch = (site: Site): boolean => {
  const over = breadth(site) % site.world.pitch;
  return Math.min(over, site.world.pitch - over) <= site.world.step / 2;
};
/** The jig's pitch where the height is a whole number of them; else equal divisions, no narrower than the jig's. */
function pitchRule(site: Site): Sized {
  const { pitch, step } = site.world;
  if (onPitch(site)) return byRule(pitch, 'pitch of the dovetail jig', 'our default');
  const n = Math.max(1, Math.floor(breadth(site) / pitch));
  return byRule(
    snapDown(breadth(site) / n, step),
    `width in ${n} equal divisions, half a space at each edge`,
    'Noyes, Handwork in Wood, no. 48',
    [{ name: 'width', value: breadth(site) }],
  );
}

/** Tails on the pitch of a jig, from the low edge (its fence): tail and space share the pitch, what is left over lies at the high edge. */
function row(spec: Resolved, site: Site, length: Sized): Pick<HalfBlind, 'tails' | 'sizes' | 'pitch' | 'bit'> {
  const bit = site.world.bits.dovetail;
  const pitch = sized(spec, 'pitch', () => pitchRule(site));
  const inputs = [
    { name: 'cutter', value: bit.width },
    { name: 'length', value: length.value },
  ];
  const space = snap(bit.width - 2 * length.value * tangent(bit.angle), site.world.step);
  const wideEnd = derived(
    nm(pitch.value - space),
    `pitch less the cutter's width at the face (tan ${bit.angle})`,
    inputs,
  );
  const neck = derived(nm(pitch.value - bit.width), 'pitch less cutter', inputs);
  const n = Math.floor((breadth(site) + site.world.step / 2) / pitch.value);
  // On the jig its fence is at the low edge; equal divisions lie centrally, what the step leaves over at both edges.
  const edge =
    maybe(spec, 'pitch') || onPitch(site) ? 0 : snapDown((breadth(site) - n * pitch.value) / 2, site.world.step);
  const tails = Array.from({ length: n }, (_, i): Tail => {
    const centre = edge + pitch.value * (i + 0.5);
    const half = (s: Sized): Span => [nm(centre - s.value / 2), nm(centre - s.value / 2) + s.value];
    return { atBase: half(neck), atEnd: half(wideEnd) };
  });
  return { tails, bit, pitch, sizes: { pitch, 'tail at its end': wideEnd, 'tail at its base line': neck } };
}

function judge(r: HalfBlind, site: Site): Diagnostic[] {
  const out: Diagnostic[] = [];
  const least = either(site.world, 3 / 32, 2);
  if (r.length.value <= 0 || r.lap.value <= 0)
    out.push(
      finding(
        site,
        'error',
        'no-lap',
        `A tail ${fig(site, r.length.value)} long leaves no lap in ${fig(site, wall(site))}.`,
        { field: 'length' },
      ),
    );
  else if (r.lap.value < least)
    out.push(
      finding(site, 'warning', 'lap-thin', `Only ${fig(site, r.lap.value)} is left in front of the tails.`, {
        field: 'lap',
        hint: `At least ${fig(site, least)}.`,
      }),
    );
  if (r.tails.length === 0)
    out.push(
      finding(site, 'error', 'no-tails', `The part is ${fig(site, breadth(site))} wide, less than one pitch.`, {
        hint: 'Use "form": "single".',
      }),
    );
  if (
    r.tails.some(
      (t, i) =>
        t.atBase[1] <= t.atBase[0] || t.atEnd[0] < (r.tails[i - 1]?.atEnd[1] ?? -site.world.step) + site.world.step,
    )
  )
    out.push(
      finding(site, 'error', 'no-tails', 'The tails leave no wood between them, or have none at their base line.', {
        hint: 'Smaller shoulders, a shorter tail or a wider pitch.',
      }),
    );
  const over = r.pitch?.how === 'given' ? breadth(site) - r.tails.length * r.pitch.value : 0;
  if (r.pitch && over > site.world.step / 2)
    out.push(
      finding(
        site,
        'note',
        'off-pitch',
        `${fig(site, over)} is left over beyond ${r.tails.length} pitches of ${fig(site, r.pitch.value)}.`,
        {
          hint: `Heights on the pitch: ${fig(site, r.tails.length * r.pitch.value)} or ${fig(site, (r.tails.length + 1) * r.pitch.value)}.`,
        },
      ),
    );
  return out;
}

/**
 * Lapped dovetail. How the boxes stand: the entering (tail) part's shoulder box ends at the near face of the receiving
 * part and lies flush with its end; it grows by the receiving thickness less the lap. The receiving part keeps its size.
 * In a drawer box the sides enter front and back: sides from inside of front to inside of back, front and back full length.
 */
export const halfBlindDovetail: JointKind<unknown, HalfBlind> = {
  kind: 'half-blind-dovetail',
  words: 'half-blind dovetail',
  spec,
  lengths: ['lap', 'length', 'shoulder', 'splay', 'pitch'],
  stance: 'corner',
  rank: 2,
  example: {
    spec: {},
    site: {
      entering: entering(15, 0.5, 4.375),
      receiving: { box: inchBox([0, 0.5], [0, 15.71875], [0, 4.375]), grain: 1 },
    },
  },
  resolve(spec, site) {
    const host = site.receiving.box[WIDE];
    const sameWidth = Math.abs(host[0]) + Math.abs(host[1] - breadth(site)) <= either(site.world, 1 / 16, 1.5);
    const form = text(spec, 'form');
    const single = form === undefined ? !sameWidth : form === 'single';
    const side = offAxis(spec, 'from', THICK, site);
    const from = openSide(side ? {} : spec, site);
    const corner = cornerFault(site, from);
    const { length, lap } = lengthAndLap(spec, site, single);
    const shape = single ? oneTail(spec, site, length) : row(spec, site, length);
    const r: HalfBlind = { single, from, length, lap, ...shape };
    return { r, findings: [side, corner, ...judge(r, site)].filter((f) => f !== undefined) };
  },
  give,
};

function give(r: HalfBlind, site: Site): Given {
  const row: TailRow = {
    from: r.from,
    length: r.length.value,
    tails: r.tails,
    ...(r.bit ? { bit: r.bit } : {}),
    ...(r.pitch ? { pitch: r.pitch.value } : {}),
    scribe: r.single,
  };
  return {
    growth: { entering: { right: r.length.value } },
    entering: tailCuts(row, site),
    receiving: socketCuts(row, site),
    bodies: [],
    traits: {
      insertion: [opposite(r.from)],
      holds: 'holds',
      glue: 'long-crossed',
      resists: r.single ? resists(3, 2, 1, 1) : resists(3, 3, 3, 3),
      freedom: 'fixed',
      shows: false,
    },
    findings: r.single ? [] : grooveFaults(row, site),
    sizes: { length: r.length, lap: r.lap, ...r.sizes },
  };
}
