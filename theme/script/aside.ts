import { printedIndex } from "./choice";
import { filled } from "./data";
import { all } from "./element";
import { ENTERED } from "./field";

/** What is in a field: the text, and the place of its unit in the list of units. */
interface Put {
  typed: string;
  unit: number;
}

/**
 * Finds the numbers that belong to a choice. What was given for one option is no figure of another, so each option keeps
 * its own. Gives the function that sets aside what belongs to an option that is no longer chosen, and says whether there
 * was any. A press on the button that brings one back calls then.
 */
export function makeAsides(then: () => void): () => boolean {
  const looks = all<HTMLInputElement>("input[data-for]").map((input) => makeBelonging(input, then));
  return () => looks.filter((look) => look()).length > 0;
}

/** A number that belongs to one choice or more: the price of the material that is chosen. */
function makeBelonging(input: HTMLInputElement, then: () => void): () => boolean {
  const lists = input.getAttribute("data-for")!.split(" ").map(
    (cell) => document.querySelector<HTMLSelectElement>(`select[data-cell="${cell}"]`)!,
  );
  const units = input.parentElement!.querySelector<HTMLSelectElement>("select[data-unit-for]");
  // The example's number, and the options that it is for.
  const printed: Put = { typed: input.defaultValue, unit: units ? printedIndex(units) : -1 };
  const example = lists.map(printedIndex).join();
  const kept = new Map<string, Put>(); // by the options that it is for
  const note = document.createElement("div");
  note.className = "aside";
  let options: string; // those that the number in the field is for
  let last: [entry: Put, options: string] | null; // what was set aside last

  const chosen = (): string => lists.map((list) => list.selectedIndex).join();
  const entry = (): Put => ({ typed: input.value, unit: units ? units.selectedIndex : -1 });
  const enter = ({ typed, unit }: Put): void => {
    input.value = typed;
    if (units) {
      units.selectedIndex = unit;
    }
  };

  /** Back to the example: nothing is kept for other options. */
  const forget = (): void => {
    kept.clear();
    kept.set(example, printed);
    options = example;
    last = null;
    note.remove();
  };

  /** Says beside the field what was set aside, with a button that uses it all the same. */
  const tell = (): void => {
    if (!last) {
      return;
    }
    const [old, before] = last;
    const value = amount(old);
    const say = document.createElement("p");
    say.className = "hint below";
    say.textContent = filled("set-aside", { value, option: names(before, options) });
    if (!input.hasAttribute("data-presence")) {
      say.textContent += " " + filled("needed", { option: names(options, before) });
    }
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = filled("use-again", { value });
    button.addEventListener("click", () => {
      enter(old);
      note.remove();
      input.focus(); // the button goes
      then();
    });
    note.replaceChildren(say, button);
    input.closest(".field")!.querySelector(".fault")!.before(note);
  };

  /** An entry with its unit: "11.05 lb/gal", "$420/ton". It is written once, where it was typed as well. */
  const amount = ({ typed, unit }: Put): string => {
    const text = units?.options[unit]?.text ?? input.parentElement!.querySelector(".unit")?.textContent ?? "";
    const number = typed.trim();
    return /[a-z%]\S*$/i.test(number) ? number
      : text[0] === "$" ? "$" + number.replace("$", "") + text.slice(1)
      : `${number} ${text}`.trim();
  };

  /** The names of the options that are not the same in both. */
  const names = (options: string, others: string): string => {
    const rest = others.split(",");
    const differing = options.split(",").map((at, i) => (at === rest[i] ? "" : lists[i]!.options[+at]!.text));
    return differing.filter(Boolean).join(", ");
  };

  forget();
  if (input.value !== printed.typed || entry().unit !== printed.unit) {
    options = chosen(); // the page was made again around what a reader had typed
  }
  input.addEventListener("reset", forget);
  input.addEventListener(ENTERED, () => (options = chosen()));
  return () => {
    const [now, old] = [chosen(), entry()];
    const there = old.typed.trim();
    if (now === options) {
      if (there) {
        note.remove(); // there is a number for this option
      }
      return false;
    }
    kept.set(options, old);
    last = there ? [old, options] : last;
    options = now;
    const back = kept.get(now) ?? { typed: "", unit: old.unit };
    enter(back);
    note.remove();
    if (!back.typed.trim()) {
      tell();
    }
    return true;
  };
}
