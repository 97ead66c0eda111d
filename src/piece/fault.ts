import type { Diagnostic, JsonPath, Severity } from '../diag/diagnostic.js';

/** What is found while a piece is resolved: kept in the order found, each only once. */
export class Findings {
  readonly list: Diagnostic[] = [];
  private readonly seen = new Set<string>();

  add(d: Diagnostic): void {
    const key = `${d.code}|${d.path.join('/')}|${d.message}`;
    if (this.seen.has(key)) return;
    this.seen.add(key);
    this.list.push(d);
  }
  error(code: string, path: JsonPath, message: string, hint?: string, touches?: readonly string[]): void {
    this.add(diagnostic('error', code, path, message, hint, touches));
  }
  warn(code: string, path: JsonPath, message: string, hint?: string, touches?: readonly string[]): void {
    this.add(diagnostic('warning', code, path, message, hint, touches));
  }
  note(code: string, path: JsonPath, message: string, touches?: readonly string[]): void {
    this.add(diagnostic('note', code, path, message, undefined, touches));
  }
}

export function diagnostic(
  severity: Severity,
  code: string,
  path: JsonPath,
  message: string,
  hint?: string,
  touches?: readonly string[],
): Diagnostic {
  return {
    code,
    severity,
    path,
    message,
    ...(hint === undefined ? {} : { hint }),
    ...(touches === undefined ? {} : { touches }),
  };
}
