// Where a learner's card and answers are kept on the device, until the tab is closed.

import type { Done } from "./exercise";

const keyOf = (name: string): string => `${location.pathname}#${name}`;

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
