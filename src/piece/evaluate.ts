import type { Length_ } from '../definition/definition.js';
import type { JsonPath } from '../diag/diagnostic.js';
import { nameHint } from '../diag/didYouMean.js';
import type { Face } from '../geom/axis.js';
import { FACES } from '../geom/axis.js';
import type { Found, Reference } from '../lengths/evaluate.js';
import { evaluateExpr, referenceName } from '../lengths/evaluate.js';
import type { SyntaxFault } from '../lengths/expression.js';
import { formatLength } from '../lengths/format.js';
import type { Length, Units } from '../lengths/length.js';
import { parseExpression } from '../lengths/parse.js';
import type { Sized } from '../value/sized.js';
import type { Findings } from './fault.js';
import type { Graph } from './graph.js';

/** The fault of a name whose own figure could not be worked out: already told where it stands, so not told again. */
const TOLD = 'told-elsewhere';

/** Works out length expressions against the graph's names and the faces of parts. */
export class Evaluator {
  constructor(
    readonly graph: Graph,
    readonly units: Units,
    private readonly findings: Findings,
    /** Ids of the measures and of the parts, for a helpful message. */
    private readonly measures: readonly string[],
    private readonly parts: ReadonlySet<string>,
    /** Why a part has no faces square to the piece (it leans), where that is so. */
    private readonly leaning: ReadonlySet<string> = new Set(),
    /** Parts that could not be settled: told already, so what is measured from them is silent. */
    private readonly lost: ReadonlySet<string> = new Set(),
  ) {}

  /** A length in the words of this file, for messages. */
  say(value: number): string {
    return `${formatLength(value, this.units)}${this.units === 'mm' ? ' mm' : ' in'}`;
  }

  /**
   * The length of an expression with its history. `bare`: the face that a bare part id stands for here. Undefined when it
   * cannot be worked out (then it has been told).
   */
  length(text: Length_, path: JsonPath, bare?: Face): Sized | undefined {
    const typed = typeof text === 'number' ? plainNumber(text) : text;
    const read = parseExpression(typed);
    if ('fault' in read) return this.tell(read.fault, path);
    const names = new Map<string, string>();
    const done = evaluateExpr(read.tree, this.units, (r) => this.find(r, bare, names));
    if ('fault' in done) return this.tell(done.fault, path);
    const inputs = done.inputs.map((i) => ({ name: names.get(i.name) ?? i.name, value: i.value }));
    return {
      value: done.value,
      how: inputs.length === 0 ? 'given' : 'derived',
      rule: typed,
      ...(inputs.length === 0 ? {} : { inputs }),
      path,
    };
  }

  private find(r: Reference, bare: Face | undefined, names: Map<string, string>): Found {
    const name = referenceName(r);
    const part = r.kind === 'face' ? r.part : r.name;
    if (this.leaning.has(part)) return this.leaningFace(part, r.kind === 'face' ? r.face : bare, names, name);
    if (this.lost.has(part)) return { fault: { code: TOLD, message: '' } };
    if (r.kind === 'face') return this.face(r.part, r.face);
    const [head, face] = r.name.split('.');
    if (face !== undefined && this.parts.has(head ?? '') && !this.graph.has(r.name)) return this.face(head ?? '', face);
    if (!this.parts.has(r.name)) return this.node(name, () => this.unknown(r.name, [...this.measures, ...this.parts]));
    if (bare === undefined)
      return {
        fault: {
          code: 'which-face',
          message: `which face of ${name} is meant?`,
          hint: `Write ${name}.left, ${name}.top or another face.`,
        },
      };
    const bareFace = `${name}.${bare}`;
    names.set(name, bareFace);
    return this.node(bareFace, () => undefined);
  }

  /** Of a part that leans only an end that lies level can be measured from. */
  private leaningFace(part: string, face: string | undefined, names: Map<string, string>, typed: string): Found {
    const level = `${part}.${face ?? ''}`;
    if (this.graph.has(level)) {
      names.set(typed, level);
      return this.node(level, () => undefined);
    }
    const ends = this.graph.has(`${part}.top`);
    return {
      fault: {
        code: 'face-leans',
        message: `${part} leans, so it has no ${face ?? 'face'} to measure from`,
        hint: `Measure from ${ends ? `${part}.top or ${part}.bottom, which are level, or from ` : ''}a part that stands square.`,
      },
    };
  }

  private face(part: string, face: string): Found {
    if (!this.parts.has(part)) return this.unknown(part, [...this.parts]);
    if (!(FACES as readonly string[]).includes(face))
      return {
        fault: { code: 'face-unknown', message: `${part} has no face "${face}"`, hint: nameHint(face, FACES) },
      };
    return this.node(`${part}.${face}`, () => undefined);
  }

  private node(name: string, missing: () => Found): Found {
    if (!this.graph.has(name)) return missing();
    const value: { readonly value: Length } | undefined = this.graph.get(name);
    return value ?? { fault: { code: TOLD, message: '' } };
  }

  private unknown(name: string, known: readonly string[]): Found {
    return { fault: { code: 'name-unknown', message: `there is no "${name}"`, hint: nameHint(name, known) } };
  }

  private tell(fault: SyntaxFault, path: JsonPath): undefined {
    if (fault.code === TOLD) return undefined;
    this.findings.add({
      code: fault.code,
      severity: 'error',
      path,
      span: fault.at,
      message: sentence(fault.message),
      ...(fault.hint === undefined ? {} : { hint: sentence(fault.hint) }),
    });
    return undefined;
  }
}

/** A JSON number without an exponent. */
const plainNumber = (n: number): string => (Number.isInteger(n) ? String(n) : n.toFixed(9).replace(/0+$/, ''));
const sentence = (text: string): string => {
  const whole = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!…]$/.test(whole) ? whole : `${whole}.`;
};
