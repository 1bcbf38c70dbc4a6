import { word } from "./data";
import { all, hide, mark, numberIn, put } from "./element";
import { isFresh, isVoid, type Sheet } from "./sheets";
import type { Attribute } from "./wire";

/**
 * Gives the function that marks on worksheets and on the answers at a glance whether the numbers are the reader's own,
 * and on worksheets whether there is an answer and what it waits for.
 */
export function makeStanding(sheets: Sheet[]): () => void {
  const withSheet = (selector: string, name: Attribute) =>
    all(selector).map((element) => ({ element, sheet: sheets[numberIn(element, name)] }));
  const worksheets = withSheet(".worksheet", "data-sheet");
  const glance = withSheet(".glance .worked", "data-sheet");
  const waits = withSheet("[data-void-for]", "data-void-for").map(({ element, sheet }) => ({
    element,
    sheet,
    printed: element.textContent!,
    alone: element.matches(".passage > *"), // no refusal says why there is nothing
  }));
  return () => {
    for (const { element, sheet } of [...worksheets, ...glance].filter(isFresh)) {
      mark(element, "yours", sheet.changed);
    }
    for (const { element, sheet } of worksheets.filter(isFresh)) {
      mark(element, "void", isVoid(sheet));
    }
    for (const { element, sheet, printed, alone } of waits.filter(isFresh)) {
      hide(element, !(alone ? isVoid(sheet) : sheet.waiting || sheet.endless));
      put(element, !alone && sheet.endless ? word("narrow").replace(/:$/, ".") : printed);
    }
  };
}
