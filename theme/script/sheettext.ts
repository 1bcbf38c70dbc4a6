// A worksheet as texts: what is given and what is answered, with the numbers that the page shows.

import { word } from "./data";
import { all } from "./element";
import type { Field } from "./field";

const NONE = "–"; // what is printed for no number

/** A number with its name and its unit, and its ends: one or two. */
export type Named = [name: string, value: string, unit: string, ends: (string | number)[]];

/** What of an element is shown, without what screen readers alone have. */
export function shownText(element: Element | null): string {
  const copy = element?.cloneNode(true) as Element | undefined;
  copy?.querySelectorAll("[hidden], .unseen, .hint, .fault").forEach((part) => part.remove());
  return copy?.textContent!.replace(/\s+/g, " ").trim() ?? "";
}

/** An amount as it is printed, in its parts: the thousands lose their commas, which a spreadsheet may not know. */
function amount(name: string, printed: Element): Named {
  const rest = printed.cloneNode(true) as Element;
  rest.querySelectorAll("[hidden]").forEach((part) => part.remove());
  const numbers = all<Element>("[data-show]", rest);
  numbers.forEach((number) => number.remove());
  const text = numbers.map((number) => number.textContent!).join(" ");
  const value = text === NONE ? "" : text.replace(/(\d),(?=\d{3})/g, "$1");
  return [name, value, shownText(rest), value.split(` ${word("to")} `)];
}

/** What is given: in fields, wherever they are, and by other worksheets. */
export function givens(worksheet: Element, fields: Field[]): Named[] {
  return [
    ...fields.map((field): Named => {
      const { element, typed } = field;
      const [text, unit] = field.entry();
      return [shownText(element.labels![0]!), text, unit ?? shownText(element.parentElement!.querySelector(".unit")), typed ?? [text]];
    }),
    ...all(".given .linked", worksheet).map((line) => amount(shownText(line.querySelector("b")), line.querySelector(".figure")!)),
  ];
}

/** What is answered. Where answers are compared in a table, the name of one is that of its row and its column. */
export const answers = (worksheet: Element): Named[] =>
  all(".answer .total", worksheet)
    .filter((total) => !total.closest("[hidden]"))
    .map((total) => {
      const cell = total.closest("td");
      const names = cell
        ? [cell.parentElement!.querySelector("th"), cell.closest("table")!.rows[0]!.cells[cell.cellIndex]!]
        : [total.closest("div")!.querySelector("dt")];
      return amount(names.map(shownText).join(", "), total);
    });
