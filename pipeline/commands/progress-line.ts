import type { ReadProgress } from '../ingest/read-files.ts';

/** Seconds from which the rate says something, and share of all bytes from which it says what is left: looking for the files takes its time, too. */
const LEAST_SECONDS = 2;
const LEAST_SHARE = 0.01;

/**
 * A line such as "12.3 of 48.0 MB, 15 MB/s, 3 s left: cycles, log-2025.csv". The rate stands after two seconds, the time left after a hundredth of the bytes, too; where the bytes of all files are not known, what
 * is left is not said.
 *
 * @param seconds since reading began
 */
export function progressLine({ source, file, bytes, all }: ReadProgress, seconds: number): string {
  const megabytes = (count: number): string => (count / 1e6).toFixed(1);
  const read = `${megabytes(bytes)}${all === undefined ? '' : ` of ${megabytes(all)}`} MB`;
  if (seconds < LEAST_SECONDS || bytes === 0) return `${read}: ${source}, ${file}`;
  const rate = bytes / seconds;
  const known = all !== undefined && bytes >= LEAST_SHARE * all;
  const left = known ? `, ${timeLeft((all - bytes) / rate)}` : '';
  return `${read}, ${(rate / 1e6).toFixed(rate < 1e7 ? 1 : 0)} MB/s${left}: ${source}, ${file}`;
}

function timeLeft(seconds: number): string {
  if (seconds < 60) return `${Math.ceil(Math.max(0, seconds))} s left`;
  return `${Math.ceil(seconds / 60)} min left`;
}
