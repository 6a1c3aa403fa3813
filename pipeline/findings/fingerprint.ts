import { createHash } from 'node:crypto';

/** First twelve digits of one SHA-256 over those of all inputs, in order of digits: the same inputs, the same mark. */
export function fingerprintOf(sha256: readonly string[]): string {
  return createHash('sha256').update(sha256.toSorted().join('\n')).digest('hex').slice(0, 12);
}
