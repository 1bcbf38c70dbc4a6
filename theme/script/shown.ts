import { filled, word } from "./data";
import { operand, text } from "./number";

const DAY = 864e5; // milliseconds

/** A day, counted from 1970-01-01, as a reader sees it. What sheet.DateText gives, in the page's language. */
export function dayText(day: number): string {
  if (!isFinite(day)) {
    return text(day);
  }
  const date = new Date(Math.trunc(day) * DAY);
  return filled("day", {
    day: "" + date.getUTCDate(),
    month: word("months").split(",")[date.getUTCMonth()]!,
    year: "" + date.getUTCFullYear(),
  });
}

/** The day that 2027-04-15 is; null for what is no day of the calendar. */
export function parseDay(typed: string): number | null {
  const time = Date.parse(typed);
  return isNaN(time) || new Date(time).toISOString().slice(0, 10) !== typed ? null : time / DAY;
}

/** Whether the number in an element is money: the sign comes before it. */
export const isMoney = (element: Element): boolean =>
  element.closest("[data-cents]") !== null || !!element.previousSibling?.textContent?.endsWith("$");

/** How the numbers of an element are written: as days, as money, as they were typed, or as numbers. */
export function numberWriter(element: Element, typed: boolean): (value: number) => string {
  if (element.closest("[data-day]")) {
    return dayText;
  }
  const cents = isMoney(element);
  return (value) => operand(value, cents, typed || element.hasAttribute("data-typed") ? 9 : 0, 0);
}

/** A number, or two with a word between them where a reader can tell them apart. */
export function rangeText(low: number, high: number, write: (value: number) => string): string {
  const [from, to] = [write(low), write(high)];
  return from === to ? from : `${from} ${word("to")} ${to}`;
}
