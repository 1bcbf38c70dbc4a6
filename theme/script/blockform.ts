// The form of the page about one block: what nobody knows counts as a range.

import { filled } from "./data";
import { all, hide } from "./element";
import { enter, type Entry, type Field } from "./field";
import { edition, entryFor, entryOf, factOf, unitOfWorked } from "./facts";
import type { Page } from "./page";
import type { Block } from "./blockstore";
import { numberIn } from "./element";

const DIGITS = 9; // of what is worked, as it goes into the fields of a guide: more are not read, and change no answer

/** What the form does with a block. */
export interface Form {
  /** What is in the form, and what was worked of it. */
  read(): Pick<Block, "facts" | "worked" | "edition">;
  /** Puts a block into it; gives how many of its numbers do not fit. */
  write(block: Block): number;
  /** Back to the example. */
  clear(): void;
}

export function makeForm({ fields, works }: Page, then: () => void): Form {
  const asked = fields.map((field) => ({ field, id: factOf(field) })).filter(({ field }) => field.element.closest(".known"));
  const leaf = asked.find(({ id }) => id === "leaf")?.field;
  const later = () => parseFloat(leaf?.element.value ?? "") > 1;
  asked.forEach(({ field }) => mountUnknown(field, leaf, later, then));
  const untouched = document.createElement("p");
  untouched.className = "hint";
  document.querySelector(".sheet-name")!.after(untouched);
  const tell = () => tellUntouched(untouched, asked);
  ["input", "change", "click", "block"].forEach((event) => document.addEventListener(event, () => setTimeout(tell)));
  const clear = () => fields.forEach((field) => field.reset());
  return {
    clear,
    read() {
      const facts: Record<string, Entry> = {};
      const worked: Record<string, Entry> = {};
      asked.filter(({ field }) => !field.faulty).forEach(({ field, id }) => (facts[id] = entryOf(field, id)));
      for (const row of all("[data-fact]:not(.field)")) {
        const cell = numberIn(row.querySelector("[data-show]")!, "data-show");
        const [low, high] = [works.ends.low[cell], works.ends.high[cell]];
        const id = row.getAttribute("data-fact")!;
        if (isFinite(high - low) && !row.closest(".void")) {
          const unit = unitOfWorked[id];
          const [least, most] = [low, high].map((end) => +end.toPrecision(DIGITS));
          const text = least === most ? `${least}` : `${least} to ${most}`;
          worked[id] = unit ? [text, unit] : [text];
        }
      }
      return { facts, worked, edition };
    },
    write({ facts }) {
      clear();
      const known = asked.flatMap(({ field, id }): [Field, Entry | null][] => (facts[id] ? [[field, entryFor(field, id, facts[id])]] : []));
      const fit = known.filter((one): one is [Field, Entry] => !!one[1]);
      const unfit = enter(fit.map(([field]) => field), fit.map(([, entry]) => entry));
      unfit.forEach((field) => field.reset());
      return known.length - fit.length + unfit.length;
    },
  };
}

/** Says which numbers that count are still the example's, where others are the reader's. */
function tellUntouched(line: Element, asked: { field: Field; id: string }[]): void {
  const isFilled = (name: string) => !!asked.find(({ id }) => id === name)?.field.element.value;
  const names = asked.filter(({ field: { changed, element }, id }) => {
    const part = element.closest("details"); // it counts in place of a field of the part above it
    return !changed && element.value && (!part || part.previousElementSibling!.querySelector(".instead:not([hidden])")) &&
      !(isFilled("counted") && /^(tree|row|pattern)$/.test(id));
  });
  hide(line, !names.length || !asked.some(({ field }) => field.changed));
  line.textContent = filled("untouched", {
    names: names.map(({ field }) => document.querySelector(`[for="${field.element.id}"]`)!.textContent!.trim()).join("; "),
  });
}

/**
 * The button for what is not known, and the sentences that say what it counts as. An empty field is not known either,
 * unless other facts count in its place.
 */
function mountUnknown(field: Field, leaf: Field | undefined, later: () => boolean, then: () => void): void {
  const box = field.element.closest<HTMLElement>(".field")!;
  const text = box.getAttribute("data-unknown");
  if (!text) {
    return;
  }
  const entries = [text, box.getAttribute("data-later") ?? text].map((text): Entry => [text, box.getAttribute("data-unknown-in") ?? undefined]);
  const entry = () => entries[+later()]!;
  const line = box.querySelector(".lacking")!;
  const warning = document.querySelector(`[data-untested="${box.getAttribute("data-fact")}"]`);
  const instead = box.querySelector(".instead");
  const first = box.hasAttribute("data-first");
  const button = box.querySelector<HTMLElement>(":scope > button")!;
  let told = text.includes(" "); // a range says it; of a single number, only who pressed the button does
  const plain = ([text, unit]: Entry) => [text.replace(/ \D+ /, " "), unit].join(); // a page of another language has its own "to"
  const isUnknown = () => told && entries.some((entry) => plain(field.entry()) === plain(entry));
  const isEmpty = () => !!instead && !field.element.value;
  const show = () => {
    hide(line, !isUnknown());
    hide(warning, isUnknown());
    hide(warning && warning.nextElementSibling, !isUnknown());
    line.firstElementChild!.textContent = entry()[0];
    hide(button, isUnknown() || (first && later() && isEmpty()));
    if (instead) {
      hide(instead, !isEmpty());
    }
  };
  const put = () => {
    enter([field], [first && later() ? ["", entry()[1]] : entry()]);
    told = true;
    show();
    then();
  };
  // What first leaf needs, and how far its roots reach, is no figure for older trees. What the reader has typed stays.
  (first || box.hasAttribute("data-later")) && leaf?.element.addEventListener("change", () => {
    if (later() ? !field.changed || isUnknown() : first ? isEmpty() : isUnknown()) {
      put();
    }
  });
  button.onclick = put;
  field.element.addEventListener("change", () => (field.element.value || instead ? show() : put()));
  document.addEventListener("input", show);
  document.addEventListener("block", show);
  show();
}
