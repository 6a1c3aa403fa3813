/** Side of the centre line; a point exactly on it has none. */
export function sideOfCentre(z: number): 'high' | 'low' | null {
  if (z > 0) return 'high';
  return z < 0 ? 'low' : null;
}
