import { all, mark, numberIn, put } from "./element";
import { apply, text } from "./number";
import { isVoid, type Sheet } from "./sheets";

/** One number on the page that follows a cell. */
interface Shown {
  element: Element;
  cell: number;
  sheet: Sheet;
  by: string | null; // the factor into the unit shown
  value: number | null; // as last written
  text: string;
}

/** Gives the function that brings every number of the worksheets up to date. Text is written only where it differs. */
export function makeShow(sheets: Sheet[], cells: Float64Array): () => void {
  const list: Shown[] = all<Element>("[data-show]").map((element) => ({
    element,
    cell: numberIn(element, "data-show"),
    sheet: sheets[numberIn(element, "data-sheet")],
    by: element.getAttribute("data-by"),
    value: null,
    text: element.textContent!,
  }));
  return () => {
    for (const shown of list) {
      const value = isVoid(shown.sheet) ? NaN : valueOf(shown, cells);
      if (!Object.is(value, shown.value)) {
        shown.value = value;
        write(shown, value);
      }
    }
  };
}

const valueOf = ({ cell, by }: Shown, cells: Float64Array): number => (by ? apply(cells[cell], by) : cells[cell]);

function write(shown: Shown, value: number): void {
  const now = text(value);
  if (now !== shown.text) {
    shown.text = now;
    put(shown.element, now);
    mark(shown.element, "void", !isFinite(value));
  }
}
