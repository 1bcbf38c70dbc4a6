import type { Ends } from "./spread";

/** One thing under Given that the reader can set. */
export interface Field {
  readonly sheet: number;
  readonly inputs: number[]; // the cells that it fills
  faulty: boolean; // the entry cannot be used; the last good value is kept
  changed: boolean; // it is not the example's

  /** Takes in what stands in the field now; says whether that is news. */
  read(): boolean;
  /** Puts its value, or the example's, into its cells. */
  write(ends: Ends, example: boolean): void;
  /** Back to the example. */
  reset(): void;
  /** Lets the reader type, or not. */
  lock(locked: boolean): void;
}

/** Fills a cell with one number, or with the two ends of a range; NaN is no cell. */
export function fill({ low, high }: Ends, cell: number, from: number, to = from): void {
  if (cell >= 0) {
    low[cell] = from;
    high[cell] = to;
  }
}
