// How a page is worked when some of its numbers are ranges. It gives what its twin calc/sheet/spread.go gives, bit for
// bit; cmd/check compares the two.

import type { Machine } from "./module";
import type { Trend } from "./wire";

/** The two ends of every cell. They are the same, but where a number of the page is a range or follows from one. */
export interface Ends {
  low: Float64Array;
  high: Float64Array;
}

/** The upper end of a truth that was found nowhere in its ranges, and that cannot be excluded. */
export const DOUBT = 0.5;

/** By the cell of a value that may be left out: the cell that is 0 while it is. */
export type Guards = Map<number, number>;

/** A value to work: its place in the ends, its cell and the cell of the truth for which alone it is asked, if any. */
export type Asked = [place: number, cell: number, truth?: number];

/**
 * Works the module, and puts the least and the greatest value of what is asked into the ends. A value that follows from
 * no range is the one that the module gives.
 */
export function spread(
  machine: Machine, guards: Guards, ends: Ends, inputs: Set<number>, asked: Asked[], trends: Trend[] = [],
): void {
  const { cells, run } = machine;
  const { low, high } = ends;
  inputs.forEach((cell) => (cells[cell] = low[cell]));
  run();
  const ranged = [...inputs].some((cell) => low[cell] !== high[cell]);
  const ranges = ranged && globalThis.findRanges(machine, guards, ends, trends);
  for (const [place, cell, truth] of asked) {
    const one = inputs.has(cell) ? [low[cell], high[cell]] : [cells[cell], cells[cell]];
    [low[place], high[place]] = (ranges && ranges(cell, truth)) || one;
  }
}

/** Finds the ends of a cell, where it is there or where a truth holds; false if it follows from no range. */
type FindEnds = (cell: number, truth?: number) => readonly [low: number, high: number] | false;

declare global {
  // ranges.ts, a script of its own
  var findRanges: (machine: Machine, guards: Guards, ends: Ends, trends: Trend[]) => FindEnds;
}
