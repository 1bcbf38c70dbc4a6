import { all, mark, numberIn, put } from "./element";
import { apply, text } from "./number";
import { isVoid, type Sheet } from "./sheets";

/** One number on the page that follows a cell. */
interface Shown {
  element: Element;
  cell: number;
  sheet: Sheet;
  by: string | null; // the factor into the unit shown
  printed: string; // the author's text for the example's number
  example: number;
  value: number | null; // as last written
  text: string;
}

/**
 * Gives the function that brings every number of the worksheets up to date. Text is written only where it differs.
 * The cells hold the example's values when this is called: while a number is still the example's, the page keeps the
 * author's own text for it ("27 lb", not "27.2 lb").
 */
export function makeShow(sheets: Sheet[], cells: Float64Array): () => void {
  const list: Shown[] = all<Element>("[data-show]").map((element) => {
    const cell = numberIn(element, "data-show");
    const by = element.getAttribute("data-by");
    const printed = element.textContent!;
    const sheet = sheets[numberIn(element, "data-sheet")];
    const example = valueOf({ cell, by }, cells);
    return { element, cell, sheet, by, printed, example, value: null, text: printed };
  });
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

const valueOf = ({ cell, by }: Pick<Shown, "cell" | "by">, cells: Float64Array): number =>
  by ? apply(cells[cell], by) : cells[cell];

function write(shown: Shown, value: number): void {
  const now = value === shown.example ? shown.printed : text(value);
  if (now !== shown.text) {
    shown.text = now;
    put(shown.element, now);
    mark(shown.element, "void", !isFinite(value));
  }
}
