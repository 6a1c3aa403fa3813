import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { templateFiles } from '../templates/write-templates.ts';
import { UserError } from '../user-error.ts';
import type { Command } from './command.ts';
import { writeFolder } from './write-files.ts';

/** Writes blank record sheets for sites that have only paper. */
export const templatesCommand: Command = {
  definition: {
    meta: {
      name: 'templates',
      description:
        'Write blank record sheets for sites that have only paper: cleaning log, air-removal and leak test log, inspection sheet, action list; to print, and as CSV and XLSX files that are read without any mapping.',
    },
    args: {
      out: {
        type: 'string',
        valueHint: 'FOLDER',
        description: 'Folder to write; it must not exist yet, since it may hold sheets that were filled in',
        default: 'record-sheets',
      },
    },
  },
  run: async (values, terminal) => {
    const out = String(values.out);
    if (await stat(out).catch(() => undefined))
      throw new UserError(
        'folder_exists',
        `${out}: must not exist yet`,
        'Say another name with --out, or move it away: it may hold sheets that were filled in.',
      );
    await writeFolder(out, await templateFiles());
    terminal.print(
      `${resolve(out)}\n  print  pages to print and fill in by hand\n  xlsx, csv  the same sheets to type into\nPut the files that you filled in among your exports, under their names (more may follow the name, as in cleanings-2026-09.csv), then run: cleaning-evidence check FOLDER`,
    );
    return undefined;
  },
};
