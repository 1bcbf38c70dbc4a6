// What an answer is put into.

/** An answer as the program takes it: in the unit that is asked for, as it is written, and what was told with it. */
export type Heard = [value: number, bare: number, told: number];

/** The number is told with a unit that fits, or needs none. */
export const FITS = 1;

/** What an answer is put into: a field for a number, or options to choose from. */
export interface Place {
  /** The answer as it is now; null for what is none. */
  hear(): Heard | null;
  /** What is typed or chosen, and the place of its unit. */
  entry(): [text: string, unit: number];
  put(text: string, unit: number): void;
}
