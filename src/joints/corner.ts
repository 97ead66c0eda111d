import type { Diagnostic } from '../diag/diagnostic.js';
import type { Face } from '../geom/axis.js';
import { opposite } from '../geom/axis.js';
import type { Span } from '../geom/box.js';
import { span } from '../geom/box.js';
import type { Cut, DovetailCut } from '../words/cut.js';
import type { Resolved, Site } from './joint.js';
import { carriedOn, common, endOf, fig, finding, runningOut, sideOf, THICK, WIDE } from './place.js';

/** One tail: its extent along the width at the base line and at its end. */
export interface Tail {
  readonly atBase: Span;
  readonly atEnd: Span;
}
export interface TailRow {
  /** Site face at which the sockets are open: there the tails go in. */
  readonly from: Face;
  readonly length: number;
  readonly tails: readonly Tail[];
  readonly bit?: { readonly width: number; readonly angle: number };
  readonly pitch?: number;
  /** The sockets are marked from the tails. */
  readonly scribe?: boolean;
}

/** The receiving part's side, along the entering thickness, with which the entering part is flush. */
export function openSide(spec: Resolved, site: Site): Face {
  const own = site.entering.box[THICK];
  const host = site.receiving.box[THICK];
  return sideOf(spec, 'from', site) ?? (Math.abs(host[1] - own[1]) <= Math.abs(own[0] - host[0]) ? 'back' : 'front');
}
/** The corner must be one: the entering part flush, or nearly, with an end of the receiving part. */
export function cornerFault(site: Site, from: Face): Diagnostic | undefined {
  const t = site.entering.box[THICK][1];
  const off = Math.abs(endOf(site.receiving.box[THICK], from) - endOf(site.entering.box[THICK], from));
  return off <= t
    ? undefined
    : finding(
        site,
        'error',
        'no-corner',
        `The end of the receiving part is ${fig(site, off)} away: tails cannot go in from there.`,
        {
          hint: 'Bring the part to the end, or use a sliding dovetail or a dado.',
        },
      );
}

/** Tails on the end of the entering part, its own grooves carried on through them. */
export function tailCuts(r: TailRow, site: Site): Cut[] {
  const own = site.entering.box[THICK];
  return [
    {
      ...common(site, 1, 'entering', 2),
      shape: 'tails',
      as: r.tails.length === 1 ? 'tail' : 'tails',
      end: 'right',
      base: 0,
      taper: WIDE,
      tails: r.tails,
      keep: [own[0], own[1]],
      ...(r.bit ? { bit: r.bit } : {}),
      ...(r.pitch === undefined ? {} : { pitch: r.pitch }),
      glue: { where: 'the sides of the tails' },
    },
    ...carriedOn(site, r.length),
  ];
}
/** Their sockets, open to the end of the receiving part. */
export function socketCuts(r: TailRow, site: Site): DovetailCut[] {
  const own = site.entering.box[THICK];
  const runSpan = span(endOf(site.receiving.box[THICK], r.from), endOf(own, opposite(r.from)));
  return r.tails.map((tail, i) => ({
    ...common(site, i + 1, 'receiving', 2),
    shape: 'dovetail',
    as: 'end-socket',
    face: 'left',
    run: THICK,
    taper: WIDE,
    runSpan,
    atFace: tail.atBase,
    atFloor: tail.atEnd,
    depth: r.length,
    ...(r.bit ? { bit: r.bit } : {}),
    ...(r.scribe ? { scribe: true } : {}),
    glue: { where: 'the sides of the socket' },
  }));
}
/** A groove that comes out beside its tail shows as a hole in the receiving part (Noyes: wholly inside the lowest tail). */
export function grooveFaults(r: TailRow, site: Site): Diagnostic[] {
  return runningOut(site)
    .filter((cut) => cut.as === 'groove')
    .flatMap((cut) => {
      const at = cut.at[WIDE];
      const hidden = r.tails.some((t) => t.atBase[0] <= at[0] && t.atBase[1] >= at[1]);
      return hidden
        ? []
        : [
            finding(
              site,
              'warning',
              'groove-shows',
              `The groove ${fig(site, at[0])} to ${fig(site, at[1])} up comes out beside the tails.`,
              {
                hint: 'Bring it wholly inside a tail, or stop it.',
              },
            ),
          ];
    });
}
