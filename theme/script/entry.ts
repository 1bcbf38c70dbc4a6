import { printedIndex } from "./choice";
import { filled, word } from "./data";
import { all, hide, numberIn, put, sheetOf } from "./element";
import { fill, type Field } from "./field";
import { loadRanges } from "./later";
import { Limits } from "./limits";
import { apply, parse, text } from "./number";
import { dayText, parseDay } from "./shown";
import type { Ends } from "./spread";
import { readTyped, type Typed } from "./typed";
import { findUnit } from "./unitword";

/** The value of a field, in the cell's own unit; NaN for an empty one. */
interface Value {
  low: number;
  high: number;
  kind: number; // 1 for the given's second kind of quantity, or the form that it is told in; 0 for neither
}

const same = (a: Value, b: Value): boolean =>
  Object.is(a.low, b.low) && Object.is(a.high, b.high) && a.kind === b.kind;

/** The sentence for a number that cannot be used. It is tied to its field. */
function faultOf(input: Element): Element | null {
  const fault = input.closest(".field")!.querySelector(".fault");
  if (fault) {
    fault.id = input.id + "-fault";
    const hint = input.getAttribute("aria-describedby") ?? "";
    input.setAttribute("aria-describedby", `${hint} ${fault.id}`.trim());
  }
  return fault;
}

/**
 * A number, a range or a day to type, perhaps with a choice of units and perhaps one that may be left empty.
 *
 * Changing the unit keeps the digits: it is the unit of the number on the report that the reader corrects.
 */
export class NumberField implements Field {
  readonly sheet: number;
  readonly inputs: number[];
  readonly fault: Element | null;
  faulty = false;
  changed = false;
  private readonly cell: number;
  private readonly presence: number; // NaN when the field must be filled
  private readonly others: number; // NaN when it takes one kind of quantity, in one form
  private readonly start: Value; // the example's
  private readonly day: boolean;
  private readonly limits: Limits;
  private readonly why: Element | undefined; // what more there is to say of a fault
  private below: Element | null; // the sentence for a laboratory's "<5"
  private readonly units: HTMLSelectElement | null;
  private readonly printedUnit: number;
  private typed: string | null = null; // as last read
  private unit = -1;
  private factor = "1/1";
  private value: Value;
  private reason: string | null = null; // why it cannot be used, beside what the field says itself; null when it can
  private early = false; // it is a range, and the script that works ranges is not there yet
  private told = ""; // which unit was typed behind the number, where it was not the one chosen

  constructor(private readonly input: HTMLInputElement) {
    this.sheet = sheetOf(input);
    this.cell = numberIn(input, "data-cell");
    this.presence = numberIn(input, "data-presence");
    this.others = numberIn(input, "data-others");
    this.inputs = [this.cell, this.presence, this.others].filter((cell) => !isNaN(cell));
    const low = numberIn(input, "data-start");
    const high = numberIn(input, "data-start-high");
    this.fault = faultOf(input);
    this.why = this.fault?.appendChild(document.createElement("span"));
    this.below = document.getElementById(input.id + "-below");
    const day = (this.day = input.hasAttribute("data-day"));
    this.limits = new Limits(input, this.fault, day ? dayText : text);
    this.units = input.parentElement!.querySelector("select[data-unit-for]");
    this.printedUnit = this.units ? printedIndex(this.units) : 0;
    this.value = this.start = { low, high: isNaN(high) ? low : high, kind: this.kindAt(this.printedUnit) };
  }

  read(): boolean {
    // A day that is typed in part has no text yet, but is no empty field.
    const typed = this.input.validity.badInput ? "?" : this.input.value;
    const unit = this.units?.selectedIndex ?? 0;
    const late = this.early && !!globalThis.findRanges;
    if (typed === this.typed && unit === this.unit && !late) {
      return false;
    }
    const chosen = this.typed === typed && this.unit >= 0 && !late; // only the unit is new, by the reader's hand
    this.typed = typed;
    this.take(chosen);
    this.show();
    return true;
  }

  /**
   * Chooses in the list the unit that was typed behind a number. When the reader chooses another there, the typed one is
   * taken out. False for a unit that the field does not know.
   */
  private adopt(unit: string, chosen: boolean): boolean {
    const { units, input } = this;
    if (!unit || chosen) {
      this.typed = input.value = unit ? this.typed!.replace(unit, "") : this.typed!;
      return true;
    }
    const names = all("option, .unit", input.parentElement!).map((name) => name.textContent!);
    const at = findUnit(unit, names, units?.selectedIndex ?? 0);
    if (units && at >= 0 && at !== units.selectedIndex) {
      units.selectedIndex = at;
      this.told = filled("read-as", { name: names[at]! }) + " ";
    }
    return at >= 0;
  }

  /** The kind of quantity, or the form, of the unit at a place of the list. */
  private kindAt(unit: number): number {
    return this.otherAt(unit) ? 1 : (this.units && numberIn(this.units.options[unit]!, "data-form")) || 0;
  }

  /** The option at a place of the list of units, if it is of the second kind of quantity. */
  private otherAt(unit: number): Element | null {
    const option = this.units?.options[unit];
    return option?.hasAttribute("data-other") ? option : null;
  }

  /**
   * Takes the value from what is typed. What the page was printed with stands for the example's own number, which
   * may have more digits than are shown.
   */
  private take(chosen: boolean): void {
    const read = this.typed!.trim() ? readTyped(this.typed!, this.day ? parseDay : parse, this.day) : null;
    const numbers = typeof read === "string" ? null : read;
    this.told = "";
    const unknown = numbers && !this.adopt(numbers.unit, chosen);
    const unit = this.units?.selectedIndex ?? 0;
    if (unit !== this.unit) {
      this.unit = unit;
      this.factor = this.units?.value || "1/1";
      this.limits.in(this.factor, this.otherAt(unit));
    }
    const before = this.value;
    this.reason = null;
    if (this.typed === this.input.defaultValue && unit === this.printedUnit) {
      this.value = this.start;
    } else if (numbers && !unknown && this.limits.hold(numbers.low) && this.limits.hold(numbers.high)) {
      const [low, high] = [numbers.low, numbers.high].map((number) => apply(number, this.factor));
      this.value = { low, high, kind: this.kindAt(unit) };
    } else if (read === null && !isNaN(this.presence)) {
      this.value = { low: NaN, high: NaN, kind: 0 };
    } else {
      this.reason = unknown ? filled("no-unit", { name: numbers!.unit }) : typeof read === "string" ? read : "";
    }
    this.early = this.value.low < this.value.high && !globalThis.findRanges;
    if (this.early) {
      this.value = before;
      this.reason = word("early");
      loadRanges();
    }
    this.showBelow(numbers);
  }

  /**
   * Says how a laboratory's "<5" is taken, and which unit was read. The page was printed with the sentence only if the
   * example is a "<5".
   */
  private showBelow(numbers: Typed | null): void {
    const below = numbers?.below ? filled("below", { high: text(numbers.high) }) : "";
    const shown = this.reason === null && this.told + below;
    if (shown) {
      if (!this.below) {
        this.below = document.createElement("p");
        this.below.className = "hint below";
        this.fault!.before(this.below);
      }
      put(this.below, shown);
    }
    hide(this.below, !shown);
  }

  private show(): void {
    const { reason } = this;
    this.faulty = reason !== null;
    this.changed = this.faulty || !same(this.value, this.start);
    hide(this.fault, !this.faulty);
    if (this.faulty) {
      this.input.setAttribute("aria-invalid", "true");
    } else {
      this.input.removeAttribute("aria-invalid");
    }
    if (this.why) {
      this.why.textContent = reason && " " + reason;
    }
  }

  write(ends: Ends, example: boolean): void {
    const { low, high, kind } = example ? this.start : this.value;
    // An empty field is a 0 that its presence says not to use.
    fill(ends, this.cell, low || 0, high || 0);
    // A cell that the field has not is no number, and no place of the list.
    fill(ends, this.presence, isNaN(low) ? 0 : 1);
    fill(ends, this.others, kind);
  }

  reset(): void {
    this.input.dispatchEvent(new Event("reset"));
    this.input.value = this.input.defaultValue;
    if (this.units) {
      this.units.selectedIndex = this.printedUnit;
    }
  }

  lock(locked: boolean): void {
    this.input.readOnly = locked;
    if (this.units) {
      this.units.disabled = locked;
    }
  }
}
