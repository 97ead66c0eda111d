import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript-api';

/** Functions that take the code of a finding among their arguments. */
const TELLERS = new Set(['error', 'warn', 'note', 'fault', 'finding', 'diagnostic', 'stop', 'diagnose', 'tell']);
const KEBAB = /^(cycle|[a-z]+(-[a-z0-9]+)+)$/;
/** Words that stand beside a code in the same calls. */
const SEVERITIES = new Set(['error', 'warning', 'note']);

export interface Use {
  readonly code: string;
  /** `piece/meetings.ts:45`. */
  readonly where: string;
  readonly room: string;
}
const files = (dir: string): string[] =>
  readdirSync(dir)
    .sort()
    .flatMap((name) => {
      const path = join(dir, name);
      return statSync(path).isDirectory() ? files(path) : path.endsWith('.ts') ? [path] : [];
    });

/** Every code that the program can give, read off its syntax trees. */
export function codesIn(src: string): readonly Use[] {
  const out: Use[] = [];
  for (const path of files(src)) {
    const file = relative(src, path).replaceAll('\\', '/');
    const tree = ts.createSourceFile(file, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2022, true);
    const take = (node: ts.Expression): void => {
      if (ts.isConditionalExpression(node)) {
        take(node.whenTrue);
        take(node.whenFalse);
      } else if (ts.isStringLiteral(node) && !SEVERITIES.has(node.text)) {
        const line = tree.getLineAndCharacterOfPosition(node.getStart(tree)).line + 1;
        out.push({ code: node.text, where: `${file}:${line}`, room: file.split('/')[0] as string });
      }
    };
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyAssignment(node) && node.name.getText(tree) === 'code') take(node.initializer);
      if (ts.isCallExpression(node)) {
        const called = ts.isPropertyAccessExpression(node.expression) ? node.expression.name : node.expression;
        const first = node.arguments.slice(0, 3).find((a) => isCode(a));
        if (ts.isIdentifier(called) && TELLERS.has(called.text) && first) take(first);
      }
      ts.forEachChild(node, visit);
    };
    visit(tree);
  }
  return out;
}
const isCode = (a: ts.Expression): boolean =>
  ts.isConditionalExpression(a)
    ? isCode(a.whenTrue) && isCode(a.whenFalse)
    : ts.isStringLiteral(a) && KEBAB.test(a.text) && !SEVERITIES.has(a.text);
