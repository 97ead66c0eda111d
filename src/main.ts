#!/usr/bin/env node
import { readFileSync } from 'node:fs';

/** Exit codes: 0 sound, 1 the piece is at fault, 2 usage or file trouble, 70 our own bug. */
type Format = 'text' | 'json';
const formatOption = {
  format: { choices: ['text', 'json'] as const, default: 'text' as Format, describe: 'how findings are printed' },
};
const shopOption = {
  shop: { type: 'string' as const, describe: 'the file of the shop: machines, clamps, woods of its own' },
};
const boardsOption = {
  boards: { type: 'string' as const, describe: 'the file of the boards there are, JSON or CSV' },
};
const EXAMPLE = `benchpacket turns a definition of a piece of furniture into its shop packet.

  benchpacket new nightstand my-nightstand.jsonc
  benchpacket build my-nightstand.jsonc --out out
`;

/**
 * The help as yargs prints it, kept as a text: yargs takes longer to load than all else that help needs. `npm run help`
 * writes it, and a test compares.
 */
const HELP = new URL('../templates/help.txt', import.meta.url);
function keptHelp(argv: readonly string[]): string | undefined {
  if (argv.length > 1 || (argv.length === 1 && argv[0] !== '--help')) return undefined;
  try {
    return readFileSync(HELP, 'utf8');
  } catch {
    return undefined;
  }
}

async function main(argv: readonly string[]): Promise<number> {
  const help = keptHelp(argv);
  if (help !== undefined) {
    process.stdout.write(help);
    return 0;
  }
  const { default: yargs } = await import('yargs');
  let code: Promise<number> = Promise.resolve(0);
  const start = (job: () => Promise<number>): void => {
    code = job();
  };
  const commands = (): Promise<typeof import('./batch/commands.js')> => import('./batch/commands.js');
  const parser = yargs([...argv])
    .scriptName('benchpacket')
    .usage(EXAMPLE)
    .command(
      'build <file..>',
      'build the shop packet of each definition',
      (y) =>
        y
          .positional('file', { type: 'string', array: true, demandOption: true })
          .option('out', { type: 'string', default: 'out', describe: 'folder for the packets' })
          .option('solids', { type: 'boolean', default: false, describe: 'write each part as STL too' })
          .option('effort', { type: 'number', default: 1, describe: 'how much longer to look for a better layout' })
          .option('fonts', { type: 'boolean', default: false, describe: 'write the typeface into each SVG' })
          .options(shopOption)
          .options(boardsOption)
          .options(formatOption),
      (a) => start(async () => (await commands()).build(a.file, a)),
    )
    .command(
      'check <file..>',
      'say what is wrong with each definition, and write nothing',
      (y) =>
        y
          .positional('file', { type: 'string', array: true, demandOption: true })
          .options(shopOption)
          .options(boardsOption)
          .options(formatOption),
      (a) => start(async () => (await commands()).check(a.file, a)),
    )
    .command(
      'explain <file> <id..>',
      'say how a figure came about: a part, id.face, a measure, a check, a code, "code of part"',
      (y) =>
        y
          .positional('file', { type: 'string', demandOption: true })
          .positional('id', { type: 'string', array: true, demandOption: true })
          .options(shopOption)
          .options(formatOption),
      (a) => start(async () => (await commands()).explainValue(a.file, a.id.join(' '), a)),
    )
    .command(
      'new <template> <file>',
      'start a definition from a shipped one',
      (y) =>
        y
          .positional('template', { type: 'string', demandOption: true })
          .positional('file', { type: 'string', demandOption: true }),
      (a) => start(async () => (await commands()).newFrom(a.template, a.file)),
    )
    .command('templates', 'list the shipped definitions', {}, () =>
      start(async () => (await commands()).listTemplates()),
    )
    .command(
      'schema [of]',
      'print the JSON Schema of a definition, a shop or boards',
      (y) => y.positional('of', { choices: ['piece', 'shop', 'boards'] as const, default: 'piece' as const }),
      (a) => start(async () => (await commands()).printSchema(a.of)),
    )
    .locale('en')
    .wrap(80)
    .strict()
    .recommendCommands()
    .demandCommand(0)
    .version()
    .exitProcess(false)
    .fail((message, error) => {
      throw error ?? new UsageError(message);
    });
  if (argv.length === 0) {
    parser.showHelp((text) => process.stdout.write(`${text}\n`));
    return 0;
  }
  await parser.parseAsync();
  return code;
}

class UsageError extends Error {}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const usage = error instanceof UsageError;
    const text = error instanceof Error ? (usage ? error.message : (error.stack ?? error.message)) : String(error);
    process.stderr.write(
      usage ? `benchpacket: ${text}\nbenchpacket --help shows how.\n` : `benchpacket: our own bug: ${text}\n`,
    );
    process.exitCode = usage ? 2 : 70;
  },
);
