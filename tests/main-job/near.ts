import { expect } from 'vitest';

/** Both not there, or within this relative distance of R's value. */
export function near(own: number | null, wanted: number | null, relative: number, what: string): void {
  expect(own === null, `${what}: ${own}, R ${wanted}`).toBe(wanted === null);
  if (own === null || wanted === null) return;
  expect(Math.abs(own - wanted), `${what}: ${own}, R ${wanted}`).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(wanted), 1e-12),
  );
}

/** Both not there, or within this distance of R's value. */
export function within(own: number | null, wanted: number | null, margin: number, what: string): void {
  expect(own === null, `${what}: ${own}, R ${wanted}`).toBe(wanted === null);
  if (own === null || wanted === null) return;
  expect(Math.abs(own - wanted), `${what}: ${own}, R ${wanted}`).toBeLessThanOrEqual(margin + 1e-9);
}
