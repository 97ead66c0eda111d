// What every bench needs. Wall time is what a maker waits; processor time hardly changes when others use the machine.
import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';

export const median = (xs) => [...xs].sort((a, b) => a - b)[Math.floor(xs.length / 2)] ?? 0;
export const least = (xs) => Math.min(...xs);
export const ms = (x) => `${x.toFixed(0)} ms`;
/** Load of the machine, to be named beside every figure. */
export const load = () => `load ${loadavg()[0].toFixed(1)}`;

/** Processor time of this process so far, all threads, ms. */
export const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
/** Runs a program `times` times: wall time (ms) of each run, and its greatest memory (MB) where Linux tells it. */
export function runs(times, program, args) {
  const walls = [];
  const peaks = [];
  for (let i = 0; i < times; i += 1) {
    const from = performance.now();
    // GNU time tells the memory of a child; without it, wall time alone.
    const timed = spawnSync('/usr/bin/time', ['-f', '%M', program, ...args], { encoding: 'utf8' });
    const done = timed.error ? spawnSync(program, args, { encoding: 'utf8' }) : timed;
    walls.push(performance.now() - from);
    if (done.status !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${done.status}\n${done.stderr}`);
    const peak = timed.error ? NaN : Number(done.stderr.trim().split('\n').at(-1)) / 1024;
    if (Number.isFinite(peak)) peaks.push(peak);
  }
  return { walls, peaks };
}
