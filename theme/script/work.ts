import { all, numberIn } from "./element";
import { makeLine } from "./lines";
import type { Page } from "./page";
import { isVoid, type Sheet } from "./sheets";

const PAUSE = 200; // milliseconds after the last change, before work is written that is out of sight

/** The work of one worksheet. */
interface Work {
  sheet: Sheet;
  lines: (() => void)[];
  seen: boolean; // it is on the screen
  due: boolean; // it is of numbers that were changed since
}

/**
 * Gives the function that brings the work of the worksheets up to date: at once where it is on the screen, and after a
 * pause where it is folded or elsewhere, or when the page is printed.
 */
export function makeWork({ fields, sheets, works }: Page): () => void {
  const typed = new Set(fields.flatMap(({ inputs }) => inputs));
  const parts = new Map<Element, Work>();
  for (const element of all(".work ol")) {
    const sheet = sheets[numberIn(element.closest("[data-sheet]")!, "data-sheet")];
    const lines = all<Element>("li", element).map((line) => makeLine(line, typed, works.ends));
    parts.set(element, { sheet, lines, seen: false, due: sheet.changed });
  }
  const write = (wanted: (work: Work) => boolean) =>
    parts.forEach((work) => {
      if (work.due && wanted(work)) {
        work.due = isVoid(work.sheet); // what is out of sight then is written once there is an answer
        if (!work.due) {
          work.lines.forEach((line) => line());
        }
      }
    });
  const writeAll = () => write(() => true);
  const writeSeen = () => write(({ seen }) => seen);
  const watch = new IntersectionObserver((entries) => {
    entries.forEach(({ target, isIntersecting }) => (parts.get(target)!.seen = isIntersecting));
    writeSeen();
  });
  parts.forEach((_, element) => watch.observe(element));
  addEventListener("beforeprint", writeAll);
  let timer: number | undefined;
  return () => {
    parts.forEach((work) => (work.due ||= work.sheet.fresh));
    writeSeen();
    clearTimeout(timer);
    timer = window.setTimeout(writeAll, PAUSE);
  };
}
