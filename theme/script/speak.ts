import { filled } from "./data";
import { all, mark, sheetOf } from "./element";
import { isVoid, type Sheet } from "./sheets";

const PAUSE = 700; // milliseconds after the last change: a number is spoken once, not at every digit

/**
 * Gives the function to call with the worksheets that the reader has changed. After a pause each says in its live line
 * its first answer and its gravest signal, or the sentence that the page has in their place. A worksheet that has lost
 * its answers to a change above it says so as well. One of them adds what news gives, which is about the page.
 */
export function makeSpeak(
  sheets: Sheet[],
  news: () => string,
): (changed: Iterable<number>) => void {
  const lines = all(".worksheet [role=status]").map((line) => {
    const worksheet = line.closest(".worksheet")!;
    return { line, worksheet, sheet: sheetOf(worksheet) };
  });
  const due = new Set<number>();
  const without = new Set<number>(); // answers
  let timer: number | undefined;
  const speak = () => {
    for (const { line, worksheet, sheet } of lines) {
      const lost = isVoid(sheets[sheet]);
      if (due.has(sheet) || (lost && !without.has(sheet))) {
        line.textContent = sentences(worksheet, sheet).join(" ").replace(/\s+/g, " ").trim();
        all(".aside .below", worksheet).forEach((one) => mark(one, "below", false)); // it is said once
      }
      without[lost ? "add" : "delete"](sheet);
    }
    const one = lines.find(({ sheet }) => due.has(sheet)) ?? lines[0];
    due.clear();
    one.line.textContent = `${one.line.textContent} ${news()}`.trim();
  };
  const sentences = (worksheet: Element, index: number): string[] => {
    if (isVoid(sheets[index])) {
      const whys = texts(":is(.fault, [data-refusal]):not([hidden])", worksheet);
      return whys.length ? whys : texts(".waiting", worksheet);
    }
    // How a laboratory's "<5" was taken, the first answer that is there, and the gravest signal. The rest is on the page.
    // Of answers that are compared, the sentence about them.
    const first = all(".answer dl > :not([hidden])", worksheet)[0];
    const signal = all(".signals > :not([hidden])", worksheet)[0];
    return [
      ...texts(".below:not([hidden])", worksheet),
      ...(first ? [answer(first)] : texts(".words > :not([hidden])", worksheet)),
      ...(signal ? [warning(signal)] : []),
    ];
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

const texts = (selector: string, within: Element): string[] =>
  all(selector, within).map((element) => element.textContent!);

/** A signal as a sentence: its word, a colon, and what is shown of the rest. */
const warning = (signal: Element): string => {
  const [name, ...rest] = [...signal.childNodes].filter((node) => !(node instanceof HTMLElement && node.hidden));
  return `${name.textContent}: ${rest.map((node) => node.textContent).join("")}`;
};

/** A row of the answers as a sentence. */
const answer = (row: Element): string =>
  filled("said", {
    label: row.querySelector("dt")!.textContent!,
    value: row.querySelector(".total")!.textContent!,
  });
