import { readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describeProposal } from '../learn/describe-proposal.ts';
import { learn } from '../learn/learn.ts';
import { type Proposal, SITE_CHOICES } from '../learn/proposal.ts';
import { openQuestions } from '../learn/questions.ts';
import { loadVocabulary } from '../learn/vocabulary.ts';
import { writeSiteFile } from '../learn/write-site-file.ts';
import { isZone } from '../site/wall-clock.ts';
import { UserError } from '../user-error.ts';
import { type Command, UsageError } from './command.ts';
import { quoted } from './find-inputs.ts';
import type { Terminal } from './terminal.ts';

/** Looks at exports that nobody has described yet and writes the site file that reads them, with everything uncertain marked. */
export const learnCommand: Command = {
  definition: {
    meta: {
      name: 'learn',
      description:
        'Look at exports and write a site file that reads them. Asks only what the files can’t tell; everything uncertain is marked in the file.',
    },
    args: {
      folder: {
        type: 'positional',
        description: 'Folder with the exports or a file of them; there may be several, separated by blanks',
        default: '.',
      },
      yes: {
        type: 'boolean',
        description: 'Ask nothing: what is open stays marked as open in the site file',
      },
      out: {
        type: 'string',
        valueHint: 'FILE',
        description:
          'Site file to write; left out: site.yaml in the folder. A file that exists is not overwritten',
      },
      zone: {
        type: 'string',
        valueHint: 'ZONE',
        description: 'Time zone of the clocks in the files, such as Europe/Berlin',
      },
      sites: {
        type: 'string',
        valueHint: 'HOW',
        description:
          'Whether the files are of one site (one) or of several that are told apart by folder, by a column or by the names of units (folder, column, names); left out: a question where it may be so',
      },
      words: {
        type: 'string',
        valueHint: 'FILE',
        description: 'Words of your own, in the form of the vocabularies; left out: words.yaml in the folder',
      },
    },
  },
  takesMore: true,
  run: async (values, terminal, more = []) => {
    const given = [String(values.folder), ...more];
    const { folder, only } = await placesOf(given);
    const sites = values.sites === undefined ? undefined : SITE_CHOICES.find((one) => one === values.sites);
    if (values.sites !== undefined && sites === undefined)
      throw new UsageError(`--sites must be one of ${SITE_CHOICES.join(', ')}, found "${values.sites}"`);
    if (values.zone !== undefined && !isZone(String(values.zone)))
      throw new UsageError(
        `--zone must be a time zone by its IANA name like Europe/Berlin, found "${values.zone}"`,
      );
    const out = values.out === undefined ? path.join(folder, 'site.yaml') : String(values.out);
    if (await stat(out).catch(() => undefined))
      throw new UserError(
        'file_exists',
        `${out}: must not exist yet`,
        'Say another name with --out, or move it away: it may hold your own changes.',
      );
    const learned = await learn(folder, {
      vocabulary: loadVocabulary(await ownWords(values.words as string | undefined, folder)),
      ignore: [out, path.join(folder, 'site.yaml'), path.join(folder, 'words.yaml')],
      only,
      sites,
      zone: values.zone as string | undefined,
      onProgress: (line) => terminal.progress(line),
    });
    terminal.progressDone();
    if (learned.sources.length === 0) {
      const [first] = learned.left;
      throw new UserError(
        'nothing_learned',
        `${given.join(', ')}: must hold a table of records that are known, found none${first ? `; ${first.file} ${first.why}` : ''}`,
      );
    }
    terminal.print(describeProposal(learned));
    const proposal = values.yes ? learned : await askAll(learned, terminal);
    await writeFile(out, writeSiteFile(proposal), { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
      throw new UserError('not_writable', `${out}: must be a place that can be written (${error.code})`);
    });
    const open = openQuestions(proposal).length;
    terminal.print(
      `\nWrote ${out}. ${open === 0 ? 'Look at the lines marked "likely"' : `${open} open: search for "? open" in it`}, then run: cleaning-evidence check ${quoted(folder)}`,
    );
    return undefined;
  },
};

/**
 * The folder that holds all that is given, at which the site file's patterns start, and the places in it; all of it where one folder is given.
 *
 * @throws UserError `no_folder` where there is no such file or folder
 */
async function placesOf(
  given: readonly string[],
): Promise<{ folder: string; only: readonly string[] | undefined }> {
  const places = await Promise.all(
    given.map(async (name) => {
      const found = await stat(name).catch(() => undefined);
      if (!found)
        throw new UserError('no_folder', `${name}: must be a folder or file with exports, found nothing`);
      return { name: path.resolve(name), isFolder: found.isDirectory() };
    }),
  );
  const [first] = places;
  if (places.length === 1 && first!.isFolder) return { folder: given[0]!, only: undefined };
  let folder = places.length === 1 ? path.dirname(first!.name) : first!.name;
  const holds = (name: string): boolean =>
    name === folder || name.startsWith(folder.replace(/[\\/]?$/, path.sep));
  while (!places.every(({ name, isFolder }) => holds(name) && (isFolder || name !== folder)))
    folder = path.dirname(folder);
  const only = places.map(({ name }) => path.relative(folder, name).split(path.sep).join('/'));
  return {
    folder: path.relative('.', folder) === '' ? '.' : shortOf(folder),
    only: only.includes('') ? undefined : only,
  };
}

/** As it may be typed: relative where that does not climb. */
function shortOf(folder: string): string {
  const relative = path.relative('.', folder);
  return relative.startsWith('..') ? folder : relative;
}

/** Asks one question after the other; an empty answer leaves it open. Where nobody can be asked, all stay open. */
async function askAll(learned: Proposal, terminal: Terminal): Promise<Proposal> {
  if (!terminal.ask) return learned;
  let proposal = learned;
  const skipped = new Set<string>();
  for (;;) {
    const question = openQuestions(proposal).find(({ about }) => !skipped.has(about));
    if (!question) return proposal;
    const options = question.options.map((option, index) => `\n  ${index + 1} ${option}`).join('');
    const said = await terminal.ask(`${question.text}${options}\n(empty: leave it open) > `);
    if (said === undefined) return proposal;
    if (said.trim() === '') skipped.add(question.about);
    else {
      const next = question.answer(proposal, said.trim());
      // "none" and "unknown" may leave the question open by intent: it is not asked again.
      if (next) skipped.add(question.about);
      else terminal.printError(`"${said.trim()}" must be one of the choices`);
      proposal = next ?? proposal;
    }
  }
}

async function ownWords(
  file: string | undefined,
  folder: string,
): Promise<{ text: string; name: string } | undefined> {
  const name = file ?? path.join(folder, 'words.yaml');
  const text = await readFile(name, 'utf8').catch(() => undefined);
  if (text === undefined && file !== undefined)
    throw new UserError('no_words', `${file}: must be a file that can be read`);
  return text === undefined ? undefined : { text, name };
}
