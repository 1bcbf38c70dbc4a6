import { all, mark, numberIn, put, same, sheetOf } from "./element";
import { apply } from "./number";
import type { Field } from "./field";
import { isVoid, type Sheet } from "./sheets";
import { numberWriter, rangeText } from "./shown";
import type { Ends } from "./spread";
import type { Works } from "./works";

/** One number on the page that follows a cell. */
interface Shown {
  element: Element;
  place: number; // in the ends
  guard: number | undefined; // the cell that is 0 while the value is left out
  sheet: Sheet;
  write: (value: number) => string;
  printed: string; // the author's text for the example's number
  example: number[];
  value: number[]; // as last written
  text: string;
}

/**
 * Gives the function that brings every number of the worksheets up to date. Text is written only where it differs.
 * The cells hold the example's values when this is called: while a number is still the example's, the page keeps the
 * author's own text for it ("27 lb", not "27.2 lb").
 */
export function makeShow(sheets: Sheet[], fields: Field[], { guards, parts, ends }: Works): () => void {
  const typed = new Set(fields.flatMap(({ inputs }) => inputs));
  const list: Shown[] = all<Element>("[data-show]:not(.work *)").map((element) => {
    const cell = numberIn(element, "data-show");
    const printed = element.textContent!;
    const shown = {
      element,
      place: parts.get(element)?.[0] ?? cell,
      guard: guards.get(cell) ?? (numberIn(element, "data-guard") || undefined),
      sheet: sheets[sheetOf(element)],
      write: writer(element, typed.has(cell)),
      printed,
      example: [],
      value: [],
      text: printed,
    };
    return { ...shown, example: valueOf(shown, ends) };
  });
  return () => {
    for (const shown of list) {
      const value = shown.sheet.fresh ? valueOf(shown, ends) : shown.value;
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
function valueOf({ element, place, guard, sheet }: Shown, { low, high }: Ends): number[] {
  if (isVoid(sheet) || (guard !== undefined && !high[guard])) {
    return [NaN, NaN];
  }
  const by = element.getAttribute("data-by");
  const ends = [low[place], high[place]];
  return by ? ends.map((end) => apply(end, by)) : ends;
}

function write(shown: Shown, value: number[]): void {
  const there = isFinite(value[0]);
  const now = there && same(value, shown.example) ? shown.printed : rangeText(value[0], value[1], shown.write);
  if (now !== shown.text) {
    shown.text = now;
    put(shown.element, now);
  }
  mark(shown.element, "void", !there);
}
