import { all, numberIn } from "./element";
import { makeNotes } from "./notes";
import type { Block, Page } from "./page";
import type { Sheet } from "./sheets";
import { makeShow } from "./show";

/**
 * Mounts what follows one worksheet: its numbers, and the sentences that hold. What lies in a block inside it belongs to
 * that one.
 */
export function mountPart(element: Element, page: Page): Block & { sheet: Sheet } {
  const sheet = page.sheets[numberIn(element, "data-sheet")];
  const own = (selector: string) =>
    all<Element>(selector, element).filter((one) => one.closest("[data-sheet]") === element);
  const parts = [makeShow(own("[data-show]"), sheet, page), makeNotes(own, sheet, page.works.ends)];
  return {
    element,
    sheet,
    fresh: () => sheet.fresh,
    update: () => parts.forEach((part) => part()),
  };
}
