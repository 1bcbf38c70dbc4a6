import { printedIndex } from "./choice";
import { all, hide, numberIn, put } from "./element";
import type { Field } from "./field";
import { apply, parse, text } from "./number";

/**
 * A number to type, perhaps with a choice of units and perhaps one that may be left empty.
 *
 * Changing the unit keeps the digits: it is the unit of the number on the report that the reader corrects.
 */
export class NumberField implements Field {
  readonly sheet: number;
  readonly fault: Element | null;
  faulty = false;
  changed = false;
  private readonly cell: number;
  private readonly presence: number; // NaN when the field must be filled
  private readonly start: number; // NaN when the example leaves it empty
  private readonly whole: boolean;
  private readonly limits: Limits;
  private readonly units: HTMLSelectElement | null;
  private readonly printedUnit: number;
  private typed: string | null = null; // as last read
  private unit = -1;
  private factor = "1/1";
  private value: number; // in the cell's own unit; NaN for none

  constructor(private readonly input: HTMLInputElement) {
    this.sheet = numberIn(input, "data-sheet");
    this.cell = numberIn(input, "data-cell");
    this.presence = numberIn(input, "data-presence");
    this.value = this.start = numberIn(input, "data-start");
    this.whole = input.hasAttribute("data-whole");
    this.fault = document.getElementById(input.id + "-fault");
    this.limits = new Limits(input, this.fault);
    this.units = input.parentElement!.querySelector("select[data-unit-for]");
    this.printedUnit = this.units ? printedIndex(this.units) : 0;
  }

  read(): boolean {
    const typed = this.input.value;
    const unit = this.units ? this.units.selectedIndex : 0;
    if (typed === this.typed && unit === this.unit) {
      return false;
    }
    if (unit !== this.unit) {
      this.factor = this.units?.value || "1/1";
      this.limits.in(this.factor);
    }
    this.typed = typed;
    this.unit = unit;
    this.take();
    return true;
  }

  /**
   * Takes the value from what is typed. What the page was printed with stands for the example's own number, which
   * may have more digits than are shown.
   */
  private take(): void {
    const printed = this.typed === this.input.defaultValue && this.unit === this.printedUnit;
    const empty = !this.typed!.trim();
    const number = parse(this.typed!);
    this.faulty = !printed && (empty ? isNaN(this.presence) : !this.accepts(number));
    if (!this.faulty) {
      this.value = printed ? this.start : empty ? NaN : apply(number!, this.factor);
    }
    this.changed = this.faulty || !Object.is(this.value, this.start);
    hide(this.fault, !this.faulty);
    if (this.faulty) {
      this.input.setAttribute("aria-invalid", "true");
    } else {
      this.input.removeAttribute("aria-invalid");
    }
  }

  private accepts(number: number | null): boolean {
    return number !== null && (!this.whole || Number.isInteger(number)) && this.limits.hold(number);
  }

  write(cells: Float64Array, example: boolean): void {
    const value = example ? this.start : this.value;
    cells[this.cell] = value || 0; // an empty field is a 0 that its presence says not to use
    if (!isNaN(this.presence)) {
      cells[this.presence] = isNaN(value) ? 0 : 1;
    }
  }

  reset(): void {
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

/** The allowed range of a field, in the unit chosen. */
class Limits {
  private readonly ends: [attribute: number, words: Element[]][];
  private low = -Infinity;
  private high = Infinity;

  constructor(input: HTMLInputElement, fault: Element | null) {
    this.ends = ["low", "high"].map((end) => [
      numberIn(input, "data-" + end),
      fault ? all(`[data-limit=${end}]`, fault) : [],
    ]);
  }

  /**
   * States the range in another unit. The sentence states it in three digits, and what the sentence allows is
   * allowed, so each end is the wider of the exact one and the one shown.
   */
  in(factor: string): void {
    const back = factor.split("/").reverse().join("/");
    const [low, high] = this.ends.map(([end, words]) => {
      const exact = apply(end, back);
      const shown = text(exact);
      words.forEach((word) => put(word, shown));
      return [exact, parse(shown) ?? exact];
    });
    this.low = Math.min(...low);
    this.high = Math.max(...high);
  }

  hold(number: number): boolean {
    return !(number < this.low || number > this.high);
  }
}
