/** A text that a reader sees or hears, and where it stands. */
export interface PageText {
  where: string;
  text: string;
}

const ENTITIES: Record<string, string> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&#96;': '`',
};
const READ_OUT = [
  'title',
  'aria-label',
  'alt',
  'placeholder',
  'aria-description',
  // What the script of a page says.
  'data-tip',
  'data-tips',
  'data-marked',
  'data-unmarked',
  'data-months',
  'data-read',
  'data-found',
  'data-span',
  'data-date',
];

/** Every text node of a page, charts included, and every attribute that is read out. Style and script have none. */
export function pageTexts(page: string): PageText[] {
  const body = page
    .replace(/<(style|script)\b[^>]*>[\s\S]*?<\/\1>/g, '')
    // What a source's reading says is in English and marked as such.
    .replace(/<(?!html)(\w+)[^>]*\blang="en"[^>]*>[\s\S]*?<\/\1>/g, '');
  const found: PageText[] = [];
  let element = '';
  for (const match of body.matchAll(/<(\/?)([a-zA-Z!]\w*)([^>]*)>|([^<]+)/g)) {
    const [, , name, attributes, text] = match;
    if (text !== undefined) {
      const plain = text.replace(/&[#\w]+;/g, (entity) => ENTITIES[entity] ?? entity).trim();
      if (plain !== '') found.push({ where: element, text: plain });
      continue;
    }
    element = `${match[1]}${name}`;
    for (const [, attribute, value] of (attributes ?? '').matchAll(/\s([\w-]+)="([^"]*)"/g))
      if (READ_OUT.includes(attribute!) && value !== '')
        for (const line of value!.split('\n'))
          found.push({
            where: `${name} ${attribute}`,
            text: line.replace(/&[#\w]+;/g, (entity) => ENTITIES[entity] ?? entity),
          });
  }
  return found;
}
