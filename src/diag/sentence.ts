/**
 * Words as a sentence: a capital when they begin with a plain word (a name or a figure keeps its spelling), and a full
 * stop when `stop` and none of . ? ! ends them.
 */
export function sentence(text: string, stop = true): string {
  const plain = /^[a-z]+(?=[ ,;:])/.test(text);
  const whole = plain ? text.charAt(0).toUpperCase() + text.slice(1) : text;
  return stop && !/[.?!]$/.test(whole) ? `${whole}.` : whole;
}
