import { describe, expect, it } from 'vitest';
import { exampleSite, inchBox, inchSized } from '../../src/joints/example.js';
import { JOINTS, jointKind } from '../../src/joints/index.js';
import type { JointKind, Resolved, Site } from '../../src/joints/joint.js';
import { inches, toIn } from '../../src/lengths/length.js';
import type { BoxCut, TenonCut } from '../../src/words/cut.js';

const L = (x: number): ReturnType<typeof inchSized> => inchSized(String(x), x);
const kindOf = (name: string): JointKind => {
  const kind = jointKind(name);
  if (!kind) throw new Error(name);
  return kind;
};
const found = (name: string, spec: Resolved, site?: Site) => {
  const kind = kindOf(name);
  return kind.resolve(spec, site ?? exampleSite(kind.example.site, { material: name === 'rabbet' ? 'sheet' : 'solid' }))
    .findings;
};

/** Each spec asks of the kind's example for something that cannot be; the rule that forbids it is in the second column. */
describe.each([
  ['dado', 'dado-too-deep', { depth: L(0.5) }, '1/2 of 3/4'],
  ['dado', 'dado-too-narrow', { width: L(0.625) }, '5/8 for a 3/4 shelf'],
  ['dado', 'no-tongue-left', { from: 'top', stop: L(10.75) }, 'stops 1/4 after it begins'],
  ['groove', 'groove-too-deep', { depth: L(0.375) }, '3/8 of 1/2'],
  ['groove', 'groove-too-narrow', { width: L(0.1875) }, '3/16 for a 1/4 panel'],
  ['groove', 'panel-out', { slack: L(0.25) }, 'all of the groove left free'],
  ['half-blind-dovetail', 'no-lap', { length: L(0.5) }, 'as long as the wood is thick'],
  ['half-blind-dovetail', 'no-tails', { pitch: L(5) }, 'less than one pitch'],
  ['mortise-and-tenon', 'tenon-too-long', { length: L(1), depth: L(0.875) }, 'longer than its mortise'],
  ['mortise-and-tenon', 'mortise-floor', { depth: L(1.4375) }, '1/16 left of 1 1/2'],
  ['mortise-and-tenon', 'no-tenon', { shoulders: [L(1.5), L(1.5)] }, 'shoulders as wide as the rail'],
  ['mortise-and-tenon', 'mortise-outside', { offset: L(0.5), thickness: L(1) }, 'past the face of the leg'],
  ['rabbet', 'rabbet-on', { on: L(19) }, 'as wide as the side'],
  ['rabbet', 'panel-out', { slack: L(0.375) }, 'all of the rabbet left free'],
  ['sliding-dovetail', 'no-neck', { depth: L(1.1) }, 'deeper than the cutter can'],
  ['sliding-dovetail', 'no-tail-left', { from: 'top', stop: L(2.25) }, 'stop leaves 1/4 of the tail'],
  ['through-dovetail', 'no-pins', { tails: 30 }, 'tails run into each other'],
  ['screw', 'screw-unread', { screw: 'long ones' }, 'no gauge'],
  ['screw', 'screw-unread', { screw: '#7 x 1' }, 'no such gauge in the table'],
  ['screw', 'screw-short', { screw: '#8 x 3/4' }, 'as long as the rail is thick'],
  ['screw', 'screw-through', { screw: '#8 x 1 3/4' }, '1 in into 7/8'],
  ['screw', 'screw-sink', { sink: L(0.75) }, 'head sunk right through'],
  ['screw', 'screw-outside', { at: [L(2), L(34.25)] }, 'at the very end of a contact 34 1/4 long'],
  ['screw', 'screw-places', { at: [L(2)], count: 3 }, 'places and a number'],
] as const)('%s: %s', (name, code, spec, _why) => {
  it('is refused with where and what', () => {
    const hit = found(name, spec as Resolved).find((f) => f.code === code);
    expect(hit?.severity).toBe('error');
    expect(hit?.path.slice(0, 2)).toEqual(['joints', 'sample']);
    expect(hit?.touches).toContain('entering');
  }, 5000);
});

describe('sides that a joint cannot lie on', () => {
  it.each([
    ['sliding-dovetail', 'from', 'left', 'bottom', 'top'],
    ['dado', 'from', 'front', 'bottom', 'top'],
    ['half-blind-dovetail', 'from', 'top', 'front', 'back'],
    ['rabbet', 'edge', 'top', 'front', 'back'],
    ['edge-halving', 'slot', 'top', 'left', 'right'],
  ])('%s: %s "%s" offers "%s" or "%s"', (name, field, face, a, b) => {
    const [hit] = found(name, { [field]: face });
    expect(hit).toMatchObject({ code: 'joint-side', path: ['joints', 'sample', field], hint: `Say "${a}" or "${b}".` });
  });
});

describe('staves', () => {
  it('sheet goods, and grain across the width, are refused', () => {
    const { site } = kindOf('edge').example;
    expect(found('edge', {}, exampleSite(site, { material: 'sheet' })).map((f) => f.code)).toEqual(['staves-sheet']);
    const across = { ...site, entering: { ...site.entering, grain: 0 as const } };
    expect(found('edge', {}, exampleSite(across)).map((f) => f.code)).toEqual(['staves-grain']);
  });
});

describe('haunch', () => {
  const kind = kindOf('mortise-and-tenon');
  const site = (up: number): Site =>
    exampleSite({
      entering: { box: inchBox([-11.5, 0], [0, 0.75], [0, 3]), grain: 0 },
      receiving: { box: inchBox([0, 1.5], [-0.375, 1.125], [-20, 3 + up]), grain: 2 },
    });
  const cuts = (spec: Resolved, s: Site) => {
    const g = kind.give(kind.resolve(spec, s).r, s);
    return { mortises: g.receiving as BoxCut[], tenon: g.entering[0] as TenonCut };
  };
  it('comes of itself where the rail is flush with the end of the leg; without a groove a third of the tenon is notched for it', () => {
    const { mortises, tenon } = cuts({}, site(0));
    expect(mortises.map((m) => m.as)).toEqual(['mortise', 'notch']);
    expect(Math.abs(toIn(tenon.tongues[1]?.length ?? 0) - 1.0625 / 3)).toBeLessThan(1 / 128 + 1e-9); // on the step of 1/64
    expect(mortises[0]?.at[2][1]).toBe(inches(2.25));
  });
  it('none in the middle of a leg, nor when it is refused: the shoulder stays', () => {
    expect(cuts({}, site(4)).tenon.tongues).toHaveLength(1);
    const plain = cuts({ haunch: false }, site(0));
    expect(plain.mortises).toHaveLength(1);
    expect(plain.mortises[0]?.at[2][1]).toBe(inches(2.25));
  });
});

it('every finding code is a plain word-chain, and kinds are listed by name', () => {
  expect(JOINTS.map((k) => k.kind)).toEqual([...JOINTS.map((k) => k.kind)].sort());
  for (const k of JOINTS) expect(k.kind).toMatch(/^[a-z]+(-[a-z]+)*$/);
});

it.each(JOINTS.filter((k) => k.leans !== true).map((k) => [k.kind, k] as const))(
  '%s: a leaning part is refused, not cut as if it were square',
  (_, kind) => {
    const site = { ...exampleSite(kind.example.site), lean: 7.5 };
    const codes = kind.resolve(kind.example.spec, site).findings.map((f) => f.code);
    expect(codes).toContain('joint-leans');
  },
);
