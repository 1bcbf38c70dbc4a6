import { printedIndex } from "./choice";
import { word } from "./data";
import { hide, numberIn, put, sheetOf } from "./element";
import { fill, type Field } from "./field";
import { Limits } from "./limits";
import { apply, parse, text } from "./number";
import { dayText, parseDay } from "./shown";
import type { Ends } from "./spread";
import { readTyped, type Typed } from "./typed";

/** The value of a field, in the cell's own unit; NaN for an empty one. */
interface Value {
  low: number;
  high: number;
  other: boolean; // it is of the given's second kind of quantity
  form: number; // the form that it is told in, 0 for none
}

const same = (a: Value, b: Value): boolean =>
  Object.is(a.low, b.low) && Object.is(a.high, b.high) && a.other === b.other && a.form === b.form;

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
  private readonly others: number; // NaN when it takes one kind of quantity
  private readonly forms: number; // NaN when it is told in no forms
  private readonly start: Value; // the example's
  private readonly parse: (typed: string) => number | null;
  private readonly limits: Limits;
  private readonly why: Element | undefined; // what more there is to say of a fault
  private below: Element | null; // the sentence for a laboratory's "<5"
  private readonly units: HTMLSelectElement | null;
  private readonly printedUnit: number;
  private typed: string | null = null; // as last read
  private unit = -1;
  private factor = "1/1";
  private value: Value;
  private reason: string | null = null; // why it cannot be used, as readTyped says it; null when it can

  constructor(private readonly input: HTMLInputElement) {
    this.sheet = sheetOf(input);
    this.cell = numberIn(input, "data-cell");
    this.presence = numberIn(input, "data-presence");
    this.others = numberIn(input, "data-others");
    this.forms = numberIn(input, "data-forms");
    this.inputs = [this.cell, this.presence, this.others, this.forms].filter((cell) => !isNaN(cell));
    const low = numberIn(input, "data-start");
    const high = numberIn(input, "data-start-high");
    this.fault = faultOf(input);
    this.why = this.fault?.appendChild(document.createElement("span"));
    this.below = document.getElementById(input.id + "-below");
    const day = input.hasAttribute("data-day");
    this.parse = day ? parseDay : parse;
    this.limits = new Limits(input, this.fault, day ? dayText : text);
    this.units = input.parentElement!.querySelector("select[data-unit-for]");
    this.printedUnit = this.units ? printedIndex(this.units) : 0;
    this.value = this.start = { low, high: isNaN(high) ? low : high, ...this.kindAt(this.printedUnit) };
  }

  read(): boolean {
    // A day that is typed in part has no text yet, but is no empty field.
    const typed = this.input.validity.badInput ? "?" : this.input.value;
    const unit = this.units ? this.units.selectedIndex : 0;
    if (typed === this.typed && unit === this.unit) {
      return false;
    }
    if (unit !== this.unit) {
      this.factor = this.units?.value || "1/1";
      this.limits.in(this.factor, this.otherAt(unit));
    }
    this.typed = typed;
    this.unit = unit;
    this.take();
    this.show();
    return true;
  }

  /** The kind of quantity and the form of the unit at a place of the list. */
  private kindAt(unit: number): Pick<Value, "other" | "form"> {
    const option = this.units?.options[unit];
    return { other: !!this.otherAt(unit), form: (option && numberIn(option, "data-form")) || 0 };
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
  private take(): void {
    const read = this.typed!.trim() ? readTyped(this.typed!, this.parse) : null;
    const numbers = typeof read === "string" ? null : read;
    this.reason = null;
    if (this.typed === this.input.defaultValue && this.unit === this.printedUnit) {
      this.value = this.start;
    } else if (numbers && this.limits.hold(numbers.low) && this.limits.hold(numbers.high)) {
      const [low, high] = [numbers.low, numbers.high].map((number) => apply(number, this.factor));
      this.value = { low, high, ...this.kindAt(this.unit) };
    } else if (read === null && !isNaN(this.presence)) {
      this.value = { low: NaN, high: NaN, other: false, form: 0 };
    } else {
      this.reason = typeof read === "string" ? read : "";
    }
    this.showBelow(numbers);
  }

  /** Says how a laboratory's "<5" is taken. The page was printed with the sentence only if the example is one. */
  private showBelow(numbers: Typed | null): void {
    const shown = this.reason === null && !!numbers?.below;
    if (shown && !this.below) {
      this.below = document.createElement("p");
      this.below.className = "hint below";
      this.fault!.before(this.below);
    }
    hide(this.below, !shown);
    if (shown) {
      put(this.below!, word("below").replace("{high}", text(numbers!.high)));
    }
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
      this.why.textContent = reason ? " " + word(reason) : "";
    }
  }

  write(ends: Ends, example: boolean): void {
    const { low, high, other, form } = example ? this.start : this.value;
    // An empty field is a 0 that its presence says not to use.
    fill(ends, this.cell, low || 0, high || 0);
    if (!isNaN(this.presence)) {
      fill(ends, this.presence, isNaN(low) ? 0 : 1);
    }
    if (!isNaN(this.others)) {
      fill(ends, this.others, other ? 1 : 0);
    }
    if (!isNaN(this.forms)) {
      fill(ends, this.forms, form);
    }
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
