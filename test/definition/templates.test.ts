import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.js';
import { printDiagnostics } from '../../src/diag/print.js';

const folder = new URL('../../templates/pieces/', import.meta.url);
const files = readdirSync(folder)
  .filter((f) => /\.jsonc?$/.test(f))
  .sort();

test.each(files)('%s is read without a finding', (file) => {
  const { findings, locate, value } = readDefinition(readFileSync(new URL(file, folder), 'utf8'), file);
  expect(printDiagnostics(findings, locate, file)).toBe('');
  expect(value?.format).toBe(1);
});
