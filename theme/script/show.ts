import { all, mark, numberIn, put, same, sheetOf } from "./element";
import { apply } from "./number";
import type { Field } from "./field";
import { isFresh, isVoid, type Sheet } from "./sheets";
import { numberWriter, rangeText } from "./shown";
import type { Ends } from "./spread";
import type { Works } from "./works";

/** One number on the page that follows a cell. */
interface Shown {
  element: Element;
  place: number; // in the ends
  guard: number | undefined; // the cell that is 0 while the value is left out
  sheet: Sheet;
  given: boolean; // it is a given, or of the sentence that says which of them will not do
  write: (value: number) => string;
  value: number[]; // as last written
}

/** Gives the function that brings every number of the worksheets up to date. Text is written only where it differs. */
export function makeShow(sheets: Sheet[], fields: Field[], { guards, parts, ends }: Works): () => void {
  const typed = new Set(fields.flatMap(({ inputs }) => inputs));
  const list: Shown[] = all<Element>("[data-show]:not(.work *)").map((element) => {
    const cell = numberIn(element, "data-show");
    return {
      element,
      place: parts.get(element)?.[0] ?? cell,
      guard: guards.get(cell) ?? (numberIn(element, "data-guard") || undefined),
      sheet: sheets[sheetOf(element)],
      given: !!element.closest(".linked, [data-refusal]"),
      write: writer(element, typed.has(cell)),
      value: [],
    };
  });
  return () => {
    for (const shown of list.filter(isFresh)) {
      const value = valueOf(shown, ends);
      if (!same(value, shown.value)) {
        shown.value = value;
        write(shown, value);
      }
    }
  };
}

/** How the value of an element is written: as a day, as what the list it is chosen from calls it, or as a number. */
function writer(element: Element, typed: boolean): (value: number) => string {
  const list = document.getElementById(element.getAttribute("data-list") ?? "") as HTMLSelectElement | null;
  const label = (value: number) => list!.options[value]?.text ?? "–";
  return list ? label : numberWriter(element, typed);
}

/** The two ends of a number in the unit that its element shows now; NaN for one that is not there. */
function valueOf({ element, place, guard, sheet, given }: Shown, { low, high }: Ends): number[] {
  if ((given ? sheet.waiting : isVoid(sheet)) || (guard !== undefined && !high[guard])) {
    return [NaN, NaN];
  }
  const by = element.getAttribute("data-by");
  const ends = [low[place], high[place]];
  return by ? ends.map((end) => apply(end, by)) : ends;
}

function write({ element, write }: Shown, [low, high]: number[]): void {
  const now = rangeText(low, high, write);
  if (now !== element.textContent) {
    put(element, now);
  }
  mark(element, "void", !isFinite(low));
}
