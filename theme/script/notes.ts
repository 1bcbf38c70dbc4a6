import { all, hide, numberIn } from "./element";
import { isVoid, type Sheet } from "./sheets";

/**
 * Gives the function that shows the sentences that hold and hides the rest. While a sheet has no answers only the
 * reason for that is shown.
 */
export function makeNotes(sheets: Sheet[], cells: Float64Array): () => void {
  const notes = all<Element>("[data-when]").map((element) => ({
    element,
    cell: numberIn(element, "data-when"),
    sheet: sheets[numberIn(element, "data-sheet")],
    refusal: element.hasAttribute("data-refusal"),
  }));
  return () => {
    for (const { element, cell, sheet, refusal } of notes) {
      hide(element, cells[cell] === 0 || (refusal ? sheet.waiting : isVoid(sheet)));
    }
  };
}
