import type { Node } from 'jsonc-parser';
import type { JsonPath } from '../diag/diagnostic.js';
import type { Location } from '../diag/print.js';

/** Offsets of the first character of every line. */
function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (const m of text.matchAll(/\r\n|\r|\n/g)) starts.push(m.index + m[0].length);
  return starts;
}

/** Turns character offsets into a stretch of one line; a range over several lines ends with its first. */
export function offsetLocator(text: string): (from: number, to: number) => Location {
  const starts = lineStarts(text);
  return (from, to) => {
    let line = 0;
    let high = starts.length - 1;
    while (line < high) {
      const mid = Math.ceil((line + high) / 2);
      if ((starts[mid] as number) <= from) line = mid;
      else high = mid - 1;
    }
    const start = starts[line] as number;
    const lineText = text.slice(start, starts[line + 1] ?? text.length).replace(/[\r\n]+$/, '');
    const column = from - start + 1;
    const endColumn = Math.max(column + 1, Math.min(to - start, lineText.length) + 1);
    return { line: line + 1, column, endColumn, lineText };
  };
}

/** Properties of large objects by key, found once; of a key given twice the last. */
const properties = new WeakMap<Node, ReadonlyMap<unknown, Node>>();
export function propertyOf(node: Node, key: string): Node | undefined {
  if (node.type !== 'object') return undefined;
  let known = properties.get(node);
  if (known === undefined) {
    known = new Map((node.children ?? []).map((p) => [p.children?.[0]?.value, p]));
    properties.set(node, known);
  }
  return known.get(key);
}

/** The node at a path as far as it exists, with the property that holds it and how many steps were found. */
export function nodeAt(
  root: Node,
  path: JsonPath,
): { readonly node: Node; readonly property?: Node; readonly steps: number } {
  let node = root;
  let property: Node | undefined;
  for (const [i, step] of path.entries()) {
    const holder = typeof step === 'string' ? propertyOf(node, step) : undefined;
    const next =
      typeof step === 'number' ? (node.type === 'array' ? node.children?.[step] : undefined) : holder?.children?.[1];
    if (next === undefined) return { node, ...(property ? { property } : {}), steps: i };
    node = next;
    property = holder;
  }
  return { node, ...(property ? { property } : {}), steps: path.length };
}

/** Offset in the file of character `index` of a string node's value (escapes take more than one character). */
export function insideString(text: string, node: Node, index: number): number {
  let at = node.offset + 1;
  const end = node.offset + node.length - 1;
  for (let i = 0; i < index && at < end; i += 1) at += text[at] !== '\\' ? 1 : text[at + 1] === 'u' ? 6 : 2;
  return at;
}

/** A list or an object up to this long is underlined whole, characters (our default); of a longer one its key. */
const SHORT = 32;

/**
 * Finds paths in a file. What is not in it (it came from the definition it starts from) is shown at the nearest entry
 * that is, or at the value of "from".
 */
export function pathLocator(text: string, root: Node | undefined) {
  const at = offsetLocator(text);
  return (path: JsonPath, key = false, span?: readonly [number, number]): Location => {
    if (root === undefined) return at(0, 0);
    const found = nodeAt(root, path);
    if (found.steps < Math.min(2, path.length)) {
      const from = propertyOf(root, 'from')?.children?.[1];
      if (from !== undefined) return at(from.offset, from.offset + from.length);
    }
    const whole = found.steps === path.length;
    const { node, property } = found;
    const name = property?.children?.[0];
    const bulky = (node.type === 'object' || node.type === 'array') && node.length > SHORT;
    if (name !== undefined && (key || !whole || bulky)) return at(name.offset, name.offset + name.length);
    if (span !== undefined && whole && node.type === 'string') {
      const from = insideString(text, node, span[0]);
      return at(from, Math.max(from + 1, insideString(text, node, span[1])));
    }
    // the whole file, or an entry of a list: its opening bracket
    return at(node.offset, bulky || path.length === 0 ? node.offset + 1 : node.offset + node.length);
  };
}
