/** A small chest on slab sides: light or heavy case, drawers of a wood, all in inches. */
export interface Chest {
  readonly W?: string;
  readonly D?: string;
  readonly H?: string;
  readonly caseWood?: string;
  readonly drawerWood?: string;
  readonly front?: string;
  readonly runner?: 'side-slide' | 'none';
  readonly rows?: readonly string[];
  readonly more?: object;
}
export function chestDef(c: Chest = {}): object {
  const rows = c.rows ?? ['8', '8', '8'];
  const rails = Object.fromEntries(
    rows.map((_, i) => [
      `rail_${i + 1}`,
      {
        mark: `R${i + 1}`,
        stock: 'case',
        grain: 'across',
        across: ['side_left', 'side_right'],
        deep: { from: '0', size: '2 1/2' },
        up: { to: `${i === 0 ? 'top.bottom' : `rail_${i}.bottom`} - ${rows[i]}`, size: '3/4' },
      },
    ]),
  );
  const up = [...rows.map((_, i) => `rail_${rows.length - i}`), 'top'];
  return {
    measures: { W: c.W ?? '30', D: c.D ?? '18', H: c.H ?? '40', t: '3/4' },
    stock: {
      case: { lumber: c.caseWood ?? 'oak-white', quarter: '4/4', cut: 'quartered' },
      thick: { lumber: c.drawerWood ?? 'yellow-poplar', quarter: '12/4', cut: 'quartered' },
      box: { lumber: c.drawerWood ?? 'yellow-poplar', quarter: '4/4', cut: 'quartered' },
      ply: { sheet: 'plywood-birch', nominal: '1/4', thickness: '0.205', size: ['96', '48'], grain: 'length' },
    },
    parts: {
      side_left: {
        mark: 'A1',
        stock: 'case',
        grain: 'up',
        across: ['0', 't'],
        deep: ['0', 'D'],
        up: ['0', 'top.bottom'],
      },
      side_right: { mark: 'A2', mirror: 'side_left', about: 'W / 2' },
      top: {
        mark: 'A3',
        stock: 'case',
        grain: 'across',
        across: ['0', 'W'],
        deep: ['0', 'D'],
        up: { to: 'H', size: 't' },
      },
      back: {
        mark: 'A4',
        stock: 'ply',
        grain: 'up',
        across: ['side_left', 'side_right'],
        deep: { to: 'D' },
        up: ['1', 'top.bottom'],
      },
      ...rails,
    },
    joints: {
      rails: { kind: 'sliding-dovetail', part: 'rail_*', into: ['side_left', 'side_right'], from: 'back', stop: '3/8' },
    },
    drawers: {
      d: {
        mark: 'D{n}',
        across: ['side_left', 'side_right'],
        up,
        front: { fit: 'inset', reveal: '1/16', stock: 'thick', thickness: c.front ?? '3/4', pulls: 'none' },
        box: { stock: 'box', bottom: 'ply', corner: 'half-blind-dovetail', runner: c.runner ?? 'side-slide' },
      },
    },
    ...c.more,
  };
}
