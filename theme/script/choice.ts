import { numberIn, sheetOf } from "./element";
import { fill, type Field } from "./field";
import type { Ends } from "./spread";

/** The place in a list of what the page was printed with. */
export function printedIndex(list: HTMLSelectElement): number {
  return Math.max(0, [...list.options].findIndex((option) => option.defaultSelected));
}

/** A given that is one of a list; the place of the option goes into the cell. */
export class ChoiceField implements Field {
  readonly sheet: number;
  readonly inputs: number[];
  readonly faulty = false;
  readonly fault = null;
  changed = false;
  private readonly printed: number;
  private index = -1;

  constructor(private readonly list: HTMLSelectElement) {
    this.sheet = sheetOf(list);
    this.inputs = [numberIn(list, "data-cell")];
    this.printed = printedIndex(list);
  }

  read(): boolean {
    const index = this.list.selectedIndex;
    if (index === this.index) {
      return false;
    }
    this.index = index;
    this.changed = index !== this.printed;
    return true;
  }

  write(ends: Ends, example: boolean): void {
    fill(ends, this.inputs[0], example ? this.printed : this.index);
  }

  reset(): void {
    this.list.selectedIndex = this.printed;
  }

  lock(locked: boolean): void {
    this.list.disabled = locked;
  }
}
