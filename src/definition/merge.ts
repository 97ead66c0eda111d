import type { JsonPath } from '../diag/diagnostic.js';
import type { Json } from './json.js';
import { isObject } from './json.js';

/** Values that say one thing together: a new one takes the place of the old one whole. */
const WHOLE = new Set(['across', 'deep', 'up', 'stand', 'span', 'turn', 'dovetailBit']);
/** A field that says what kind of thing an entry is: another kind takes the place of the old entry whole. */
const KINDS = ['kind', 'lumber', 'sheet'];

/**
 * `own` laid over `base`: objects are merged key by key, lists and extents replaced, `null` takes an entry away.
 * `nothing` is called for each null that takes away what is not there.
 */
export function merged(base: Json, own: Json, nothing: (path: JsonPath) => void, path: JsonPath = []): Json {
  if (!isObject(base) || !isObject(own)) return own;
  if (path.length === 2 && KINDS.some((k) => k in own && own[k] !== base[k] && !(path[0] === 'runs'))) return own;
  if (path.length === 1 && path[0] === 'room' && otherSort(base, own)) return own;
  const out: Record<string, Json> = { ...base };
  for (const [key, value] of Object.entries(own)) {
    const at = [...path, key];
    if (value === null) {
      if (!Object.hasOwn(base, key)) nothing(at);
      delete out[key];
    } else if (Object.hasOwn(base, key) && !WHOLE.has(key) && path[0] !== 'measures' && !isMaterials(path)) {
      out[key] = merged(base[key] as Json, value, nothing, at);
    } else out[key] = value;
  }
  return out;
}
/** Under these a wood or a panel is one entry: its source speaks for all of its figures. */
const isMaterials = (path: JsonPath): boolean =>
  path.length === 2 && path[0] === 'shop' && (path[1] === 'woods' || path[1] === 'panels');
/** A room by its region takes the place of one by its humidity, and the other way about. */
const otherSort = (base: object, own: object): boolean =>
  ('region' in own && 'humidity' in base) || ('humidity' in own && 'region' in base);
