import type { TableData } from "./data";
import { hide, mark, put } from "./element";
import { numberWriter, rangeText } from "./shown";

/** One answer of a reckoner: its number, and the notes that stand with it when it is marked or near. */
class GridAnswer {
  private text: string;
  private readonly markNote: Element | null;
  private readonly nearNote: Element | null;
  private readonly write: (value: number) => string;

  constructor(private readonly element: Element) {
    this.text = element.firstChild?.textContent ?? "";
    this.markNote = element.querySelector(".mark-note");
    this.nearNote = element.querySelector(".near-note");
    this.write = numberWriter(element, false);
  }

  set(low: number, high: number, marked: boolean, near: boolean): void {
    const now = rangeText(low, high, this.write);
    if (now !== this.text) {
      this.text = now;
      put(this.element, now);
    }
    mark(this.element, "void", !isFinite(low));
    mark(this.element, "marked", marked);
    mark(this.element, "near", near);
    hide(this.markNote, !marked);
    hide(this.nearNote, !near);
  }
}

/** The answers of a reckoner by row and column. */
export function findGrid(index: number, { down, across }: TableData): GridAnswer[][] {
  return down[1].map((_, row) =>
    across[1].map((_, column) => {
      const place = `[data-table="${index}"][data-row="${row}"][data-col="${column}"]`;
      return new GridAnswer(document.querySelector(place)!);
    }),
  );
}
