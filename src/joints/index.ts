import { butt } from './butt.js';
import { dado } from './dado.js';
import { edgeHalving } from './edge-halving.js';
import { edge } from './edge.js';
import { groove } from './groove.js';
import { halfBlindDovetail } from './half-blind-dovetail.js';
import type { JointKind } from './joint.js';
import { mortiseAndTenon } from './mortise-and-tenon.js';
import { rabbet } from './rabbet.js';
import { screw } from './screw.js';
import { slidingDovetail } from './sliding-dovetail.js';
import { throughDovetail } from './through-dovetail.js';

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
];

/** The kind of that name; undefined when there is none. */
export const jointKind = (kind: string): JointKind | undefined => JOINTS.find((j) => j.kind === kind);
