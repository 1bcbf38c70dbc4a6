import { all, hide } from "./element";
import { means, readAmount } from "./heard";
import { apply } from "./number";
import { bindPick } from "./pick";
import { FITS, type Heard, type Place } from "./place";

const ALONE = 0; // a number without the unit that is asked for
const OTHER = 2;

/** An answer as it is kept: what is typed, the place of the unit that is chosen, and whether it was marked. */
export type Kept = [text: string, unit: number, marked: boolean];

/** What an answer is marked as: neither is one that is right but for its unit, or for an answer before it. */
export type Came = "right" | "wrong" | "neither" | "unread";

/** One thing that is asked of a learner. */
export interface Answer {
  readonly element: HTMLElement;
  heard: Heard | null; // null: nothing yet
  /** Reads the field. The page then works the card, and shows what is said. */
  hear(): void;
  /** Shows the marking of an answer after a run: mark gives the numbers of the sentences. */
  show(mark: (heard: Heard) => number[]): void;
  /** What it was marked as. */
  came(): Came | null;
  /** The sentences of its mark. */
  said(): string;
  clear(): void;
  kept(): Kept;
  enter(kept: Kept): void;
}

/** Binds the field of an answer. Check is called when the learner asks for a mark. */
export function bindAnswer(element: HTMLElement, check: (answer: Answer) => void): Answer {
  const place = element.matches(".pick") ? bindPick(element) : bindNumber(element, () => check(answer));
  const mark = element.querySelector(".mark")!;
  const unread = mark.querySelector(".unread")!;
  const sentences = all(":scope > *", mark);
  let unclear = false;

  const answer: Answer = {
    element,
    heard: null,
    hear() {
      answer.heard = place.hear();
      unclear = !answer.heard;
    },
    show(markOf) {
      hide(mark, !answer.heard && !unclear);
      mark.classList.toggle("unclear", unclear);
      const said = answer.heard ? markOf(answer.heard) : [];
      sentences.forEach((one, i) => hide(one, one === unread ? !unclear : !said.includes(i)));
    },
    came() {
      const is = (kind: string) => !!mark.querySelector(`.${kind}:not([hidden])`);
      return unclear ? "unread" : !answer.heard ? null : is("right") ? "right" : is("half") ? "neither" : "wrong";
    },
    said: () => sentences.filter((one) => !one.hidden).map((one) => one.textContent).join(" "),
    clear() {
      answer.enter(["", 0, false]);
      answer.heard = null;
      unclear = false;
    },
    kept: () => [...place.entry(), !!answer.heard],
    enter([text, unit, marked]) {
      place.put(text, unit);
      if (marked) {
        answer.hear();
      }
    },
  };

  element.querySelector("button")!.onclick = () => check(answer);
  return answer;
}

/** Binds a field for a number, and its list of units. Enter is called when the learner presses that key. */
function bindNumber(element: HTMLElement, enter: () => void): Place {
  const input = element.querySelector("input")!;
  const units = element.querySelector("select");

  /** The factor of the unit that is typed, or else chosen; "" where it does not fit. One that is typed is chosen, too. */
  const fitOf = (typed: string, chosen: string): string => {
    const options = units ? [...units.options] : [];
    const at = options.findIndex(({ value, text }) => value && means(typed || chosen, text));
    if (typed && at > 0) {
      units!.selectedIndex = at;
    }
    return options[at]?.getAttribute("data-fits") ?? "";
  };

  input.readOnly = false;
  if (units) {
    units.disabled = false;
  }
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      enter();
    }
  });
  return {
    hear() {
      const read = readAmount(input.value);
      if (!read) {
        return null;
      }
      const [value, typed] = read;
      const chosen = units?.value ?? "";
      const fits = typed || chosen ? fitOf(typed, chosen) : "";
      const told = fits ? FITS : typed || chosen ? OTHER : units ? ALONE : FITS;
      return [fits ? apply(value, fits) : value, value, told];
    },
    entry: () => [input.value, units?.selectedIndex ?? 0],
    put(text, unit) {
      input.value = text;
      if (units) {
        units.selectedIndex = unit;
      }
    },
  };
}
