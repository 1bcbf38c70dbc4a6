import { word } from "./data";
import { all, hide } from "./element";
import { Passage } from "./passage";
import type { Sheet } from "./sheets";

/** What follows the reader's numbers in the text of the page. */
interface Follow {
  /** Brings the notes up to date. */
  update(): void;
  /** What there is to say of the whole page since it was last asked; "" for nothing. */
  news(): string;
}

/**
 * Says beside each passage that was written for the example, and now shows other numbers, that it does. A press on the
 * button there calls back, which takes every worksheet to its example.
 */
export function makeFollow(sheets: Sheet[], back: () => void): Follow {
  let told = false; // that the text shows the reader's numbers: once, until it shows the example's again
  let pressed = false;
  const press = (figure: HTMLElement) => {
    figure.focus(); // the button goes, and the reader stays in the sentence
    pressed = true;
    back();
  };
  const passages = findPassages(press);
  const printed = document.createElement("p");
  printed.className = "printed";
  printed.textContent = word("followed");
  document.querySelector(".head")!.after(printed);
  return {
    update() {
      hide(printed, !sheets.some((sheet) => sheet.changed));
      const news = passages.filter((passage) => passage.look());
      if (news.length) {
        inPlace(() => news.forEach((passage) => passage.say()));
      }
    },
    news() {
      const shows = passages.some((passage) => passage.differs);
      const say = pressed ? word("back") : shows && !told ? word("followed") : "";
      told = shows;
      pressed = false;
      return say;
    },
  };
}

/** The paragraphs, list items, headings and tables that have figures in them. */
function findPassages(press: (figure: HTMLElement) => void): Passage[] {
  const figures = new Map<Element, HTMLElement[]>();
  for (const figure of all("article .worked")) {
    const place = figure.closest("p, li, dd, dt, .heading, .scroll")!;
    figures.set(place, [...(figures.get(place) ?? []), figure]);
  }
  return [...figures].map(([place, own]) => new Passage(place, own, press));
}

/** Changes the page without moving what the reader is at. */
function inPlace(change: () => void): void {
  const at = document.activeElement!;
  const top = () => at.getBoundingClientRect().top;
  const before = top();
  change();
  if (at !== document.body) {
    scrollBy(0, top() - before);
  }
}
