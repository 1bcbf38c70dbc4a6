import { all, numberIn, put } from "./element";
import { apply, parse } from "./number";

/** The allowed range of a field, in the unit chosen. */
interface Limits {
  /** States the range in another unit, or that of the second kind of quantity, which its option holds. */
  in(factor: string, option: Element | null): void;
  hold(number: number): boolean;
}

/**
 * Finds the range in the sentence of a field, which states it in three digits. What the sentence allows is allowed, so
 * each end is the wider of the exact one and the one shown.
 */
export function makeLimits(input: Element, fault: Element, write: (value: number) => string): Limits {
  let low: number[];
  let high: number[];
  return {
    in(factor, option) {
      const back = factor.split("/").reverse().join("/");
      [low, high] = (["low", "high"] as const).map((end) => {
        const exact = apply(numberIn(option ?? input, `data-${end}`), back);
        const shown = write(exact);
        all(`[data-limit=${end}]`, fault).forEach((word) => put(word, shown));
        return [exact, parse(shown) ?? exact];
      });
    },
    hold: (number) => !(number < Math.min(...low) || number > Math.max(...high)),
  };
}
