import { CAUSES, type Cause } from '../../findings/drift/cause-pattern.ts';

/** The causes that a text of the findings names, in the order in which they stand there. */
export function causesIn(text: string): Cause[] {
  return CAUSES.filter((cause) => text.includes(cause)).toSorted((a, b) => text.indexOf(a) - text.indexOf(b));
}
