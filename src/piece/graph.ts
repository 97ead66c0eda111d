import type { JsonPath } from '../diag/diagnostic.js';
import type { Sized } from '../value/sized.js';
import type { Findings } from './fault.js';

/** Most sizes that wait for one another at one time (our default): what is written in order never comes near it. */
const LONGEST_CHAIN = 400;

interface Node {
  readonly path: JsonPath;
  readonly make: () => Sized | undefined;
}

/**
 * The one graph of a piece: every figure is a node with a name (`W`, `rail_1.top`, `rail_1.up.size`), worked out the first
 * time it is asked for. A node that cannot be worked out is `undefined`, and what is made from it stays silent, so that one
 * slip gives one message. A node that needs itself is a cycle, printed as a chain.
 */
export class Graph {
  private readonly nodes = new Map<string, Node>();
  private readonly values = new Map<string, Sized | undefined>();
  private readonly stack: string[] = [];

  constructor(private readonly findings: Findings) {}

  define(name: string, path: JsonPath, make: () => Sized | undefined): void {
    this.nodes.set(name, { path, make });
  }
  has(name: string): boolean {
    return this.nodes.has(name);
  }
  get(name: string): Sized | undefined {
    if (this.values.has(name)) return this.values.get(name);
    const node = this.nodes.get(name);
    if (!node) return undefined;
    if (this.stack.includes(name)) {
      this.tellCycle(this.stack.slice(this.stack.indexOf(name)));
      return undefined;
    }
    if (this.stack.length >= LONGEST_CHAIN) {
      this.findings.error(
        'chain-too-long',
        node.path,
        `"${name}" is the end of a chain of more than ${LONGEST_CHAIN} sizes that wait for one another.`,
        'Write first what the others are measured from, or measure from nearer by.',
      );
      return undefined;
    }
    this.stack.push(name);
    const value = node.make();
    this.stack.pop();
    this.values.set(name, value);
    return value;
  }
  /** Every name that has been worked out, with its figure, by name. */
  all(): Readonly<Record<string, Sized>> {
    const out: Record<string, Sized> = {};
    for (const name of [...this.values.keys()].sort()) {
      const value = this.values.get(name);
      if (value) out[name] = value;
    }
    return out;
  }

  /** Told once a cycle: the chain begins at the first of its names by spelling, whichever was asked for first. */
  private tellCycle(ring: readonly string[]): void {
    const typed = ring.filter((n) => (this.nodes.get(n)?.path.length ?? 0) > 0).sort();
    const first = typed[0] ?? ring[0] ?? '';
    const k = ring.indexOf(first);
    const turned = [...ring.slice(k), ...ring.slice(0, k), first];
    this.findings.error(
      'cycle',
      this.nodes.get(first)?.path ?? [],
      `These sizes wait for each other: ${turned.join(' -> ')}.`,
      'Give one of them a figure, or a measure, instead of the other’s face.',
    );
  }
}
