import { printedIndex } from "./choice";
import { filled } from "./data";
import { all } from "./element";

/** What stands in a field: the text, and the place of its unit in the list of units. */
interface Entry {
  typed: string;
  unit: number;
}

/** What was given for one option is no figure of another, so each option keeps its own. */
export interface Asides {
  /** Takes the lists as they stand, where a browser has brought back what was typed on an earlier visit. */
  begin(): void;
  /** Sets aside what belongs to an option that is no longer chosen; says whether there was any. */
  look(): boolean;
}

/** Finds the numbers that belong to a choice. A press on the button that brings one back calls then. */
export function makeAsides(then: () => void): Asides {
  const belonging = all<HTMLInputElement>("input[data-for]").map((input) => new Belonging(input, then));
  return {
    begin: () => belonging.forEach((one) => one.begin()),
    look: () => belonging.filter((one) => one.look()).length > 0,
  };
}

/** A number that belongs to one choice or more: the price of the material that is chosen. */
class Belonging {
  private readonly lists: HTMLSelectElement[];
  private readonly units: HTMLSelectElement | null;
  private readonly printed: Entry; // the example's, and the options that it is for
  private readonly example: string;
  private readonly kept = new Map<string, Entry>(); // by the options that it is for
  private readonly note = document.createElement("div");
  private options: string; // those that the number in the field is for
  private last: [entry: Entry, options: string] | null = null; // what was set aside last

  constructor(private readonly input: HTMLInputElement, private readonly then: () => void) {
    this.lists = input.getAttribute("data-for")!.split(" ").map((cell) => document.querySelector(`select[data-cell="${cell}"]`)!);
    this.units = input.parentElement!.querySelector("select[data-unit-for]");
    this.printed = { typed: input.defaultValue, unit: this.units ? printedIndex(this.units) : -1 };
    this.options = this.example = this.lists.map(printedIndex).join();
    this.note.className = "aside";
    this.forget();
    input.addEventListener("reset", () => this.forget());
  }

  begin(): void {
    const { typed, unit } = this.entry;
    if (this.chosen === this.options || (typed === this.printed.typed && unit === this.printed.unit)) {
      return;
    }
    this.options = this.chosen;
    if (!typed.trim() && this.printed.typed.trim()) {
      this.last = [this.printed, this.example];
      this.tell();
    }
  }

  look(): boolean {
    const { chosen, entry: old, options: before } = this;
    if (chosen === before) {
      if (old.typed.trim()) {
        this.note.remove(); // there is a number for this option
      }
      return false;
    }
    this.kept.set(before, old);
    this.options = chosen;
    this.entry = this.kept.get(chosen) ?? { typed: "", unit: old.unit };
    this.last = old.typed.trim() ? [old, before] : this.last;
    this.note.remove();
    if (!this.entry.typed.trim()) {
      this.tell();
    }
    return true;
  }

  /** Back to the example: nothing is kept for other options. */
  private forget(): void {
    this.kept.clear();
    this.kept.set(this.example, this.printed);
    this.options = this.example;
    this.last = null;
    this.note.remove();
  }

  private get chosen(): string {
    return this.lists.map((list) => list.selectedIndex).join();
  }

  private get entry(): Entry {
    return { typed: this.input.value, unit: this.units ? this.units.selectedIndex : -1 };
  }

  private set entry({ typed, unit }: Entry) {
    this.input.value = typed;
    if (this.units) {
      this.units.selectedIndex = unit;
    }
  }

  /** Says beside the field what was set aside, with a button that uses it all the same. */
  private tell(): void {
    if (!this.last) {
      return;
    }
    const [old, before] = this.last;
    const amount = this.amount(old);
    const say = document.createElement("p");
    say.className = "hint below";
    say.textContent = filled("set-aside", { value: amount, option: this.names(before, this.options) });
    if (!this.input.hasAttribute("data-presence")) {
      say.textContent += " " + filled("needed", { option: this.names(this.options, before) });
    }
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = filled("use-again", { value: amount });
    button.addEventListener("click", () => {
      this.entry = old;
      this.note.remove();
      this.input.focus(); // the button goes
      this.then();
    });
    this.note.replaceChildren(say, button);
    this.input.closest(".field")!.querySelector(".fault")!.before(this.note);
  }

  /** An entry with its unit: "11.05 lb/gal", "$420/ton". */
  private amount({ typed, unit }: Entry): string {
    const text = this.units?.options[unit]?.text ?? this.input.parentElement!.querySelector(".unit")?.textContent ?? "";
    return text.startsWith("$") ? "$" + typed.trim() + text.slice(1) : `${typed.trim()} ${text}`.trim();
  }

  /** The names of the options that are not the same in both. */
  private names(options: string, others: string): string {
    const rest = others.split(",");
    const differing = options.split(",").map((at, i) => (at === rest[i] ? "" : this.lists[i]!.options[+at]!.text));
    return differing.filter(Boolean).join(", ");
  }
}
