import { all, numberIn } from "./element";
import type { Field } from "./field";
import type { Sheet } from "./sheets";

const PAUSE = 700; // milliseconds after the last change: a number is spoken once, not at every digit

/**
 * Gives the function to call with the worksheets that the reader has changed. After a pause each says one sentence in
 * its live line: the answers, or the sentence that stands on the page in their place.
 */
export function makeSpeak(sheets: Sheet[], fields: Field[]): (changed: Iterable<number>) => void {
  const lines = all("[data-speak]").map((line) => ({
    line,
    sheet: numberIn(line.closest("[data-sheet]")!, "data-sheet"),
  }));
  const due = new Set<number>();
  let timer: number | undefined;
  const speak = () => {
    for (const { line, sheet } of lines) {
      if (due.has(sheet)) {
        line.textContent = tidy(sentences(line, sheet).map((element) => element.textContent));
      }
    }
    due.clear();
  };
  const sentences = (line: HTMLElement, index: number): Element[] => {
    if (sheets[index].waiting) {
      const faults = fields.filter((field) => field.sheet === index && field.faulty && field.fault);
      return faults.length ? faults.map((field) => field.fault!) : all(`[data-void-for="${index}"]`);
    }
    if (sheets[index].refused) {
      return all<Element>(`[data-refusal][data-sheet="${index}"]:not([hidden])`);
    }
    const said = document.getElementById(line.dataset.speak!)!;
    // The answers that are there, after how a laboratory's "<5" was taken.
    return [...all(".below:not([hidden])", line.closest(".worksheet")!), ...all(":scope > :not([hidden])", said)];
  };
  return (changed) => {
    for (const sheet of changed) {
      due.add(sheet);
    }
    lines.forEach(({ line }) => (line.textContent = "")); // what was said before may be true no longer
    clearTimeout(timer);
    timer = window.setTimeout(speak, PAUSE);
  };
}

const tidy = (texts: (string | null)[]): string => texts.join(" ").replace(/\s+/g, " ").trim();
