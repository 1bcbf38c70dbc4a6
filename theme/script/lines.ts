import { mark, numberIn, put, sheetOf } from "./element";
import type { Field } from "./field";
import { keyed, readFormula, termText, workLines, type Formula } from "./formula";
import { operand } from "./number";
import { isVoid, type Sheet } from "./sheets";
import { dayText, isMoney, rangeText } from "./shown";
import type { Ends } from "./spread";

const TIE = 1e-12; // how near to the middle between two results a sum may not come
const MOST_RANGED = 4; // ranges of one formula that are tried at all of their ends

/** A formula at one end of each of its ranges. */
interface Sum {
  values: number[];
  end: number; // the result
}

/**
 * Gives the function that works every line of the work again in printed numbers. The digits are chosen as
 * sheet.Outcome.Lines chooses them: so that whoever keys in what is printed gets the result that is printed.
 */
export function makeLines(sheets: Sheet[], fields: Field[], ends: Ends): () => void {
  const typed = new Set(fields.flatMap(({ inputs }) => inputs));
  const lines = workLines().map((line) => new Line(line, sheets[sheetOf(line)], typed, ends));
  return () => lines.forEach((line) => line.update());
}

class Line {
  private readonly when: number;
  private readonly first: Element;
  private second: Element | null; // for the most of a range
  private readonly formulas = new Map<Element, Formula>();
  private last: number[] = []; // the ends of its cells, as last written

  constructor(
    element: Element,
    private readonly sheet: Sheet,
    private readonly typed: Set<number>,
    private readonly ends: Ends,
  ) {
    this.when = numberIn(element, "data-when");
    [, this.first, this.second = null] = element.children;
  }

  update(): void {
    const { low, high } = this.ends;
    if (isVoid(this.sheet)) {
      return;
    }
    if (this.when >= 0 && !high[this.when]) {
      this.last = [];
      this.shape(false, false);
      return;
    }
    const formula = this.formula(this.first);
    const now = formula.cells.flatMap((cell) => [low[cell], high[cell]]);
    if (now.some((end, i) => end !== this.last[i])) {
      this.last = now;
      this.write(formula);
    }
  }

  private formula(paragraph: Element): Formula {
    const known = this.formulas.get(paragraph) ?? readFormula(paragraph, this.typed);
    this.formulas.set(paragraph, known);
    return known;
  }

  private write(formula: Formula): void {
    const { low, high } = this.ends;
    const { cell, element } = formula.result;
    const [from, to] = [low[cell], high[cell]];
    const sums = formula.work ? this.sums(formula, from, to) : [];
    this.shape(!!formula.work && !sums.length, !!sums[1]);
    sums.forEach((sum, index) => print(this.formula(index ? this.second! : this.first), sum));
    if (!sums.length) {
      const most = !formula.work && [...this.typed].some((input) => low[input] === from) ? 9 : 5;
      const whole = (value: number) => operand(value, isMoney(element), formula.work ? 0 : most, 0);
      set(element, rangeText(from, to, element.hasAttribute("data-day") ? dayText : whole));
    }
  }

  /** Shows only the result, or all of it; and a second sum, or none. */
  private shape(bare: boolean, twice: boolean): void {
    mark(this.first, "bare", bare);
    if (!twice) {
      this.second?.remove();
    } else if (!this.second?.isConnected) {
      this.second ??= this.first.cloneNode(true) as Element;
      this.first.after(this.second);
    }
  }

  /** One sum, or of ranges the one that gives the least and the one that gives the most; none where no ends do. */
  private sums(formula: Formula, from: number, to: number): Sum[] {
    const { low, high } = this.ends;
    const { terms } = formula;
    const ranged = [...new Set(terms.map(({ cell }) => cell))].filter((cell) => low[cell] < high[cell]);
    const at = (choice: number) =>
      terms.map(({ cell, value }) => {
        const place = ranged.indexOf(cell);
        return isNaN(cell) ? value : place >= 0 && (choice >> place) & 1 ? high[cell] : low[cell];
      });
    if (!ranged.length) {
      return [{ values: at(0), end: from }];
    }
    const write = (value: number) => resultText(formula, value, 0);
    if (ranged.length > MOST_RANGED || write(from) === write(to)) {
      return [];
    }
    const choices = [...Array(1 << ranged.length).keys()].map(at);
    const found = [from, to].flatMap((end): Sum[] => {
      const off = choices.map((values) => Math.abs(whole(formula, values) - end));
      const values = choices[off.indexOf(Math.min(...off.filter((gap) => !isNaN(gap))))];
      return values && write(whole(formula, values)) === write(end) ? [{ values, end }] : [];
    });
    return found.length > 1 ? found : [];
  }
}

/** What a formula comes to from whole numbers. */
function whole({ terms, scale, work }: Formula, values: number[]): number {
  terms.forEach((term, index) => (term.now = values[index]));
  return work!() * scale;
}

/** Prints a sum with the fewest digits with which it comes out. */
function print(formula: Formula, { values, end }: Sum): void {
  const { terms, result } = formula;
  terms.forEach((term, index) => (term.value = values[index]));
  const [more, finer] = digits(formula, end);
  terms.forEach((term) => set(term.element, termText(term, more)));
  set(result.element, resultText(formula, end, finer));
}

function digits(formula: Formula, end: number): [more: number, finer: number] {
  for (let finer = 0; finer <= 3; finer++) {
    const want = resultText(formula, end, finer);
    for (let more = 0; more <= 14; more++) {
      for (const term of formula.terms) {
        term.now = keyed(term, more);
      }
      const got = formula.work!() * formula.scale;
      if ([1 + TIE, 1 - TIE].every((near) => resultText(formula, got * near, finer) === want)) {
        return [more, finer];
      }
    }
  }
  return [0, 0];
}

const resultText = ({ result: { element } }: Formula, value: number, finer: number): string =>
  element.hasAttribute("data-day") ? dayText(Math.round(value)) : operand(value, isMoney(element), 0, finer);

function set(element: Element, text: string): void {
  if (element.textContent !== text) {
    put(element, text);
  }
}
