import type { CheckInput } from '../../src/checks/check.js';
import { inches } from '../../src/lengths/length.js';
import { inputOf } from './run.js';

/** Small pieces that the tests of several checks stand on. Inches. */

export const PLY = { sheet: 'plywood-birch', nominal: '3/4', thickness: '3/4', size: ['96', '48'], grain: 'length' };
export const THIN = { sheet: 'plywood-birch', nominal: '1/4', thickness: '0.205', size: ['96', '48'], grain: 'length' };
export const board = (lumber: string, cut?: string, quarter = '4/4'): object => ({
  lumber,
  quarter,
  ...(cut ? { cut } : {}),
});

/** A drawer that stands on wood between slab sides and rails that do not move, its front 7 in high. */
export const drawerOnWood = (wood: object, open = '7 3/32', front: object = {}): Promise<CheckInput> =>
  inputOf({
    stock: { wood, ply: PLY, thin: THIN },
    parts: {
      left: { mark: 'A1', stock: 'ply', grain: 'up', across: ['0', '3/4'], deep: ['0', '12'], up: ['0', '20'] },
      right: { mark: 'A2', mirror: 'left', about: '8' },
      low: {
        mark: 'R1',
        stock: 'ply',
        grain: 'across',
        across: ['left', 'right'],
        deep: ['0', '12'],
        up: { from: '4', size: '3/4' },
      },
      high: {
        mark: 'R2',
        stock: 'ply',
        grain: 'across',
        across: ['left', 'right'],
        deep: ['0', '12'],
        up: { from: `low.top + ${open}`, size: '3/4' },
      },
    },
    joints: { held: { kind: 'dado', part: ['low', 'high'], into: ['left', 'right'] } },
    drawers: {
      d: {
        mark: 'D{n}',
        across: ['left', 'right'],
        up: ['low', 'high'],
        front: { fit: 'inset', kind: 'integral', stock: 'wood', pulls: 'none', ...front },
        box: { stock: 'wood', bottom: 'thin', runner: 'none' },
      },
    },
  });

/** A door's frame with one panel, `open` between the stiles. */
export const frame = (open: string, groove: object): Promise<CheckInput> =>
  inputOf({
    stock: { wood: board('walnut', 'flat') },
    parts: {
      stile: {
        mark: 'S1',
        stock: 'wood',
        grain: 'up',
        across: { from: '0', size: '2' },
        deep: ['0', '3/4'],
        up: ['0', '30'],
      },
      stile_right: {
        mark: 'S2',
        stock: 'wood',
        grain: 'up',
        across: { from: `2 + ${open}`, size: '2' },
        deep: ['0', '3/4'],
        up: ['0', '30'],
      },
      rail: {
        mark: 'R1',
        stock: 'wood',
        grain: 'across',
        across: ['stile', 'stile_right'],
        deep: ['0', '3/4'],
        up: ['0', '2 1/2'],
      },
      rail_top: { mark: 'R2', like: 'rail', up: ['27 1/2', '30'] },
      panel: {
        mark: 'P1',
        stock: 'wood',
        grain: 'up',
        across: ['stile', 'stile_right'],
        deep: { mid: '3/8', size: '1/4' },
        up: ['rail', 'rail_top'],
      },
    },
    joints: {
      corners: { kind: 'mortise-and-tenon', part: ['rail', 'rail_top'], into: ['stile', 'stile_right'] },
      panels: { kind: 'groove', part: 'panel', into: ['stile', 'stile_right', 'rail', 'rail_top'], ...groove },
    },
  });

/** A top, grain across, over a batten whose grain runs under it from front to back; held by the joints given. */
export const batten = (joints: object, deep = '38'): Promise<CheckInput> =>
  inputOf({
    stock: { wood: board('oak-white', 'flat', '5/4') },
    parts: {
      top: {
        mark: 'T1',
        stock: 'wood',
        grain: 'across',
        across: ['0', '40'],
        deep: ['0', deep],
        up: ['3/4', '1 3/4'],
        show: ['top'],
      },
      batten: {
        mark: 'B1',
        stock: 'wood',
        grain: 'deep',
        across: { mid: '20', size: '2' },
        deep: ['0', deep],
        up: ['0', '3/4'],
      },
    },
    joints,
  });

/** A top 24 in deep on a frame whose ends have their grain from front to back. */
export const onFrame = (behind: object): Promise<CheckInput> =>
  inputOf({
    stock: { wood: board('oak-white', 'flat') },
    parts: {
      end: { mark: 'E1', stock: 'wood', grain: 'deep', across: ['0', '3/4'], deep: ['0', '24'], up: ['0', '3'] },
      end_right: { mark: 'E2', mirror: 'end', about: '18' },
      front: {
        mark: 'F1',
        stock: 'wood',
        grain: 'across',
        across: ['end', 'end_right'],
        deep: { from: '1', size: '3/4' },
        up: ['0', '3'],
      },
      behind: {
        mark: 'K1',
        stock: 'wood',
        grain: 'across',
        across: ['end', 'end_right'],
        deep: { to: '23', size: '3/4' },
        up: ['0', '3'],
      },
      top: {
        mark: 'T1',
        stock: 'wood',
        grain: 'across',
        across: ['0', '36'],
        deep: ['0', '24'],
        up: ['3', '3 3/4'],
        show: ['top'],
      },
    },
    joints: {
      frame: { kind: 'mortise-and-tenon', part: ['front', 'behind'], into: ['end', 'end_right'] },
      top_front: { kind: 'screw', part: 'front', into: 'top', screw: '#8 x 1 1/4', sink: '2 1/4' },
      top_behind: { kind: 'screw', part: 'behind', into: 'top', screw: '#8 x 1 1/4', sink: '2 1/4', ...behind },
    },
  });

/** A board 14 in wide glued face to face on one of flat hard maple, itself so sawn. */
export const lid = (cut: string): Promise<CheckInput> =>
  inputOf({
    stock: { flat: board('hard-maple', 'flat'), other: board('hard-maple', cut) },
    parts: {
      under: {
        mark: 'U1',
        stock: 'flat',
        grain: 'across',
        across: ['0', '30'],
        deep: ['0', '14'],
        up: ['0', '3/4'],
      },
      over: {
        mark: 'O1',
        stock: 'other',
        grain: 'across',
        across: ['0', '30'],
        deep: ['0', '14'],
        up: ['3/4', '1 1/2'],
      },
    },
    joints: { on: { kind: 'butt', part: 'over', into: 'under', glue: true } },
  });

/** A batten under a top: one round hole in the middle, two slots. */
export const pegged = (slot: object): Promise<CheckInput> =>
  batten({
    fix: { kind: 'screw', part: 'batten', into: 'top', screw: '#8 x 1 1/4', count: 1 },
    slide: {
      kind: 'screw',
      part: 'batten',
      into: 'top',
      screw: '#8 x 1 1/4',
      hole: 'slotted',
      count: 2,
      inset: '4',
      ...slot,
    },
  });
/** A piece with all its slots so long, in. */
export const slotsOf = (input: CheckInput, by: number): CheckInput => ({
  ...input,
  piece: {
    ...input.piece,
    parts: input.piece.parts.map((p) => ({
      ...p,
      cuts: p.cuts.map((c) => (c.shape === 'bore' && c.slot ? { ...c, slot: { ...c.slot, length: inches(by) } } : c)),
    })),
  },
});
/** A rail 3/4 thick under a top 3/4 thick that is seen from above, 40 in long, screwed from below. */
export const underTop = (screw: object, top = 'oak-white', more: object = {}): Promise<CheckInput> =>
  inputOf({
    stock: { oak: { lumber: 'oak-white', quarter: '4/4' }, top: { lumber: top, quarter: '4/4' } },
    parts: {
      rail: {
        mark: 'R1',
        stock: 'oak',
        grain: 'across',
        across: ['0', '40'],
        deep: ['4', '6 1/2'],
        up: ['10', '10 3/4'],
      },
      top: {
        mark: 'T1',
        stock: 'top',
        grain: 'across',
        across: ['0', '40'],
        deep: ['0', '12'],
        up: ['10 3/4', '11 1/2'],
        show: ['top'],
        ...more,
      },
    },
    joints: { on: { kind: 'screw', part: 'rail', into: 'top', screw: '#8 x 1 1/4', ...screw } },
  });

/** A cap screwed down on a post whose grain runs so. */
export const cap = (grain: string): Promise<CheckInput> =>
  inputOf({
    stock: { oak: { lumber: 'oak-white', quarter: '12/4' } },
    parts: {
      post: { mark: 'P1', stock: 'oak', grain, across: ['0', '2'], deep: ['0', '2'], up: ['0', '4'] },
      cap: { mark: 'C1', stock: 'oak', grain: 'across', across: ['0', '4'], deep: ['0', '2'], up: ['4', '4 3/4'] },
    },
    joints: { on: { kind: 'screw', part: 'cap', into: 'post', screw: '#8 x 2', count: 1 } },
  });

/** A top of staves on two rails between two boards. */
export const bench = (shop: object, staves = 3): object => ({
  stock: { oak: { lumber: 'oak-white', quarter: '4/4' } },
  parts: {
    left: { stock: 'oak', across: ['0', '3/4'], deep: ['0', '6'], up: ['0', '16'], grain: 'up' },
    right: { stock: 'oak', across: ['39 1/4', '40'], deep: ['0', '6'], up: ['0', '16'], grain: 'up' },
    rail: { stock: 'oak', across: ['left', 'right'], deep: ['2', '2 3/4'], up: ['12', '15'], grain: 'across' },
    top: { stock: 'oak', across: ['0', '40'], deep: ['0', '18'], up: ['16', '16 3/4'], grain: 'across' },
  },
  joints: {
    rails: { kind: 'mortise-and-tenon', part: 'rail', into: ['left', 'right'], depth: '1/2' },
    staves: { kind: 'edge', part: 'top', staves },
  },
  shop,
});
/** A plain chest of three boards, 40 wide, 20 deep, 72 high: two sides and a top that is screwed to a rail. */
export const wardrobe = (way: object, more: object = {}): object => ({
  stock: { oak: { lumber: 'oak-white', quarter: '4/4' }, thick: { lumber: 'oak-white', quarter: '5/4' } },
  parts: {
    left: { stock: 'oak', across: ['0', '3/4'], deep: ['0', '20'], up: ['0', '71'], grain: 'up' },
    right: { stock: 'oak', across: ['39 1/4', '40'], deep: ['0', '20'], up: ['0', '71'], grain: 'up' },
    shelf: { stock: 'oak', across: ['left', 'right'], deep: ['0', '20'], up: ['30', '30 3/4'], grain: 'across' },
    rail: { stock: 'oak', across: ['left', 'right'], deep: ['8', '11'], up: ['70 1/4', '71'], grain: 'across' },
    top: { stock: 'thick', across: ['-2', '42'], deep: ['-1', '21'], up: ['71', '72'], grain: 'across' },
  },
  joints: {
    shelf_in: { kind: 'dado', part: 'shelf', into: ['left', 'right'] },
    rail_in: { kind: 'half-blind-dovetail', part: 'rail', into: ['left', 'right'] },
    top_on: { kind: 'screw', part: 'rail', into: 'top', screw: '#8 x 1 1/4', count: 3 },
  },
  delivery: { wrap: '0', ...way },
  ...more,
});
