import { createKernel } from '../../../src/geom/kernel.js';
import { makeCases } from './cases.js';

/** Prints one line a case: its number, the worst disagreement of volumes, the lumps; then the handles. */
const [seed, count] = process.argv.slice(2).map(Number) as [number, number];
const say = (value: unknown): boolean => process.stdout.write(`${JSON.stringify(value)}\n`);
const kernel = await createKernel();
makeCases(seed, count).forEach(({ part, tools }, i) => {
  say({ begun: i });
  const cut = { op: 'cut', from: part, tools } as const;
  const all = { op: 'joined', of: tools } as const;
  const whole = kernel.volume(part);
  const rest = kernel.volume(cut);
  const taken = kernel.overlap(part, all).volume; // by another route: the tools joined first
  const mirrored = kernel.volume({
    op: 'placed',
    by: {
      rotation: [
        [-1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      origin: [5, 0, 0],
    },
    of: cut,
  });
  const mesh = kernel.mesh(cut);
  say({
    done: i,
    whole,
    rest,
    off: Math.max(Math.abs(whole - rest - taken), Math.abs(mirrored - rest)),
    lumps: kernel.lumps(cut),
    triangles: mesh.triangles.length / 3,
  });
});
kernel.dispose();
say({ handles: kernel.handles() });
