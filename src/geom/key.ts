import { createHash } from 'node:crypto';
import type { Recipe } from './recipe.js';

const KEYS = new WeakMap<Recipe, string>();
const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 24);
/** JSON with -0 written as 0; recipes hold arrays and numbers only, in a fixed order. */
const text = (value: unknown): string => JSON.stringify(value, (_k, v: unknown) => (v === 0 ? 0 : v));

function content(recipe: Recipe): string {
  switch (recipe.op) {
    case 'box':
      return `box ${text(recipe.at)}`;
    case 'prism': {
      const outlines = recipe.outlines.map((o) => o.map((s) => [s.to, s.bulge ?? 0]));
      return `prism ${text([recipe.axis, recipe.from, recipe.to, outlines])}`;
    }
    case 'hull':
      return `hull ${text(recipe.points)}`;
    case 'turned':
      return `turned ${text([recipe.axis, recipe.centre, recipe.profile])}`;
    case 'placed':
      return `placed ${text([recipe.by.rotation, recipe.by.origin])} ${keyOf(recipe.of)}`;
    case 'cut':
      return `cut ${[recipe.from, ...recipe.tools].map(keyOf).join(' ')}`;
    case 'joined':
    case 'met':
      return `${recipe.op} ${recipe.of.map(keyOf).join(' ')}`;
  }
}
/** Content key of a recipe: recipes of equal content share it (first 96 bits of SHA-256). */
export function keyOf(recipe: Recipe): string {
  const known = KEYS.get(recipe);
  if (known !== undefined) return known;
  const key = hash(content(recipe));
  KEYS.set(recipe, key);
  return key;
}
