import { word } from "./data";
import { all, hide, numberIn } from "./element";
import { isFresh, isVoid, type Sheet } from "./sheets";

/** What the margin gives beside a part of the text: the reader's numbers, by name. */
interface Margin {
  /** Brings the notes up to date, once the numbers in them are. */
  update(): void;
  /** What there is to say of the page since it was last asked; "" for nothing. */
  news(): string;
}

/** One number of a note. Where there is none, a word says so in its place. */
interface Own {
  sheet: Sheet;
  value: HTMLElement;
  instead: HTMLElement;
}

/**
 * The text of a page stays as it was written, for the example. A part of it whose worksheets have other numbers is
 * marked so, by a note that the page was printed with.
 */
export function makeMargin(sheets: Sheet[]): Margin {
  const notes = all(".margin.own").map((note) => ({
    note,
    owns: all("[data-sheet]", note).map((own) => findOwn(own, sheets)),
  }));
  let told = false; // that the margin gives the reader's numbers: once, until the page shows the example again
  const printed = document.createElement("p");
  if (notes.length) {
    printed.className = "printed";
    printed.textContent = word("beside");
    document.querySelector(".head")!.after(printed);
  }
  const shows = () => notes.some(({ note }) => !note.hidden);
  return {
    update() {
      for (const { note, owns } of notes.filter(({ owns }) => owns.some(isFresh))) {
        note.hidden = !owns.some(({ sheet }) => sheet.changed);
        owns.forEach(say);
      }
      hide(printed, !shows());
    },
    news() {
      const say = shows() && !told ? word("beside") : "";
      told = shows();
      return say;
    },
  };
}

function findOwn(own: HTMLElement, sheets: Sheet[]): Own {
  const instead = document.createElement("span");
  instead.hidden = true;
  own.append(instead);
  return { sheet: sheets[numberIn(own, "data-sheet")], value: own.querySelector(":scope > span")!, instead };
}

/** Says in words that there is no number, and otherwise leaves the number to speak. */
function say({ sheet, value, instead }: Own): void {
  const none = isVoid(sheet) ? word("unanswered") : value.querySelector(".void") ? word("none") : "";
  if (instead.textContent !== none) {
    instead.textContent = none;
    hide(value, !!none);
    hide(instead, !none);
  }
}
