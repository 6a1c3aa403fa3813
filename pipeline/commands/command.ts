import type { ArgsDef, CommandDef } from 'citty';
import type { Terminal } from './terminal.ts';

/** Values of a command's arguments, by name. */
export type Values = Readonly<Record<string, string | boolean | undefined>>;

/** A command: its definition, from which help and parsing come, and what it does. `run` gives the exit code where it is not 0. */
export interface Command {
  definition: CommandDef<ArgsDef>;
  /** Whether words may follow its positional arguments; they come as `more`. */
  takesMore?: boolean;
  run(values: Values, terminal: Terminal, more?: readonly string[]): Promise<number | undefined>;
}

/** Wrong usage: exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

export const FOLDER_ARGUMENT = {
  type: 'positional',
  description: 'Folder with the exports; file patterns of the site file start here',
  default: '.',
} as const;

export const SITE_ARGUMENT = {
  type: 'string',
  valueHint: 'FILE',
  description: 'Site file; left out: site.yaml in the folder',
} as const;

export const JSON_ARGUMENT = {
  type: 'boolean',
  description: 'Print the answer as JSON, for programs',
} as const;

export const THREADS_ARGUMENT = {
  type: 'string',
  valueHint: 'N',
  description: 'Threads to work with; left out: as many as the machine has cores. The answer is the same',
} as const;

export const HISTORY_ARGUMENT = {
  type: 'string',
  valueHint: 'FOLDER',
  description:
    'Folder in which what was read is kept as columns, so that the next run reads only files that are new or changed; "none": nothing is kept',
} as const;
