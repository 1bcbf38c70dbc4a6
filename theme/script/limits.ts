import { all, numberIn, put } from "./element";
import { apply, parse } from "./number";

/** The allowed range of a field, in the unit chosen. */
export class Limits {
  private readonly words: Element[][];
  private low = -Infinity;
  private high = Infinity;

  constructor(
    private readonly input: Element,
    fault: Element | null,
    private readonly write: (value: number) => string,
  ) {
    this.words = ["low", "high"].map((end) => (fault ? all(`[data-limit=${end}]`, fault) : []));
  }

  /**
   * States the range in another unit, or that of the second kind of quantity, which its option holds. The sentence
   * states it in three digits, and what the sentence allows is allowed, so each end is the wider of the exact one and
   * the one shown.
   */
  in(factor: string, option: Element | null): void {
    const back = factor.split("/").reverse().join("/");
    const [low, high] = this.words.map((words, end) => {
      const exact = apply(numberIn(option ?? this.input, end ? "data-high" : "data-low"), back);
      const shown = this.write(exact);
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
