import { LANGUAGES, type Language } from '../site/report-settings.ts';
import type { Site } from '../site/site.ts';
import { UsageError, type Values } from './command.ts';

export const LANGUAGE_ARGUMENT = {
  type: 'string',
  valueHint: 'CODE',
  description: `Language of the pages: ${LANGUAGES.join(' or ')}; left out: that of the site file, else en`,
} as const;

/**
 * The language that the user asks for, else that of the site file.
 *
 * @throws UsageError where there is no catalogue of it
 */
export function languageOf({ language }: Values, site: Site): Language {
  if (language === undefined) return site.declared.report.language;
  const known = LANGUAGES.find((code) => code === language);
  if (!known) throw new UsageError(`--language must be ${LANGUAGES.join(' or ')}, found "${language}"`);
  return known;
}
