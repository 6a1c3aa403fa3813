import { isNode, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import { UserError } from '../user-error.ts';
import { checkReferences } from './check-references.ts';
import { prepareSite, type Site } from './site.ts';
import { siteFileSchema } from './site-schema.ts';

/**
 * Reads a site file: YAML text in, a site ready for use out.
 *
 * @param text the file's text
 * @param name the file's name as the user knows it, for messages
 * @throws UserError `site_file` with one line for each fault: file, line, place, what was found and what was expected
 */
export function readSiteFile(text: string, name: string): Site {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const syntax = document.errors[0];
  if (syntax) {
    const { line, col } = lines.linePos(syntax.pos[0]);
    throw new UserError(
      'site_file',
      `${name} line ${line}, column ${col}: can't be read as YAML: ${syntax.message}`,
    );
  }
  const lineOf = (path: readonly PropertyKey[]): number => {
    for (let length = path.length; length >= 0; length--) {
      const node = document.getIn(path.slice(0, length) as string[], true);
      if (isNode(node) && node.range) {
        const key = length > 0 ? keyOffset(document, path.slice(0, length)) : undefined;
        return lines.linePos(key ?? node.range[0]).line;
      }
    }
    return 1;
  };
  const fail = (faults: { path: readonly PropertyKey[]; message: string }[]): never => {
    const rows = faults.map(
      ({ path, message }) => `${name} line ${lineOf(path)}, ${placeOf(path)}: ${message}`,
    );
    throw new UserError('site_file', [...new Set(rows)].join('\n'));
  };

  const parsed = siteFileSchema.safeParse(document.toJS() ?? {}, { reportInput: true });
  if (!parsed.success) return fail(parsed.error.issues.flatMap((issue) => describeIssue(issue)));
  const faults = checkReferences(parsed.data);
  if (faults.length > 0) return fail(faults);
  return prepareSite(parsed.data);
}

function placeOf(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'top level';
  return path
    .map((part) => (typeof part === 'number' ? `[${part + 1}]` : String(part)))
    .join('.')
    .replaceAll('.[', '[');
}

/** Offset of the key of a pair, so that a message names the line of the key and not of a block that starts below it. */
function keyOffset(
  document: ReturnType<typeof parseDocument>,
  path: readonly PropertyKey[],
): number | undefined {
  const parent = document.getIn(path.slice(0, -1) as string[], true);
  if (parent === null || typeof parent !== 'object' || !('items' in parent)) return undefined;
  for (const item of parent.items as { key?: unknown }[]) {
    const key = item.key;
    if (isNode(key) && 'value' in key && String(key.value) === String(path.at(-1))) return key.range?.[0];
  }
  return undefined;
}

function describeIssue(issue: z.core.$ZodIssue): { path: PropertyKey[]; message: string }[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      path: [...issue.path, key],
      message: `must be a key of the site file, found "${key}"`,
    }));
  }
  if (issue.code === 'invalid_union') {
    // The union's members are told apart by their form; the faults of the nearest member say more than "invalid input".
    const nearest = issue.errors.toSorted((a, b) => depth(b) - depth(a))[0] ?? [];
    return nearest.flatMap((inner) =>
      describeIssue({ ...inner, path: [...issue.path, ...inner.path] } as z.core.$ZodIssue),
    );
  }
  return [{ path: issue.path, message: `${expectedBy(issue)}, found ${foundBy(issue)}` }];
}

/** What the schema wanted, in words. */
function expectedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${KINDS[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return `must be ${issue.values.map(String).join(' or ')}`;
    case 'too_small':
      return `must be ${issue.inclusive === false ? 'above' : 'at least'} ${issue.minimum}${LENGTHS[issue.origin] ?? ''}`;
    case 'too_big':
      return `must be ${issue.inclusive === false ? 'below' : 'at most'} ${issue.maximum}${LENGTHS[issue.origin] ?? ''}`;
    default:
      return issue.message;
  }
}

const KINDS: Record<string, string> = {
  array: 'a list',
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'keys with values',
  record: 'names with values',
};
const LENGTHS: Record<string, string> = { array: ' long', string: ' characters long' };

function foundBy(issue: z.core.$ZodIssue): string {
  const { input } = issue;
  if (input === undefined || input === null) return 'nothing';
  const text = typeof input === 'object' ? JSON.stringify(input) : String(input);
  const cut = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return typeof input === 'string' ? `"${cut}"` : cut;
}

const depth = (issues: readonly { path: PropertyKey[] }[]): number =>
  Math.max(0, ...issues.map((issue) => issue.path.length));
