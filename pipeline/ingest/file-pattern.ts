/**
 * Turns a file pattern into a test of relative paths with forward slashes.
 *
 * `*` stands for any run of characters inside one name, `**` as a whole name for any number of folders (none too), `?` for one character; the
 * rest stands for itself. Letter case is not told apart, so that a pattern means the same files on each system. A leading wildcard does not match a
 * leading dot. A pattern that starts at the root or climbs with `..` matches nothing, since paths below the folder never look so.
 */
export function filePattern(pattern: string): (path: string) => boolean {
  const names = pattern
    .replaceAll('\\', '/')
    .replace(/^(\.\/)+/, '')
    .split('/');
  const source = names
    .map((name, index) => {
      const last = index === names.length - 1;
      if (name === '**') return last ? '(?:(?!\\.)[^/]+/)*(?!\\.)[^/]+' : '(?:(?!\\.)[^/]+/)*';
      return nameSource(name) + (last ? '' : '/');
    })
    .join('');
  const expression = new RegExp(`^${source}$`, 'iu');
  return (path) => expression.test(path.normalize('NFC'));
}

/** The one part of a name that the single `*` of the pattern stands for; undefined where the name doesn't match. */
export function partOfName(pattern: string): (name: string) => string | undefined {
  const [before = '', ...rest] = pattern.split('*');
  if (rest.length === 0) return () => undefined;
  const expression = new RegExp(`^${literal(before)}(.*)${rest.map(literal).join('.*')}$`, 'isu');
  return (name) => expression.exec(name.normalize('NFC'))?.[1];
}

function nameSource(name: string): string {
  const guard = /^[*?]/.test(name) ? '(?!\\.)' : '';
  const parts = name
    .normalize('NFC')
    .replace(/\*+/g, '*')
    .split(/([*?])/);
  return (
    guard + parts.map((part) => (part === '*' ? '[^/]*' : part === '?' ? '[^/]' : literal(part))).join('')
  );
}

const literal = (text: string): string => text.normalize('NFC').replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
