// How a page is worked when some of its numbers are ranges. It gives what its twin calc/sheet/spread.go gives, bit for
// bit; cmd/check compares the two.

import type { Machine } from "./module";

/** The two ends of every cell. They are the same, but where a number of the page is a range or follows from one. */
export interface Ends {
  low: Float64Array;
  high: Float64Array;
}

/** By the cell of a value that may be left out: the cell that is 0 while it is. */
export type Guards = Map<number, number>;

/** How many numbers of a page may be ranges at once. */
export const MOST_RANGES = 10;

/** At how many values a range is worked, by how many ranges there are. */
const STEPS = [1, 257, 17, 7, 5, 3, 3, 2, 2, 2, 2];

/** The i-th of n evenly spaced values. */
const between = (low: number, high: number, i: number, n: number): number =>
  i === n - 1 ? high : low + ((high - low) * i) / (n - 1);

/**
 * Works the module at every combination of the values of the ranges among the inputs, and puts the least and the
 * greatest of each output into its ends. With no range that is one run.
 */
export function spread(machine: Machine, guards: Guards, ends: Ends, inputs: number[], outputs: number[]): void {
  const { cells, run } = machine;
  const { low, high } = ends;
  inputs.forEach((cell) => (cells[cell] = low[cell]));
  const ranged = inputs.filter((cell) => low[cell] !== high[cell]);
  const steps = STEPS[ranged.length];
  const found = outputs.map((cell) => ({ cell, guard: guards.get(cell), some: false, least: 0, greatest: 0 }));
  for (let n = steps ** ranged.length; n--; ) {
    let rest = n;
    for (const cell of ranged) {
      cells[cell] = between(low[cell], high[cell], rest % steps, steps);
      rest = Math.floor(rest / steps);
    }
    run();
    for (const out of found) {
      if (out.guard === undefined || cells[out.guard]) {
        const value = cells[out.cell];
        out.least = out.some ? Math.min(out.least, value) : value;
        out.greatest = out.some ? Math.max(out.greatest, value) : value;
        out.some = true;
      }
    }
  }
  for (const { cell, least, greatest } of found) {
    low[cell] = least;
    high[cell] = greatest;
  }
}
