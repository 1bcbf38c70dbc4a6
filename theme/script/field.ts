import type { Ends } from "./spread";

/** One thing under Given that the reader can set. */
export interface Field {
  readonly element: HTMLInputElement | HTMLSelectElement;
  readonly sheet: number;
  readonly inputs: number[]; // the cells that it fills
  faulty: boolean; // the entry cannot be used; the last good value is kept
  changed: boolean; // it is not the example's
  typed?: number[]; // the two ends of a number that can be used, in the unit of the field

  /** Takes in what is in the field now; says whether that is news. */
  read(): boolean;
  /** Puts its value, or the example's, into its cells. */
  write(ends: Ends, example: boolean): void;
  /** What is in it: the text, and the name of the unit where there are several. */
  entry(): Entry;
  /** Puts an entry into it; false if it does not fit. */
  enter(entry: Entry): boolean;
  /** Back to the example. */
  reset(): void;
  /** Lets the reader type, or not. */
  lock(locked: boolean): void;
}

/** A number as it was typed, perhaps with the name of its unit; or the name of what is chosen. */
export type Entry = [text: string, unit?: string];

/** The event by which a field is told that entries were put in, after all of them were. */
export const ENTERED = "entered";

/** Puts entries into fields, in their order; gives those that do not fit. All that are told belong together then. */
export function enter(fields: Field[], entries: Entry[], told = fields): Field[] {
  const unfit = fields.filter((field, i) => !field.enter(entries[i]));
  told.forEach(({ element }) => element.dispatchEvent(new Event(ENTERED)));
  return unfit;
}

/** Fills a cell with one number, or with the two ends of a range; NaN is no cell. */
export function fill({ low, high }: Ends, cell: number, from: number, to = from): void {
  if (cell >= 0) {
    low[cell] = from;
    high[cell] = to;
  }
}
