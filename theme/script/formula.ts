import { numberIn } from "./element";
import { operand, parse } from "./number";
import { dayText, isMoney } from "./shown";

/** One number of a line of the work. */
export interface Term {
  element: Element;
  text: string; // what it shows
  day: boolean;
  money: boolean;
  cell: number; // NaN for a figure, which stays as it is
  value: number; // with all of its digits
  now: number; // as it is printed
  per: number; // what its unit makes of it: 0.01 for a %
  most: number; // how many digits it may have and still be printed whole
  usual?: number; // how many it has otherwise
}

/** A line of the work in numbers: what it comes to, from its terms as they are printed or whole. */
export interface Formula {
  terms: Term[];
  result: Term;
  cells: number[]; // all that it shows
  scale: number; // what a unit hides: 1000000 where pounds over pounds are given as ppm, 100 for a %
  work: (() => number) | null; // null where the result is a given or another result as it stands
}

type Token = string | Term;
type Value = () => number;
type Two = (a: number, b: number) => number;

const GRAIN = 1e-12; // what the last bits of a whole number may be off by
const SUM: Record<string, Two> = { "+": (a, b) => a + b, "−": (a, b) => a - b };
const PRODUCT: Record<string, Two> = { "×": (a, b) => a * b, "÷": (a, b) => a / b };
const POWER: Record<string, Two> = { "^": (a, b) => a ** b };
const ONE: Record<string, (a: number) => number> = {
  "√": Math.sqrt,
  arccos: Math.acos,
  "the size of": Math.abs,
  "rounded up:": (a) => Math.ceil(a - GRAIN),
  "rounded down:": (a) => Math.floor(a + GRAIN),
};
// What is between the two is listed too, so that it is read; nothing works it.
const TWO: Record<string, Two> = { "the smaller of": Math.min, "the larger of": Math.max, and: Math.max };

/** Reads a line from the page, as a person does who keys it in: the page has no other form of it. */
export function readFormula(line: Element, typed: Set<number>): Formula {
  const terms: Term[] = [];
  const row = line.querySelector("mrow")!;
  const list = flat(row, terms, typed);
  const cells = terms.map(({ cell }) => cell).filter((cell) => cell >= 0);
  const result = terms.pop()!;
  const parts = list.slice(1, -2); // between the two signs of equality
  const scale = (numberIn(row, "data-scale") || 1) / result.per;
  return { terms, result, cells, scale, work: parts.length ? reader(parts) : null };
}

/** The numbers and signs within an element, in order. */
function flat(parent: Element, terms: Term[], typed: Set<number>): Token[] {
  return [...parent.children].flatMap((element): Token[] => {
    const said = (element.getAttribute("data-call") ?? element.textContent!).trim();
    const base = element.localName === "msup" ? element.children[0] : element;
    const inside = () => ["(", ...flat(base, terms, typed), ")"];
    switch (element.localName) {
      case "mrow":
        return flat(element, terms, typed);
      case "msqrt":
        return ["√", ...inside()];
      case "msup":
        return [...inside(), "^", figure(element.children[1])];
      case "mtext":
        if (said.startsWith("%") && terms.length) {
          terms[terms.length - 1].per = 0.01;
        }
        if (!element.hasAttribute("data-show")) {
          return ONE[said] ?? TWO[said] ? [said] : [];
        }
    }
    if (element.localName === "mo") {
      return [said];
    }
    const term = figure(element);
    if (!isNaN(term.cell)) {
      term.most = typed.has(term.cell) || element.hasAttribute("data-typed") ? 9 : 5;
    }
    terms.push(term);
    return [term];
  });
}

function figure(element: Element): Term {
  const text = element.textContent!;
  const whole = numberIn(element, "data-value");
  const value = isNaN(whole) ? (parse(text) ?? Math.PI) : whole;
  const usual = isNaN(whole) ? 0 : 6;
  const [day, money] = [element.hasAttribute("data-day"), isMoney(element)];
  return { element, text, day, money, cell: numberIn(element, "data-show"), value, now: value, per: 1, most: 9, usual };
}

/** Reads a formula: sums of products of powers. */
function reader(tokens: Token[]): Value {
  let at = 0;
  const joined = (part: () => Value, signs: Record<string, Two>) => (): Value => {
    let value = part();
    for (let join; (join = signs[tokens[at] as string]); ) {
      at++;
      const [left, right, two] = [value, part(), join];
      value = () => two(left(), right());
    }
    return value;
  };
  const atom = (): Value => {
    const token = tokens[at++];
    if (typeof token !== "string") {
      return () => token.now * token.per;
    }
    if (token === "(") {
      const value = sum();
      at++;
      return value;
    }
    const first = atom();
    const one = ONE[token];
    if (one) {
      return () => one(first());
    }
    at++; // and
    const second = atom();
    return () => TWO[token](first(), second());
  };
  const sum = joined(joined(joined(atom, POWER), PRODUCT), SUM);
  return sum();
}

/** The text of a term with so many digits beyond the usual; a figure that is short stays as it is printed. */
export function termText({ text, day, money, cell, value, most, usual }: Term, more: number): string {
  if (day) {
    return dayText(value);
  }
  const fixed = isNaN(cell) && !usual;
  return fixed ? text : operand(value, money, most, more, usual || undefined);
}
