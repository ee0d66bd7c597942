import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import about from '../../package.json' with { type: 'json' };
import type { CalcOptions } from './calc.js';
import type { CheckOptions } from './check.js';
import type { ExplainOptions } from './explain.js';
import type { FormatOptions } from './format.js';
import { EXIT, WrongUse } from './exit.js';
import { Faults } from './faults.js';
import { CALC_FORMATS, CHECK_FORMATS, FAIL_ON, UNITS } from './options.js';
import type { Terminal } from './terminal.js';

/** Follows a command line; the exit code. Commands are loaded when they are called for. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  let exit: number = EXIT.clean;
  const program = commands(terminal, code => {
    exit = code;
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return exit;
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.code === 'commander.unknownCommand' && /[./]/.test(args[0]))
        terminal.complain(`To check it: wattwright check ${args[0]}\n`);
      return error.exitCode === 0 ? EXIT.clean : EXIT.wrongUse;
    }
    if (error instanceof WrongUse) {
      terminal.complain(`wattwright: ${error.message}\n`);
      return EXIT.wrongUse;
    }
    const faults = new Faults(terminal);
    faults.add(error, `wattwright ${args[0] ?? ''}`.trim());
    return faults.close(exit);
  }
}

function commands(terminal: Terminal, done: (exit: number) => void): Command {
  const program = new Command('wattwright')
    .description('Checks and computes all-electric retrofits of houses that are written in .house files.')
    .version(about.version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: terminal.print,
      writeErr: terminal.complain,
      getOutHelpWidth: () => terminal.columns,
      getErrHelpWidth: () => terminal.columns,
    });

  program
    .command('check')
    .description('tell what is wrong with houses: their writing, their heat, air, circuits, service and plan')
    .argument('[paths...]', 'files, folders, patterns, or - for standard input (default: the current folder)')
    .addOption(choice('--format <format>', 'how findings are written', CHECK_FORMATS, 'text'))
    .addOption(choice('--fail-on <severity>', 'exit with 1 from this severity on', FAIL_ON, 'error'))
    .option('--date <date>', 'the day that counts as today, as YYYY-MM-DD', date)
    .option('--output <file>', 'write to a file and print the count alone')
    .option('--stdin-filename <file>', 'the name of what comes by standard input')
    .addHelpText(
      'after',
      examples('check', ['samples', '--format json house.house', '--fail-on warning "plans/*.house"']),
    )
    .action(async (paths: string[], options: CheckOptions) => {
      const { check } = await import('./check.js');
      done(await check(paths, options, terminal));
    });

  program
    .command('calc')
    .description('compute the named results of houses, stage by stage')
    .argument('[paths...]', 'files, folders, patterns, or - for standard input (default: the current folder)')
    .option('--stage <name>', 'this stage alone, today for the house as it is; may be repeated', gathered)
    .option('--result <pattern>', 'results of this name, such as heating.* or main.*; may be repeated', gathered)
    .option('--all', 'every result, not the headline ones alone')
    .option('--worksheet', 'print how each result is computed, with its sources')
    .addOption(choice('--format <format>', 'how results are written', CALC_FORMATS, 'table'))
    .addOption(new Option('--units <system>', 'units of the results (default: as the project says)').choices(UNITS))
    .option('--date <date>', 'the day that counts as today, as YYYY-MM-DD', date)
    .option('--output <file>', 'write to a file')
    .option('--stdin-filename <file>', 'the name of what comes by standard input')
    .addHelpText(
      'after',
      examples('calc', [
        'samples',
        '--stage heat --result "heating.*" --worksheet house.house',
        '--all --format csv --output results.csv plans',
      ]),
    )
    .action(async (paths: string[], options: CalcOptions) => {
      const { calc } = await import('./calc.js');
      done(await calc(paths, options, terminal));
    });

  program
    .command('format')
    .description('set files in order: indentation, blanks, tables; what they mean stays the same')
    .argument('[paths...]', 'files, folders, patterns, or - to read standard input and print it in order')
    .option('--check', 'change nothing: list the files that are not in order, and exit with 1')
    .option('--stdin-filename <file>', 'the name of what comes by standard input')
    .addHelpText('after', examples('format', ['plans', '--check .', '- < house.house']))
    .action(async (paths: string[], options: FormatOptions) => {
      const { format } = await import('./format.js');
      done(await format(paths, options, terminal));
    });

  program
    .command('explain')
    .description('explain a finding, a result, a block or a property, by its name or by what people call it')
    .argument('[words...]', 'such as heat/no-heat, heating.design-load, auxiliary.output, heat strip')
    .option('--in <file>', 'print the worksheet of the result in this house')
    .option('--stage <name>', 'the worksheet of this stage alone; may be repeated', gathered)
    .addOption(new Option('--units <system>', 'units of the worksheet').choices(UNITS))
    .addHelpText(
      'after',
      examples('explain', ['service/overloaded', 'EVEMS', 'heating.worst-margin --in house.house --stage heat']),
    )
    .action(async (words: string[], options: ExplainOptions) => {
      const { explain } = await import('./explain.js');
      done(await explain(words, options, terminal));
    });

  program
    .command('lsp')
    .description('run the language server on standard input and output, for an editor')
    .option('--stdio', 'the same; editors like to say it')
    .action(async () => {
      const { lsp } = await import('./lsp.js');
      await lsp();
    });

  return program.addHelpText('after', EXIT_CODES);
}

const EXIT_CODES = `
Exit codes: 0 clean, 1 findings at or above --fail-on, 2 wrong use, 3 an internal fault`;

const examples = (command: string, lines: readonly string[]): string =>
  `\nExamples:\n${lines.map(line => `  wattwright ${command} ${line}`).join('\n')}`;

const choice = (flags: string, description: string, of: readonly string[], otherwise: string): Option =>
  new Option(flags, description).choices(of).default(otherwise);

const gathered = (one: string, before: readonly string[] = []): readonly string[] => [...before, one];

function date(text: string): string {
  const day = new Date(`${text}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(text) || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text)
    throw new InvalidArgumentError('A day is written YYYY-MM-DD.');
  return text;
}
