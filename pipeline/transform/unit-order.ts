import type { Site } from '../site/site.ts';

/** Units in the order of the site file; where it declares none, in order of name. */
export function unitOrder({ unitIds }: Pick<Site, 'unitIds'>, found: Iterable<string>): string[] {
  const names = new Set(found);
  return unitIds ? unitIds.filter((unit) => names.has(unit)) : [...names].sort();
}
