import { choose, chosenIn, printedIndex } from "./choice";
import { filled, word } from "./data";
import { all, hide, numberIn, put, same, sheetOf } from "./element";
import { fill, type Field } from "./field";
import { load, RANGES } from "./later";
import { makeLimits } from "./limits";
import { apply, text } from "./number";
import { dayText } from "./shown";
import { readTyped, type Typed } from "./typed";
import { findUnit } from "./unitword";

/**
 * The value of a field, in the cell's own unit; NaN for an empty one. The kind is 1 for the given's second kind of
 * quantity, or the form that it is told in; 0 for neither.
 */
type Value = [low: number, high: number, kind: number];

const LONGEST = 24; // letters that a field makes room for: two numbers of nine digits would need a line of their own

/** The sentence for a number that cannot be used. It is tied to its field. */
function faultOf(input: Element): Element {
  const fault = input.closest(".field")!.querySelector(".fault")!;
  fault.id = input.id + "-fault";
  const hint = input.getAttribute("aria-describedby") ?? "";
  input.setAttribute("aria-describedby", `${hint} ${fault.id}`.trim());
  return fault;
}

/**
 * A number, a range or a day to type, perhaps with a choice of units and perhaps one that may be left empty.
 *
 * Changing the unit keeps the digits: it is the unit of the number on the report that the reader corrects.
 */
export function makeNumberField(input: HTMLInputElement): Field {
  // There is no presence where the field must be filled, and no others where it takes one kind of quantity, in one form.
  const names = ["data-cell", "data-presence", "data-others", "data-start-high"] as const;
  const [cell, presence, others, high] = names.map((name) => numberIn(input, name));
  const low = input.hasAttribute("data-start") ? numberIn(input, "data-start") : parseFloat(input.defaultValue);
  const fault = faultOf(input);
  const why = fault.appendChild(document.createElement("span")); // what more there is to say of a fault
  const day = input.hasAttribute("data-day");
  const lab = input.hasAttribute("data-lab");
  const limits = makeLimits(input, fault, day ? dayText : text);
  const units = input.parentElement!.querySelector<HTMLSelectElement>("select[data-unit-for]");
  const printedUnit = units ? printedIndex(units) : 0;
  let below = document.getElementById(input.id + "-below"); // the sentence for a laboratory's "<5"
  let typed: string | null = null; // as last read
  let unit = -1;
  let factor = "1/1";
  let reason: string | null = null; // why it cannot be used, beside what the field says itself; null when it can
  let early = false; // it is a range, and the script that works ranges is not there yet
  let told = ""; // which unit was typed behind the number, where it was not the one chosen

  /** The option at a place of the list of units, if it is of the second kind of quantity. */
  const otherAt = (unit: number): Element | null => {
    const option = units?.options[unit];
    return option?.hasAttribute("data-other") ? option : null;
  };
  /** The kind of quantity, or the form, of the unit at a place of the list. */
  const kindAt = (unit: number): number =>
    otherAt(unit) ? 1 : (units && numberIn(units.options[unit]!, "data-form")) || 0;

  const start: Value = [low, isNaN(high) ? low : high, kindAt(printedUnit)]; // the example's
  let value = start;

  /**
   * Chooses in the list the unit that was typed behind a number. When the reader chooses another there, the typed one is
   * taken out, but for feet with inches. False for a unit that the field does not know.
   */
  const adopt = ({ unit, parted }: Typed, chosen: boolean): boolean => {
    if (!unit || (chosen && !parted)) {
      typed = input.value = unit ? typed!.replace(unit, "") : typed!;
      return true;
    }
    const names = all("option, .unit", input.parentElement!).map((name) => name.textContent!);
    const at = findUnit(unit, names, units?.selectedIndex ?? 0);
    if (units && at >= 0 && at !== units.selectedIndex) {
      units.selectedIndex = at;
      told = filled("read-as", { name: names[at]! }) + " ";
    }
    return at >= 0;
  };

  /**
   * Takes the value from what is typed. What the page was printed with stands for the example's own number, which
   * may have more digits than are shown.
   */
  const take = (chosen: boolean): void => {
    const read = typed!.trim() ? readTyped(typed!, day, lab) : null;
    const numbers = typeof read === "string" ? null : read;
    told = "";
    const unknown = numbers && !adopt(numbers, chosen);
    const now = units?.selectedIndex ?? 0;
    if (now !== unit) {
      unit = now;
      factor = units?.value || "1/1";
      limits.in(factor, otherAt(unit));
    }
    const before = value;
    reason = null;
    if (typed === input.defaultValue && unit === printedUnit) {
      value = start;
    } else if (numbers && !unknown && limits.hold(numbers.low) && limits.hold(numbers.high)) {
      value = [apply(numbers.low, factor), apply(numbers.high, factor), kindAt(unit)];
    } else if (read === null && !isNaN(presence)) {
      value = [NaN, NaN, 0];
    } else {
      reason = unknown ? filled("no-unit", { name: numbers!.unit })
        : typeof read === "string" && read || (read === null || day ? "" : filled("no-number", { name: typed!.trim() }));
    }
    early = value[0] < value[1] && !globalThis.findRanges;
    if (early) {
      value = before;
      reason = word("early");
      load(RANGES);
    }
    showBelow(numbers);
    show(numbers);
  };

  /**
   * Says how a laboratory's "<5" is taken, and which unit was read. The page was printed with the sentence only if the
   * example is a "<5".
   */
  const showBelow = (numbers: Typed | null): void => {
    const lab = numbers?.below ? filled("below", { high: text(numbers.high) }) : "";
    const shown = reason === null && told + lab;
    if (shown) {
      if (!below) {
        below = document.createElement("p");
        below.className = "hint below";
        fault.before(below);
      }
      put(below, shown);
    }
    hide(below, !shown);
  };

  const show = (numbers: Typed | null): void => {
    field.faulty = reason !== null;
    field.typed = field.faulty || day || !numbers ? undefined : [numbers.low, numbers.high];
    field.changed = field.faulty || !same(value, start);
    hide(fault, !field.faulty);
    input.style.minWidth = `calc(${Math.min(typed!.length, LONGEST)}ch + 1.25rem)`; // "0 to 10" may not look like "0 to 1"
    if (field.changed) {
      input.closest("details")?.setAttribute("open", ""); // a number that counts is not out of sight
    }
    if (field.faulty) {
      input.setAttribute("aria-invalid", "true");
    } else {
      input.removeAttribute("aria-invalid");
    }
    why.textContent = reason && " " + reason;
  };

  const field: Field = {
    element: input,
    sheet: sheetOf(input),
    inputs: [cell, presence, others].filter((cell) => !isNaN(cell)),
    faulty: false,
    changed: false,
    read() {
      // A day that is typed in part has no text yet, but is no empty field.
      const text = day && input.validity.badInput ? "?" : input.value;
      const chosen = text === typed; // only the unit is new, by the reader's hand
      const late = early && !!globalThis.findRanges;
      if (chosen && !late && (units?.selectedIndex ?? 0) === unit) {
        return false;
      }
      typed = text;
      take(chosen && !late);
      return true;
    },
    write(ends, example) {
      const [low, high, kind] = example ? start : value;
      // An empty field is a 0 that its presence says not to use.
      fill(ends, cell, low || 0, high || 0);
      // A cell that the field has not is no number, and no place of the list.
      fill(ends, presence, isNaN(low) ? 0 : 1);
      fill(ends, others, kind);
    },
    entry: () => (units ? [input.value, chosenIn(units)] : [input.value]),
    enter([text, name]) {
      input.value = text;
      const known = !name || (!!units && choose(units, name));
      return known && input.value === text;
    },
    reset() {
      input.dispatchEvent(new Event("reset"));
      input.value = input.defaultValue;
      if (units) {
        units.selectedIndex = printedUnit;
      }
    },
    lock(locked) {
      input.readOnly = locked;
      if (units) {
        units.disabled = locked;
      }
    },
  };
  return field;
}
