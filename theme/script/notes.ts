import { all, hide, numberIn, sheetOf } from "./element";
import { isVoid, type Sheet } from "./sheets";
import type { Ends } from "./spread";

/**
 * Gives the function that shows the sentences, the work and the answers that hold, and hides the rest. While a sheet
 * has no answers only the reason for that is shown. What holds for a part of a range only is shown, and says so.
 */
export function makeNotes(sheets: Sheet[], { low, high }: Ends): () => void {
  const notes = all<Element>("[data-when]").map((element) => ({
    element,
    cell: numberIn(element, "data-when"),
    sheet: sheets[sheetOf(element)],
    refusal: element.hasAttribute("data-refusal"),
    partly: element.querySelector("[data-partly]"),
  }));
  const kinds = all<Element>("[data-kind]").map((element) => ({
    element,
    cell: numberIn(element, "data-kind"),
    other: element.hasAttribute("data-other"),
  }));
  return () => {
    for (const { element, cell, sheet, refusal, partly } of notes) {
      hide(element, high[cell] === 0 || (refusal ? sheet.waiting : isVoid(sheet)));
      hide(partly, low[cell] !== 0);
    }
    for (const { element, cell, other } of kinds) {
      hide(element, (high[cell] !== 0) !== other);
    }
  };
}
