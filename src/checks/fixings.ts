import { partBodies } from './bodies.js';
import type { Check, CheckInput, CheckResult } from './check.js';
import { drawerRooms } from './drawerRoom.js';
import { bitesOf, endGrain, share, tip, unjudged } from './fixings/bite.js';
import { pilot, screwTable } from './fixings/holes.js';
import { slideLoad, slideScrews } from './fixings/slides.js';
import { topFixings } from './fixings/tops.js';
import { grouped, type Single } from './grouped.js';
import { standingsOf } from './standing.js';

/**
 * Every screw: does its point stay in, does enough of it bite, are its holes those of its gauge and the wood; what slides
 * and the fixings of a top hold. Screws are known by what their makers gave of them, not by the joint that brings them.
 */
export const fixings: Check = {
  key: 'fixings',
  title: 'Screws, slides and the fixings of tops',
  run(input: CheckInput): CheckResult {
    const { piece, making } = input;
    const stands = standingsOf(piece);
    const bites = bitesOf(piece, stands);
    const masses = new Map(making.weights.parts.map((p) => [p.part, p.kg]));
    const rooms = drawerRooms(piece, partBodies(input));
    const singles: Single[] = [
      ...bites.flatMap((b) => [tip(b, piece), share(b, piece), ...endGrain(b, piece), ...pilot(b, piece)]),
      ...unjudged(piece, bites),
      ...rooms.flatMap((room) => [...slideLoad(room, piece), ...slideScrews(room, piece, bites)]),
      ...topFixings(piece, stands, bites, (part) => masses.get(part) ?? 0),
    ];
    return {
      judgements: grouped(singles),
      ...(bites.length > 0 ? { tables: [screwTable(bites, piece)] } : {}),
    };
  },
};
