import { dado } from './dado.js';
import { groove } from './groove.js';
import { halfBlindDovetail } from './half-blind-dovetail.js';
import type { JointKind } from './joint.js';
import { mortiseAndTenon } from './mortise-and-tenon.js';
import { slidingDovetail } from './sliding-dovetail.js';

/** Every kind of joint. To add one: its file, one import, one entry. */
export const JOINTS: readonly JointKind[] = [dado, groove, halfBlindDovetail, mortiseAndTenon, slidingDovetail];

/** The kind of that name; undefined when there is none. */
export const jointKind = (kind: string): JointKind | undefined => JOINTS.find((j) => j.kind === kind);
