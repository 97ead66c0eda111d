import { readFileSync } from 'node:fs';
import { runChecks, type Checked } from '../../src/checks/index.js';
import type { Check, CheckInput } from '../../src/checks/check.js';
import { readDefinition } from '../../src/definition/read.js';
import type { Diagnostic } from '../../src/diag/diagnostic.js';
import { createKernel } from '../../src/geom/kernel.js';
import { makeLists } from '../../src/making/making.js';
import { resolvePiece } from '../../src/piece/resolve.js';
import { makeSolids } from '../../src/solids/make.js';
import { season } from '../../src/wood/moisture.js';

const PIECE = {
  title: 'Trial',
  number: 'T-1',
  revision: 'A',
  date: '2027-02-01',
  client: 'sample',
  maker: 'sample',
};

/** A definition as an object, with a heading filled in, through reader, graph and solids. Throws with what is wrong. */
export async function inputOf(def: object | string): Promise<CheckInput> {
  const text = typeof def === 'string' ? def : JSON.stringify({ format: 1, piece: PIECE, units: 'in', ...def });
  const reading = readDefinition(text, 'trial.jsonc');
  const { value } = reading;
  const piece = value && resolvePiece(value).value;
  if (!value || !piece)
    throw new Error(JSON.stringify([reading.findings, value && resolvePiece(value).findings], null, 1));
  const kernel = await createKernel();
  try {
    const solids = makeSolids(piece, kernel);
    if (!solids.value) throw new Error(JSON.stringify(solids.findings));
    const volumes = solids.value.parts.map(({ id, volume }) => ({ id, volume }));
    const at = season(value.room, value.shop?.moisture, value.units);
    const making = makeLists(piece, volumes).value;
    if (!making) throw new Error('no lists');
    return { piece, solids: solids.value, making, season: at };
  } finally {
    kernel.dispose();
  }
}
export const shippedInput = (name: string): Promise<CheckInput> =>
  inputOf(readFileSync(new URL(`../../templates/pieces/${name}.jsonc`, import.meta.url), 'utf8'));

export interface Ran {
  readonly checked: Checked;
  readonly findings: readonly Diagnostic[];
}
/** One check over a piece, folded as the stage folds it. */
export function ran(check: Check, input: CheckInput): Ran {
  const { value, findings } = runChecks(input, [check]);
  if (!value) throw new Error('no checks');
  return { checked: value, findings };
}
