/** Observation of recurrent events: from `entry` to `exit` on a clock, `weight` times over, with this many events in it. */
export interface RecurrentCell {
  /** Clock at which the observation enters (left truncation), 0 or more. */
  entry: number;
  /** Clock at which it leaves, above entry. */
  exit: number;
  /** How often it was observed, or chances in it (cycles, days), above 0. */
  weight: number;
  /** Events in it, whole number; where in it they fell is not known. */
  events: number;
}

/** @throws RangeError with the caller's name for cells that can't be */
export function checkCells(clusters: readonly (readonly RecurrentCell[])[], caller: string): void {
  for (const [index, cells] of clusters.entries()) {
    for (const { entry, exit, weight, events } of cells) {
      const valid =
        entry >= 0 &&
        exit > entry &&
        exit < Number.POSITIVE_INFINITY &&
        weight > 0 &&
        weight < Number.POSITIVE_INFINITY &&
        Number.isSafeInteger(events) &&
        events >= 0;
      if (!valid) {
        throw new RangeError(
          `${caller}: cluster ${index} can't have ${events} events from ${entry} to ${exit} with weight ${weight}`,
        );
      }
    }
  }
}

/** Clusters laid out flat, times divided by a reference time so that shape and rate hardly depend on each other. */
export interface FlatCells {
  clusters: number;
  clusterOf: Int32Array;
  logEntry: Float64Array;
  logExit: Float64Array;
  weight: Float64Array;
  events: Float64Array;
  eventsOf: Float64Array;
  /** Reference time: geometric mean of the middles of the cells that hold events. */
  reference: number;
}

/** Lays clusters out flat. There must be at least one event. */
export function flatten(clusters: readonly (readonly RecurrentCell[])[]): FlatCells {
  const size = clusters.reduce((sum, cells) => sum + cells.length, 0);
  const flat: FlatCells = {
    clusters: clusters.length,
    clusterOf: new Int32Array(size),
    logEntry: new Float64Array(size),
    logExit: new Float64Array(size),
    weight: new Float64Array(size),
    events: new Float64Array(size),
    eventsOf: new Float64Array(clusters.length),
    reference: 1,
  };
  let logs = 0;
  let total = 0;
  let at = 0;
  for (const [cluster, cells] of clusters.entries()) {
    for (const { entry, exit, weight, events } of cells) {
      flat.clusterOf[at] = cluster;
      flat.logEntry[at] = Math.log(entry);
      flat.logExit[at] = Math.log(exit);
      flat.weight[at] = weight;
      flat.events[at] = events;
      flat.eventsOf[cluster]! += events;
      logs += events * Math.log((entry + exit) / 2);
      total += events;
      at++;
    }
  }
  const shift = logs / total;
  flat.reference = Math.exp(shift);
  for (let i = 0; i < size; i++) {
    flat.logEntry[i]! -= shift;
    flat.logExit[i]! -= shift;
  }
  return flat;
}

/** What a shape makes of the cells: each cluster's exposure, and the part of the log-likelihood that says where in a cluster its events fell. */
export interface AtShape {
  exposure: Float64Array;
  /** Sum over cells of events times the log of the cell's own exposure, by cluster. */
  placing: Float64Array;
}

/** Exposures at a shape: weight x (exit^shape - entry^shape), times in units of the reference. */
export function atShape(flat: FlatCells, shape: number): AtShape {
  const exposure = new Float64Array(flat.clusters);
  const placing = new Float64Array(flat.clusters);
  const { clusterOf, logEntry, logExit, weight, events } = flat;
  for (let i = 0; i < clusterOf.length; i++) {
    // exp(a) - exp(b) written so that neighbouring times lose no digits.
    const ofCell =
      weight[i]! * Math.exp(shape * logExit[i]!) * -Math.expm1(shape * (logEntry[i]! - logExit[i]!));
    const cluster = clusterOf[i]!;
    exposure[cluster]! += ofCell;
    if (events[i]! > 0) placing[cluster]! += events[i]! * Math.log(ofCell);
  }
  return { exposure, placing };
}
