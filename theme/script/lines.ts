import { mark, numberIn, put, same } from "./element";
import { readFormula, termText, type Formula, type Term } from "./formula";
import { operand, parse } from "./number";
import { dayText, rangeText } from "./shown";
import type { Ends } from "./spread";

const TIE = 1e-12; // how near to the middle between two results a sum may not come
const DIGITS = [...Array(60).keys()].map((n) => [n % 15, Math.floor(n / 15)]); // more for the terms; for the result
const MOST_RANGED = 4; // ranges of one formula that are tried at all of their ends

/** A formula at one end of each of its ranges. */
interface Sum {
  values: number[];
  end: number; // the result
}

/**
 * Gives the function that works a line of the work again in printed numbers. The digits are chosen as
 * sheet.Outcome.Lines chooses them: so that whoever keys in what is printed gets the result that is printed.
 */
export function makeLine(element: Element, typed: Set<number>, { low, high }: Ends): () => void {
  const when = numberIn(element, "data-when");
  const [, first] = element.children;
  let second: Element | null = element.children[2]; // for the most of a range
  const formulas = new Map<Element, Formula>();
  let last: number[] = []; // the ends of its cells, as last written

  const formulaOf = (paragraph: Element): Formula => {
    const known = formulas.get(paragraph) ?? readFormula(paragraph, typed);
    formulas.set(paragraph, known);
    return known;
  };

  /** Shows only the result, or all of it; and a second sum, or none. */
  const shape = (bare: boolean, twice: boolean): void => {
    mark(first, "bare", bare);
    if (!twice) {
      second?.remove();
    } else if (!second?.isConnected) {
      second ??= first.cloneNode(true) as Element;
      first.after(second);
    }
  };

  /** One sum, or of ranges the one that gives the least and the one that gives the most; none where no ends do. */
  const sumsOf = (formula: Formula, from: number, to: number): Sum[] => {
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
  };

  const write = (formula: Formula): void => {
    const { cell, day, money } = formula.result;
    const [from, to] = [low[cell], high[cell]];
    const sums = formula.work ? sumsOf(formula, from, to) : [];
    shape(!!formula.work && !sums.length, !!sums[1]);
    sums.forEach((sum, index) => print(formulaOf(index ? second! : first), sum));
    if (!sums.length) {
      const most = !formula.work && [...typed].some((input) => low[input] === from) ? 9 : 5;
      const whole = (value: number) => operand(value, money, formula.work ? 0 : most, 0);
      set(formula.result, rangeText(from, to, day ? dayText : whole));
    }
  };

  return () => {
    if (when >= 0 && !high[when]) {
      last = [];
      shape(false, false);
      return;
    }
    const formula = formulaOf(first);
    const now = formula.cells.flatMap((cell) => [low[cell], high[cell]]);
    if (!same(now, last)) {
      last = now;
      write(formula);
    }
  };
}

/** What a formula comes to from these numbers. */
function whole({ terms, scale, work }: Formula, values: number[]): number {
  terms.forEach((term, index) => (term.now = values[index]));
  return work!() * scale;
}

/** Prints a sum with the fewest digits with which it comes out; with the usual ones if it never does. */
function print(formula: Formula, { values, end }: Sum): void {
  const { terms, result } = formula;
  terms.forEach((term, index) => (term.value = values[index]));
  let texts: string[] = [];
  const comesOut = ([more, finer]: number[]): boolean => {
    const want = resultText(formula, end, finer);
    const got = whole(formula, terms.map((term, index) => parse((texts[index] = termText(term, more))) ?? term.value));
    return [1 + TIE, 1 - TIE].every((near) => resultText(formula, got * near, finer) === want);
  };
  const [, finer] = DIGITS.find(comesOut) ?? (comesOut(DIGITS[0]), DIGITS[0]);
  terms.forEach((term, index) => set(term, texts[index]));
  set(result, resultText(formula, end, finer));
}

const resultText = ({ result: { day, money } }: Formula, value: number, finer: number): string =>
  day ? dayText(Math.round(value)) : operand(value, money, 0, finer);

function set(term: Term, text: string): void {
  if (term.text !== text) {
    term.text = text;
    put(term.element, text);
  }
}
