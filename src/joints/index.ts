import { butt } from './butt.js';
import { dado } from './dado.js';
import { edgeHalving } from './edge-halving.js';
import { edge } from './edge.js';
import { groove } from './groove.js';
import { halfBlindDovetail } from './half-blind-dovetail.js';
import type { JointKind } from './joint.js';
import { formatAngle } from '../lengths/format.js';
import { mortiseAndTenon } from './mortise-and-tenon.js';
import { finding } from './place.js';
import { rabbet } from './rabbet.js';
import { screw } from './screw.js';
import { slidingDovetail } from './sliding-dovetail.js';
import { throughDovetail } from './through-dovetail.js';

/** A kind that is not laid out for parts that lean against one another is refused there: better than cut wrong. */
const square = (kind: JointKind): JointKind => ({
  ...kind,
  resolve(spec, site) {
    const out = kind.resolve(spec, site);
    if (site.lean === 0 || kind.leans) return out;
    const message = `The parts meet ${formatAngle(site.lean)} out of square; this kind (${kind.words}) is worked out for square parts only.`;
    return { ...out, findings: [...out.findings, finding(site, 'error', 'joint-leans', message)] };
  },
});

/** Every kind of joint, by name. To add one: its file, one import, one entry. */
export const JOINTS: readonly JointKind[] = [
  butt,
  dado,
  edge,
  edgeHalving,
  groove,
  halfBlindDovetail,
  mortiseAndTenon,
  rabbet,
  screw,
  slidingDovetail,
  throughDovetail,
].map(square);

/** The kind of that name; undefined when there is none. */
export const jointKind = (kind: string): JointKind | undefined => JOINTS.find((j) => j.kind === kind);
