import { mark, numberIn, put, same } from "./element";
import { apply } from "./number";
import type { Page } from "./page";
import { isVoid, type Sheet } from "./sheets";
import { numberWriter, rangeText } from "./shown";
import type { Ends } from "./spread";

/** One number on the page that follows a cell. */
interface Shown {
  element: Element;
  place: number; // in the ends
  guard: number | undefined; // the cell that is 0 while the value is left out
  given: boolean; // it is a given, or of the sentence that says which of them will not do
  write: (value: number) => string;
  value: number[]; // as last written
}

/** Gives the function that brings numbers of a worksheet up to date. Text is written only where it differs. */
export function makeShow(elements: Element[], sheet: Sheet, { fields, works }: Page): () => void {
  const { guards, parts, ends } = works;
  const list: Shown[] = elements.filter((element) => !element.matches(".work *")).map((element) => {
    const cell = numberIn(element, "data-show");
    return {
      element,
      place: parts.get(element)?.[0] ?? cell,
      guard: guards.get(cell) ?? (numberIn(element, "data-guard") || undefined),
      given: !!element.closest(".linked, [data-refusal]"),
      write: writer(element, fields.some(({ inputs }) => inputs.includes(cell))),
      value: [],
    };
  });
  return () => {
    for (const shown of list) {
      const value = valueOf(shown, sheet, ends);
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
  const [own, second] = [numberWriter(element, typed), numberWriter(element, false)];
  return list ? label : (value) => (element.getAttribute("data-by") ? second : own)(value); // nobody typed a second unit
}

/** The two ends of a number in the unit that its element shows now; NaN for one that is not there. */
function valueOf({ element, place, guard, given }: Shown, sheet: Sheet, { low, high }: Ends): number[] {
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
