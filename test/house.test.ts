import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript-api';
import { describe, expect, it } from 'vitest';

/** The rules of the house, read off the syntax trees: who may import whom, where impure things live, how long things are. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const src = join(root, 'src');
const LEAVES = ['lengths', 'diag', 'value', 'geom', 'type', 'data', 'wood', 'shop', 'words', 'joints', 'components'];
const STAGES = ['definition', 'piece', 'solids', 'layout', 'making', 'checks', 'cost', 'drawings', 'report', 'proof'];
const IMPURE = ['io', 'batch', 'main.ts', 'run.ts'];

interface Import {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}
interface Unit {
  readonly file: string;
  readonly room: string;
  readonly tree: ts.SourceFile;
  readonly lines: number;
  readonly imports: readonly Import[];
}

const walk = (dir: string): string[] =>
  readdirSync(dir)
    .sort()
    .flatMap((name) => {
      const path = join(dir, name);
      return statSync(path).isDirectory() ? walk(path) : path.endsWith('.ts') ? [path] : [];
    });
const roomOf = (file: string): string => file.split('/')[0] as string;

function readUnit(path: string): Unit {
  const file = relative(src, path).replaceAll('\\', '/');
  const text = readFileSync(path, 'utf8');
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const imports: Import[] = [];
  const add = (specifier: string, typeOnly: boolean): void => {
    const to = specifier.startsWith('.')
      ? posix.join(posix.dirname(file), specifier).replace(/\.js$/, '.ts')
      : specifier;
    imports.push({ from: file, to, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      const clause = node.importClause;
      const named = clause?.namedBindings;
      const allTyped =
        clause?.isTypeOnly === true ||
        (clause !== undefined &&
          !clause.name &&
          named !== undefined &&
          ts.isNamedImports(named) &&
          named.elements.length > 0 &&
          named.elements.every((e) => e.isTypeOnly));
      add((node.moduleSpecifier as ts.StringLiteral).text, allTyped);
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
      add((node.moduleSpecifier as ts.StringLiteral).text, node.isTypeOnly);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const first = node.arguments[0];
      if (first && ts.isStringLiteral(first)) add(first.text, false);
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return { file, room: roomOf(file), tree, lines: text.split('\n').length - 1, imports };
}
const units = walk(src).map(readUnit);
const local = units.flatMap((u) => u.imports.filter((i) => units.some((v) => v.file === i.to)));

describe('imports', () => {
  it('a leaf imports only leaves below it', () => {
    const wrong = local.filter((i) => {
      const a = LEAVES.indexOf(roomOf(i.from));
      const b = LEAVES.indexOf(roomOf(i.to));
      return a >= 0 && (b < 0 || b > a);
    });
    expect(wrong).toEqual([]);
  });
  it('a stage takes only types from earlier stages, and nothing from later ones', () => {
    const wrong = local.filter((i) => {
      const a = STAGES.indexOf(roomOf(i.from));
      const b = STAGES.indexOf(roomOf(i.to));
      return a >= 0 && b >= 0 && a !== b && (b > a || !i.typeOnly);
    });
    expect(wrong).toEqual([]);
  });
  it('joints and components are used by definition and piece alone', () => {
    const wrong = local.filter(
      (i) =>
        (i.to.startsWith('joints/') || i.to.startsWith('components/')) &&
        !i.typeOnly &&
        !['joints', 'components', 'definition', 'piece', 'run.ts'].includes(roomOf(i.from)),
    );
    expect(wrong).toEqual([]);
  });
  it('proof takes nothing from joints or solids but types', () => {
    expect(local.filter((i) => i.from.startsWith('proof/') && !i.typeOnly && /^(joints|solids)\//.test(i.to))).toEqual(
      [],
    );
  });
  it('nothing pure imports io', () => {
    expect(local.filter((i) => i.to.startsWith('io/') && !IMPURE.includes(roomOf(i.from)))).toEqual([]);
  });
  it('no import cycles', () => {
    const edges = new Map<string, string[]>();
    for (const i of local) if (!i.typeOnly) edges.set(i.from, [...(edges.get(i.from) ?? []), i.to]);
    const state = new Map<string, 'open' | 'done'>();
    const cycles: string[] = [];
    const go = (file: string, chain: readonly string[]): void => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') {
        cycles.push([...chain.slice(chain.indexOf(file)), file].join(' -> '));
        return;
      }
      state.set(file, 'open');
      for (const to of edges.get(file) ?? []) go(to, [...chain, file]);
      state.set(file, 'done');
    };
    for (const u of units) go(u.file, []);
    expect(cycles).toEqual([]);
  });
  it.each([
    ['manifold-3d', 'geom/kernel.ts'],
    ['pdf-lib', 'report/pdf.ts'],
    ['svgdom', 'report/svg.ts'],
    ['@svgdotjs/svg.js', 'report/svg.ts'],
  ])('%s is known to one file only', (library, file) => {
    const users = units.filter((u) =>
      u.imports.some((i) => (i.to === library || i.to.startsWith(`${library}/`)) && !i.typeOnly),
    );
    expect(users.map((u) => u.file)).toEqual([file]);
  });
});

describe('purity', () => {
  it('the clock, chance, the console, the process and the disk stay outside the pure rooms', () => {
    const wrong: string[] = [];
    for (const u of units.filter((v) => !IMPURE.includes(v.room))) {
      for (const i of u.imports)
        if (/^(node:)?(fs|child_process|os|worker_threads|process)/.test(i.to)) wrong.push(`${u.file}: ${i.to}`);
      const visit = (node: ts.Node): void => {
        if (ts.isIdentifier(node) && ['process', 'console', 'Date'].includes(node.text) && isFree(node))
          wrong.push(`${u.file}: ${node.text}`);
        if (ts.isPropertyAccessExpression(node) && node.getText(u.tree) === 'Math.random')
          wrong.push(`${u.file}: Math.random`);
        ts.forEachChild(node, visit);
      };
      visit(u.tree);
    }
    expect(wrong).toEqual([]);
  });
});

/** A name used as a global: not a property, a key, a declaration or a type member. */
function isFree(node: ts.Identifier): boolean {
  const p = node.parent;
  if (ts.isPropertyAccessExpression(p) && p.name === node) return false;
  return !(ts.isPropertyAssignment(p) && p.name === node) && !ts.isPropertySignature(p) && !ts.isVariableDeclaration(p);
}

describe('size', () => {
  it('no file over 600 lines', () => {
    expect(units.filter((u) => u.lines > 600).map((u) => `${u.file}: ${u.lines}`)).toEqual([]);
  });
  it('no function over 100 lines', () => {
    const long: string[] = [];
    for (const u of units) {
      const visit = (node: ts.Node): void => {
        if (ts.isFunctionLike(node) && 'body' in node && node.body) {
          const a = u.tree.getLineAndCharacterOfPosition(node.getStart(u.tree)).line;
          const b = u.tree.getLineAndCharacterOfPosition(node.getEnd()).line;
          if (b - a + 1 > 100) long.push(`${u.file}:${a + 1}: ${b - a + 1}`);
        }
        ts.forEachChild(node, visit);
      };
      visit(u.tree);
    }
    expect(long).toEqual([]);
  });
});

describe('families', () => {
  it('a joint is named by its file, and nothing outside joints/ compares a kind by name', () => {
    const kinds = units.filter((u) => /^joints\/[a-z-]+\.ts$/.test(u.file)).map((u) => u.file.slice(7, -3));
    const wrong: string[] = [];
    for (const u of units.filter((v) => !['joints', 'components', 'definition'].includes(v.room))) {
      const visit = (node: ts.Node): void => {
        if (
          ts.isStringLiteral(node) &&
          kinds.includes(node.text) &&
          node.text.includes('-') &&
          ts.isBinaryExpression(node.parent)
        )
          wrong.push(`${u.file}: ${node.text}`);
        ts.forEachChild(node, visit);
      };
      visit(u.tree);
    }
    expect(wrong).toEqual([]);
  });
});
