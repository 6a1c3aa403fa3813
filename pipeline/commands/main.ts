import { type ArgsDef, parseArgs } from 'citty';
import { UserError } from '../user-error.ts';
import { VERSION } from '../version.ts';
import { checkCommand } from './check.ts';
import { type Command, UsageError, type Values } from './command.ts';
import { tuneEngine } from './engine-settings.ts';
import { heapFor } from './heap-needed.ts';
import { helpText } from './help-text.ts';
import { intervalCommand } from './interval.ts';
import { learnCommand } from './learn.ts';
import { reviewCommand } from './review.ts';
import { isSiteBySite } from './site-by-site/read-site-by-site.ts';
import { templatesCommand } from './templates.ts';
import { processTerminal, type Terminal } from './terminal.ts';
import { watchCommand } from './watch.ts';

export const COMMANDS: Record<string, Command> = {
  review: reviewCommand,
  check: checkCommand,
  interval: intervalCommand,
  learn: learnCommand,
  watch: watchCommand,
  templates: templatesCommand,
};

export const PROGRAM = {
  meta: {
    name: 'cleaning-evidence',
    version: VERSION,
    description:
      'Turns the records of steam sterilizers into a monthly review: was cleaning done, do failures rise after missed cleanings, which unit needs attention. It never releases a load.',
  },
  subCommands: Object.fromEntries(
    Object.entries(COMMANDS).map(([name, command]) => [name, command.definition]),
  ),
};

/** Runs the program with its arguments. Exit codes: 0 done, 1 the user must act, 2 wrong usage; a bug keeps its stack. */
export async function main(argv: readonly string[], terminal: Terminal = processTerminal()): Promise<void> {
  tuneEngine();
  process.exitCode = await run(argv, terminal);
}

/** The heap, in MB, with which the program should be started anew, since its folder of exports is too large for this one; else undefined. */
export async function largerHeap([name, ...rest]: readonly string[]): Promise<number | undefined> {
  const command = name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  const args = command?.definition.args as ArgsDef | undefined;
  if (args?.folder?.type !== 'positional') return undefined;
  try {
    const { values } = valuesOf(args, rest, true);
    return await heapFor(String(values.folder), () => isSiteBySite(values));
  } catch (error) {
    // Wrong usage is said when the program runs.
    if (error instanceof UsageError) return undefined;
    throw error;
  }
}

/** The program as a function: arguments in, exit code out. */
export async function run(argv: readonly string[], terminal: Terminal): Promise<number> {
  try {
    const [name, ...rest] = argv;
    if (name === '--version') {
      terminal.print(VERSION);
      return 0;
    }
    if (name === undefined || name === '--help' || name === '-h') {
      terminal.print(await helpText(PROGRAM));
      return name === undefined ? 2 : 0;
    }
    const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (!command)
      throw new UsageError(`The command must be one of ${Object.keys(COMMANDS).join(', ')}, found "${name}"`);
    if (rest.includes('--help') || rest.includes('-h')) {
      terminal.print(await helpText(command.definition, PROGRAM));
      return 0;
    }
    const { values, more } = valuesOf(command.definition.args as ArgsDef, rest, command.takesMore === true);
    return (await command.run(values, terminal, more)) ?? 0;
  } catch (error) {
    terminal.progressDone();
    if (error instanceof UsageError) {
      terminal.printError(`${error.message}\nSee cleaning-evidence --help.`);
      return 2;
    }
    if (error instanceof UserError) {
      terminal.printError(error.hint ? `${error.message}\n${error.hint}` : error.message);
      return 1;
    }
    throw error;
  }
}

/** Parses arguments strictly: an option that the command does not have is wrong usage, not ignored. */
function valuesOf(
  definitions: ArgsDef,
  argv: string[],
  takesMore: boolean,
): { values: Values; more: string[] } {
  for (const word of argv) {
    const option = /^--([^=]+)/.exec(word)?.[1] ?? /^-(.+)/.exec(word)?.[1];
    if (
      option !== undefined &&
      (!Object.hasOwn(definitions, option) || definitions[option]!.type === 'positional')
    ) {
      throw new UsageError(`The option must be one of ${optionNames(definitions)}, found "${word}"`);
    }
  }
  const parsed = parseArgs(argv, definitions);
  const positionals = Object.values(definitions).filter(
    (definition) => definition.type === 'positional',
  ).length;
  if (parsed._.length > positionals && !takesMore)
    throw new UsageError(`There is one argument too many: "${parsed._.at(-1)}"`);
  for (const [name, definition] of Object.entries(definitions)) {
    if (definition.type === 'string' && argv.some((word) => word === `--${name}`) && parsed[name] === '') {
      throw new UsageError(`--${name} must be followed by a value`);
    }
  }
  return { values: parsed as unknown as Values, more: parsed._.slice(positionals) };
}

const optionNames = (definitions: ArgsDef): string =>
  Object.entries(definitions)
    .flatMap(([name, definition]) => (definition.type === 'positional' ? [] : [`--${name}`]))
    .join(', ');
