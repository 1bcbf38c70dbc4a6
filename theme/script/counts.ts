import { filled, word } from "./data";
import { all, hide } from "./element";
import { wayHere } from "./key";

/** One answer that was heard. */
export interface Counted {
  exercise: number;
  ask: number; // its place among what is asked
  right: boolean;
  sentences: number[]; // the sentences that were said of it, by their places in the mark
}

interface Counts {
  add(one: Counted): void;
  /** Shows the counts of the exercise that is chosen. */
  show(): void;
}

/** Binds what shows the counts, and the buttons that take answers back. */
export function bindCounts(tally: HTMLElement, boxes: HTMLElement[], chosen: () => number): Counts {
  const table = tally.querySelector(".counts")!;
  const last = tally.querySelector(".last")!;
  const undo = tally.querySelector<HTMLElement>(".undo")!;
  const clear = tally.querySelector<HTMLElement>(".clear")!;
  let heard = read();

  /** A sentence without the right answer, which differs from card to card. */
  const sentence = (part: Element): string => {
    const text = part.textContent!;
    const key = part.querySelector(".key")?.textContent;
    return key ? text.slice(0, text.indexOf(key)).replace(/[.:][^.:]*$/, "") : text;
  };

  const showAsk = (part: Element, of: Counted[]): HTMLElement[] => {
    const parts = all(".mark > *", part);
    const groups = new Map<string, number>();
    of.forEach((one) => {
      const text = one.sentences.flatMap((i) => (parts[i] ? sentence(parts[i]) : [])).join(" ");
      groups.set(text, (groups.get(text) ?? 0) + 1);
    });
    const head = document.createElement("h3");
    head.textContent = filled("counted", {
      label: part.querySelector(".question, label")!.textContent!,
      count: "" + of.length,
      right: "" + of.filter(({ right }) => right).length,
    });
    const list = document.createElement("ul");
    [...groups].sort(([, a], [, b]) => b - a).forEach(([text, count]) => {
      const item = document.createElement("li");
      const number = document.createElement("b");
      number.textContent = "" + count;
      item.append(number, " ", text);
      list.append(item);
    });
    return [head, list];
  };

  const show = (): void => {
    const mine = heard.filter(({ exercise }) => exercise === chosen());
    table.replaceChildren(
      ...all("li[data-asked]", boxes[chosen()]).flatMap((part) => {
        const of = mine.filter(({ ask }) => "" + ask === part.getAttribute("data-asked"));
        return of.length ? showAsk(part, of) : [];
      }),
    );
    hide(undo, !mine.length);
    hide(clear, !heard.length);
  };

  const set = (all: Counted[]): void => {
    heard = all;
    keep(heard);
    show();
  };

  undo.onclick = () => {
    const at = heard.map(({ exercise }) => exercise).lastIndexOf(chosen());
    set(heard.filter((_, i) => i !== at));
    last.textContent = "";
  };
  clear.onclick = () => {
    const before = heard;
    set([]);
    const back = document.createElement("button");
    back.type = "button";
    back.textContent = word("put-back");
    back.onclick = () => {
      set([...before, ...heard]);
      last.textContent = "";
    };
    last.replaceChildren(word("cleared"), " ", back);
    back.focus();
  };

  return {
    add: (one) => set([...heard, one]),
    show,
  };
}

const key = () => wayHere() + "#tally";

function read(): Counted[] {
  try {
    const kept = JSON.parse(sessionStorage.getItem(key())!) as Counted[];
    return kept.every(({ exercise, ask, sentences }) => exercise >= 0 && ask >= 0 && sentences.every((i) => i >= 0)) ? kept : [];
  } catch {
    return []; // nothing is kept, it is damaged, or the browser forbids it
  }
}

function keep(heard: Counted[]): void {
  try {
    sessionStorage.setItem(key(), JSON.stringify(heard));
  } catch {
    // Forbidden or full: the tally works until the page is left.
  }
}
