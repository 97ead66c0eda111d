import type { EachFault } from '../lengths/each.js';
import { MOST_EACH } from '../lengths/each.js';
import type { Diagnostic, JsonPath } from './diagnostic.js';
import { diagnose } from './messages.js';

/** What is wrong with an `each`, as findings at the stretch of its text. */
export const eachFindings = (faults: readonly EachFault[], path: JsonPath): Diagnostic[] =>
  faults.map(({ code, at, found }) => {
    const where = { path, span: at };
    if (code === 'each-letter-twice') return diagnose(code, where, { letter: found });
    return code === 'each-range' ? diagnose(code, where, { found, most: MOST_EACH }) : diagnose(code, where, { found });
  });
