import { word } from "./data";
import { hide, numberIn } from "./element";
import { isVoid, type Sheet } from "./sheets";
import { DOUBT, type Ends } from "./spread";

/**
 * Gives the function that shows the sentences, the work and the answers of a worksheet that hold, and hides the rest.
 * While it has no answers only the reason for that is shown. What holds for a part of a range only is shown, and says so.
 */
export function makeNotes(own: (selector: string) => Element[], sheet: Sheet, { low, high }: Ends): () => void {
  const notes = own("[data-when]").map((element) => ({
    element,
    cell: numberIn(element, "data-when"),
    refusal: element.hasAttribute("data-refusal"),
    partly: partlyOf(element),
    words: element.matches(".words > *"), // of the answer: another case says what was found, so doubt is not told
  }));
  const kinds = own("[data-kind]").map((element) => ({
    element,
    cell: numberIn(element, "data-kind"),
    other: element.hasAttribute("data-other"),
  }));
  return () => {
    for (const { element, cell, refusal, partly, words } of notes) {
      hide(element, high[cell] === 0 || (words && high[cell] === DOUBT) || (refusal ? sheet.waiting : isVoid(sheet)));
      const begins = refusal ? "narrow" : high[cell] === DOUBT ? "perhaps" : "partly";
      const now = low[cell] || !high[cell] ? "" : ` ${word(begins)} `;
      if (partly && partly.textContent !== now) {
        partly.textContent = now;
      }
    }
    for (const { element, cell, other } of kinds) {
      hide(element, (high[cell] !== 0) !== other);
    }
  };
}

/** How a remark begins that holds for a part of a range only. The page was printed with it only where it holds. */
function partlyOf(element: Element): Element | null {
  if (!element.matches("p:not(.fault)")) {
    return null;
  }
  const printed = element.querySelector("[data-partly]");
  if (printed) {
    return printed;
  }
  const signal = element.querySelector(":scope > strong");
  const partly = document.createElement("span");
  element.insertBefore(partly, signal ? signal.nextSibling : element.firstChild);
  return partly;
}
