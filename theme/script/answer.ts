import { all, hide } from "./element";
import { apply } from "./number";
import { readTyped } from "./typed";
import { findUnit } from "./unitword";

/** An answer as the program takes it: in the unit that is asked for, as it is written, and what was told with it. */
type Heard = [value: number, bare: number, told: number];

const ALONE = 0; // a number without the unit that is asked for
const FITS = 1;
const OTHER = 2;

/** One thing that is asked of a learner. */
export interface Answer {
  heard: Heard | null; // null: nothing yet
  /** Whether what was heard is right. */
  right(): boolean;
  clear(): void;
}

/**
 * Binds the field of an answer. When the learner asks for a mark, marked is called with what gives the sentence that
 * then is shown, and whether it came right.
 */
export function bindAnswer(part: Element, marked: (said: () => string, right: () => boolean) => void): Answer {
  const input = part.querySelector("input")!;
  const units = part.querySelector("select");
  const mark = part.querySelector(".mark")!;
  const unread = mark.querySelector(".unread")!;
  const usual = unread.textContent!;
  const shown = () => all(":scope > :not([hidden])", mark);

  /** Reads the field; a sentence where it cannot be read. */
  const read = (): Heard | string => {
    const typed = readTyped(input.value, false, false);
    if (typeof typed === "string" || typed.low !== typed.high) {
      return typeof typed === "string" && typed ? typed : usual;
    }
    const names = units ? all<HTMLOptionElement>("option", units).slice(1).map((option) => option.text) : [];
    const written = typed.unit ? findUnit(typed.unit, names, 0) : (units?.selectedIndex ?? 0) - 1;
    if (typed.unit && units && written >= 0) {
      units.selectedIndex = written + 1;
    }
    const fits = units && written >= 0 ? units.options[written + 1]!.getAttribute("data-fits") : "";
    const told = fits ? FITS : typed.unit || written >= 0 ? OTHER : units ? ALONE : FITS;
    return [fits ? apply(typed.low, fits) : typed.low, typed.low, told];
  };

  const answer: Answer = {
    heard: null,
    right: () => !!mark.querySelector(".right:not([hidden])"),
    clear() {
      answer.heard = null;
      input.value = "";
      if (units) {
        units.selectedIndex = 0;
      }
      hide(mark, true);
    },
  };

  const check = (): void => {
    const heard = read();
    const sentence = typeof heard === "string" ? heard : "";
    if (typeof heard !== "string") {
      answer.heard = heard;
    }
    marked(
      () => {
        hide(mark, false);
        mark.classList.toggle("unclear", !!sentence);
        unread.textContent = sentence;
        hide(unread, !sentence);
        mark.querySelector(".either")?.toggleAttribute("hidden", all(".slip:not([hidden])", mark).length < 2);
        return sentence || shown().map((said) => said.textContent).join(" ");
      },
      () => !sentence && answer.right(),
    );
  };

  input.readOnly = false;
  if (units) {
    units.disabled = false;
  }
  part.querySelector("button")!.onclick = check;
  input.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      check();
    }
  });
  return answer;
}
