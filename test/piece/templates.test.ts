import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { resolvePiece } from '../../src/piece/resolve.js';

const folder = 'templates/pieces';
const names = readdirSync(folder).filter((n) => /\.jsonc?$/.test(n));

describe.each(names)('%s', (name) => {
  const text = readFileSync(`${folder}/${name}`, 'utf8');
  const def = readDefinition(text, name, { shipped: () => undefined }).value;
  if (!def) throw new Error(`${name} cannot be read`);
  const { value: piece, findings } = resolvePiece(def);

  it('is settled without an error or a warning', () => {
    expect(findings.filter((f) => f.severity !== 'note')).toEqual([]);
  });
  it('has unique ids, marks and cut ids, and joints between parts that are there', () => {
    if (!piece) throw new Error('no piece');
    const once = (list: readonly string[]) => expect(list.length).toBe(new Set(list).size);
    once(piece.parts.map((p) => p.id));
    once(piece.parts.map((p) => p.mark));
    once(piece.joints.map((j) => j.id));
    once(piece.hardware.map((h) => h.id));
    for (const p of piece.parts) once(p.cuts.map((c) => c.id));
    const ids = new Set(piece.parts.map((p) => p.id));
    for (const j of piece.joints) expect([ids.has(j.entering), ids.has(j.receiving)]).toEqual([true, true]);
    for (const p of piece.parts)
      for (const other of [p.turnOf, p.mirrorOf]) if (other !== undefined) expect(ids.has(other)).toBe(true);
  });
  it('keeps every cut within reach of its blank, in whole nanometres', () => {
    for (const p of piece?.parts ?? [])
      for (const c of p.cuts)
        if (c.shape === 'box')
          c.at.forEach((s, a) => {
            expect(s.every(Number.isInteger)).toBe(true);
            expect(s[1]).toBeGreaterThan(s[0]);
            expect(s[1]).toBeGreaterThan(-(p.growth[a]?.[0] ?? 0));
            expect(s[0]).toBeLessThan((p.size[a]?.value ?? 0) + (p.growth[a]?.[1] ?? 0));
          });
  });
  it('does not depend on the order in which parts are written', () => {
    const turned = { ...def, parts: Object.fromEntries(Object.entries(def.parts).reverse()) };
    const other = resolvePiece(turned).value;
    const boxes = (p: typeof piece) =>
      p?.parts.map((x) => [x.id, x.place.origin, x.size.map((s) => s.value), x.growth]);
    expect(boxes(other)).toEqual(boxes(piece));
  });
});
