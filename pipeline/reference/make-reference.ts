import { z } from 'zod';
import { helpText } from '../commands/help-text.ts';
import { COMMANDS, PROGRAM } from '../commands/main.ts';
import { reviewSchema } from '../findings/review-schema.ts';
import { PROBLEM_CODES } from '../ingest/reading.ts';
import { DEFAULT_ABORT_TEXTS } from '../site/abort-texts.ts';
import { recordFields } from '../site/records.ts';
import { siteFileSchema } from '../site/site-schema.ts';
import { RECORD_KINDS } from '../site/vocabulary.ts';
import { unitDaySchema } from '../transform/panel/unit-day.ts';
import { describeSchema } from './describe-schema.ts';
import { librariesPage } from './libraries-page.ts';
import { methodsPage } from './methods-page.ts';

const MADE =
  'Made from the source by `npm run reference`; a test says when it is stale. Edit the source, not this file.';

/** The reference pages and schemas, made from the definitions: file name to content. */
export async function makeReference(): Promise<Record<string, string>> {
  return {
    'site-file.md': siteFilePage(),
    'records.md': recordsPage(),
    'commands.md': await commandsPage(),
    'methods.md': methodsPage(MADE),
    'libraries.md': await librariesPage(MADE),
    'site.schema.json': json(z.toJSONSchema(siteFileSchema, { io: 'input' })),
    'review.schema.json': json(z.toJSONSchema(reviewSchema)),
  };
}

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
const cell = (text: string): string =>
  text.replaceAll('|', '\\|').replaceAll('\t', '\\t').replace(/\s+/g, ' ');
const table = (head: string[], rows: string[][]): string =>
  [head, head.map(() => '---'), ...rows.map((row) => row.map(cell))]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n');

function siteFilePage(): string {
  const parts = describeSchema(siteFileSchema).map(({ path, description, rows }) => {
    const body = table(
      ['key', 'holds', 'needed', 'default', 'meaning'],
      rows.map((row) => [
        `\`${row.key}\``,
        row.holds,
        row.required ? 'yes' : '',
        row.standard,
        row.description,
      ]),
    );
    return `## ${path === '' ? 'Top level' : path}\n\n${description ? `${description}.\n\n` : ''}${body}`;
  });
  const texts = table(
    ['abort text contains', 'class'],
    DEFAULT_ABORT_TEXTS.map((row) => [row.contains, `\`${row.class}\``]),
  );
  return `# The site file\n\n${MADE}\n\nYAML. The smallest one is \`sites: [{ zone: Europe/Berlin }]\`. An editor that knows JSON Schema checks it as you type: \`site.schema.json\` beside this page.\n\n${parts.join('\n\n')}\n\n## Default table of abort texts\n\nThe first row that fits rules; the rows of \`rules.abort_texts\` come before these. Text that no row fits is listed in the review as unclassified.\n\n${texts}\n`;
}

function recordsPage(): string {
  const kinds = RECORD_KINDS.map((kind) => {
    const rows = recordFields(kind).map(({ name, required, meta, schema }) => {
      const words =
        'options' in schema ? (schema.options as string[]).map((word) => `\`${word}\``).join(', ') : '';
      const description = (meta as unknown as { description: string }).description;
      return [
        `\`${name}\``,
        required ? 'yes' : '',
        meta.holds.replaceAll('_', ' '),
        meta.measure ?? '',
        words ? `${description}: ${words}` : description,
      ];
    });
    return `## ${kind}\n\n${table(['field', 'needed', 'holds', 'unit of measure in the record', 'meaning'], rows)}`;
  });
  const panel = table(
    ['column', 'meaning'],
    Object.entries(unitDaySchema.shape).map(([name, schema]) => [
      `\`${name}\``,
      (schema as z.ZodType).description ?? '',
    ]),
  );
  const codes = table(
    ['code', 'meaning'],
    Object.entries(PROBLEM_CODES).map(([code, meaning]) => [`\`${code}\``, meaning]),
  );
  return `# Records, panel and problem codes\n\n${MADE}\n\nEvery record also carries where it came from: source, file, sheet, row. No column that isn't mapped is kept. Where the site file declares no units, a unit is called as a cleaning policy spells it, else as it is spelled first in order of source, file and row: letter case, runs of blanks and the way in which accents are encoded make no other unit.\n\n${kinds.join('\n\n')}\n\n## The unit-day panel\n\nOne row for each day of use of a unit; all statistics read it.\n\n${panel}\n\n## Problem codes\n\nEach row of an export ends as a record, a duplicate, a skipped row or a problem; \`costs\` says whether a problem cost the file, the row, a cell, or the place in the review of a row that became a record.\n\n${codes}\n`;
}

async function commandsPage(): Promise<string> {
  const parts = await Promise.all(
    Object.entries(COMMANDS).map(
      async ([name, command]) =>
        `## ${name}\n\n\`\`\`text\n${await helpText(command.definition, PROGRAM)}\n\`\`\``,
    ),
  );
  return `# Commands\n\n${MADE}\n\nExit codes: 0 done, 1 the user must act, 2 wrong usage. A finding is not an error.\n\n${parts.join('\n\n')}\n`;
}
