import { numberIn, sheetOf } from "./element";
import { fill, type Field } from "./field";

/** The place in a list of what the page was printed with. */
export function printedIndex(list: HTMLSelectElement): number {
  return Math.max(0, [...list.options].findIndex((option) => option.defaultSelected));
}

/** Chooses the option of a list that is called so; false if there is none. */
export function choose(list: HTMLSelectElement, text: string): boolean {
  const at = [...list.options].findIndex((option) => option.text === text);
  list.selectedIndex = at < 0 ? list.selectedIndex : at;
  return at >= 0;
}

/** What a list has chosen. */
export const chosenIn = (list: HTMLSelectElement): string => list.options[list.selectedIndex]!.text;

/** A given that is one of a list; the place of the option goes into the cell. */
export function makeChoiceField(list: HTMLSelectElement): Field {
  const cell = numberIn(list, "data-cell");
  const printed = printedIndex(list);
  let index = -1;
  const field: Field = {
    element: list,
    sheet: sheetOf(list),
    inputs: [cell],
    faulty: false,
    changed: false,
    read() {
      const news = index !== list.selectedIndex;
      index = list.selectedIndex;
      field.changed = index !== printed;
      return news;
    },
    write: (ends, example) => fill(ends, cell, example ? printed : index),
    entry: () => [chosenIn(list)],
    enter: ([text]) => choose(list, text),
    reset() {
      list.selectedIndex = printed;
    },
    lock(locked) {
      list.disabled = locked;
    },
  };
  return field;
}
