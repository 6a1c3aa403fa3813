import type { Source } from './site-schema.ts';

/** The name of a source: its own, else its kind and its place among all sources, from 1 on. */
export const sourceName = ({ name, kind }: Pick<Source, 'name' | 'kind'>, index: number): string =>
  name ?? `${kind} ${index + 1}`;
