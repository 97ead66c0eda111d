import { didYouMean as nearest } from '../diag/didYouMean.js';

/** `Did you mean "x"?`, or a short list of what there is. */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  if (near !== undefined) return `Did you mean "${near}"?`;
  const list = [...known].sort().slice(0, 8).join(', ');
  return list === '' ? 'There is none yet.' : `There is: ${list}${known.length > 8 ? ' …' : ''}.`;
}
