// Marks an answer as calc/practice/mark.go does; cmd/check compares the two.

import type { Page } from "./page";
import { FITS, type Heard } from "./place";
import type { Ask } from "./wire";

const CARRIED = 3;
const SLIPPED = 4;
const SENTENCES = 8; // the sentences of slips come after these
const OF_CHOICE = [0, CARRIED, 7]; // the sentences that a choice has

/**
 * Marks an answer by the values of the last run, and gives the numbers of the sentences to show. A cell number of -1
 * stands for "no such value": no answer equals it.
 */
export function markOf([right, digits, , again, slips]: Ask, heard: Heard, { data: { marker }, machine }: Page): number[] {
  const { cells } = machine;
  const says = (cell: number, how: Heard = [heard[0], 0, FITS]): number => {
    cells.set([...how, cells[cell]!, digits && +`5.00000001e-${digits}`], marker);
    machine.s!();
    return cells[marker + 5]!;
  };
  let verdict = says(right, heard);
  const told: number[] = [];
  if (verdict >= CARRIED) {
    const carried = !says(again);
    slips.forEach(([value, open, twice], i) => {
      // A slip that gives this answer both ways is named once.
      if (!carried && cells[open] !== 0 && !says(value) && !(twice && told.includes(i - 1))) {
        told.push(i);
      }
    });
    // Several slips have a sentence of their own before them.
    verdict = carried ? CARRIED : told[1] ? SLIPPED : told.length ? -1 : verdict + 2;
  }
  return [digits ? verdict : OF_CHOICE.indexOf(verdict), ...told.map((i) => SENTENCES + i)];
}
