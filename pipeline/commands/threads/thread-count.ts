import { UsageError, type Values } from '../command.ts';
import { threadsOfMachine } from './pool.ts';

/** Most threads that anyone may ask for. */
const MOST = 64;

/**
 * How many threads the user asks for; as many as the machine has cores where nothing is said.
 *
 * @throws UsageError where it is no whole number from 1
 */
export function threadCount({ threads }: Values): number {
  if (threads === undefined) return threadsOfMachine();
  const count = Number(threads);
  if (!Number.isInteger(count) || count < 1 || count > MOST)
    throw new UsageError(`--threads must be a whole number from 1 to ${MOST}, found "${threads}"`);
  return count;
}
