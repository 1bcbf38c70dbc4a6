// The numbers of a card of an exercise, in the page.

import { all, numberIn } from "./element";
import { fill } from "./field";
import { text } from "./number";
import type { Ends } from "./spread";
import type { Varying } from "./wire";

/** The place of the value that each given has on a card, as practice.Deal.Picks has it. */
function picksOf({ deal: [offset, stride, of], picks }: Varying, card: number): number[] {
  let place = (offset + stride * card) % of;
  return picks.map(({ values, alone }) => {
    if (alone) {
      return (alone[0] + alone[1] * card) % alone[2];
    }
    const pick = place % values.length;
    place = Math.floor(place / values.length);
    return pick;
  });
}

/** Puts the numbers of a card into the cells and into the story. */
export function putCard(element: HTMLElement, exercise: Varying, card: number, ends: Ends): void {
  picksOf(exercise, card).forEach((pick, i) => {
    const { cells, values, names } = exercise.picks[i]!;
    cells.forEach((cell) => fill(ends, cell, values[pick]!));
    all(`[data-picked="${i}"]`, element).forEach((given) => (given.textContent = names[pick]!));
  });
}

/** Writes the right answers: numbers, the option that is right, or the items in their order (practice.Choice.Key). */
export function showKeys(element: HTMLElement, exercise: Varying, ends: Ends): void {
  all(".key", element).forEach((key) => {
    const ask = numberIn(key.closest("[data-asked]")!, "data-asked");
    const [at, digits] = exercise.asks[ask]!;
    const right = ends.low[at]!;
    const code = "" + right;
    const options = all(`[data-asked="${ask}"] .option`, element).map((option) => option.textContent!);
    key.textContent = options.length
      ? code.length < 2
        ? options[right - 1]!
        : options.map((_, i) => options[code.indexOf("" + (i + 1))]).join("; ")
      : key.textContent!.replace(/^(\$?)[-\d.,–]+/, (_, money: string) => money + text(right, 0, digits));
  });
}
