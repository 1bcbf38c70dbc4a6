// Where a learner's card and answers are kept on the device, until the tab is closed.

import type { Kept } from "./answer";
import type { Pace } from "./face";
import { wayHere } from "./key";

/** What a learner has done on a card, as it is kept. */
export interface Done extends Pace {
  card: number;
  tries: number; // on this card, that did not come right
  answers: Kept[];
}

const keyOf = (name: string): string => `${wayHere()}#${name}`;

/** Keeps what was done on a card. A browser may forbid it, or be full: the exercise works without. */
export function keepCard(name: string, done: Done): void {
  try {
    sessionStorage.setItem(keyOf(name), JSON.stringify(done));
  } catch {
    // nothing is kept
  }
}

/** What is kept; null for nothing, and for what does not fit the exercise of this edition. */
export function readCard(name: string, answers: number, cards: number): Done | null {
  try {
    const done = JSON.parse(sessionStorage.getItem(keyOf(name))!) as Done;
    const fits = done.answers.length === answers && done.card >= 1 && done.card <= cards && done.face >= 0 && done.face < 4;
    return fits ? done : null;
  } catch {
    return null;
  }
}
