// The pictures that the numbers of a page draw: the script that a page with one loads. The press has drawn the same for
// the example, by the same rules.

import { word } from "./data";
import { all, put } from "./element";
import { apply, text } from "./number";
import type { Ends } from "./spread";

type Shape = [when: number, text: number, month: number, moves: [name: string, ...at: number[]][]];

/** By calculation: the steps, each an operation with two places or a literal, and the shapes. */
declare const rules: Record<string, [steps: [op: number, a: number, b: number][], shapes: Shape[]]>;

declare global {
  /** Draws a picture for the numbers of the page; without answers nothing but its frame. */
  var drawPicture: ((element: Element, gone: boolean, ends: Ends) => void) | undefined;
}

const DAY = 864e5; // milliseconds
const FARTHEST = 1e6; // days
const ALWAYS = -1;

/** In the order of the operations of package drawing, from the second. */
const OPERATIONS: ((a: number, b: number) => number)[] = [
  (a, b) => a + b,
  (a, b) => a - b,
  (a, b) => a * b,
  (a, b) => a / b,
  Math.min,
  Math.max,
  (a, b) => (isNaN(a) ? b : a),
  (a, b) => +(a < b),
  Math.floor,
  round,
  month,
];

function round(value: number): number {
  if (!(value > 0 && isFinite(value))) {
    return value === 0 ? 1 : NaN;
  }
  const power = value.toExponential().split("e")[1];
  return ["1", "2", "5", "10"].map((digits) => Number(`${digits}e${power}`)).find((least) => least >= value) ?? NaN;
}

function month(day: number, more: number): number {
  if (!(Math.abs(day) < FARTHEST && Math.abs(more) < FARTHEST)) {
    return NaN;
  }
  const date = new Date(Math.trunc(day) * DAY);
  return Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + Math.trunc(more), 1) / DAY;
}

/** A place on the picture, to a tenth. */
const coordinate = (value: number): string => "" + Math.floor(value * 10 + 0.5) / 10;

globalThis.drawPicture = (element, gone, { low, high }) => {
  const drawn = element.querySelector("[data-drawn]")!;
  const [of, ...cells] = drawn.getAttribute("data-drawn")!.split(" ");
  const [steps, shapes] = rules[of!]!;
  const places: number[] = [];
  for (const one of cells) {
    const [cell, guard] = one.split("/").map(Number) as [number, number | undefined];
    const there = !gone && (guard === undefined || high[guard]);
    // In the unit in which the picture shows the value.
    const by = element.querySelector(`[data-show="${cell}"]`)?.getAttribute("data-by");
    const end = (ends: ArrayLike<number>) => (there ? (by ? apply(ends[cell]!, by) : ends[cell]!) : NaN);
    places.push(end(low), end(high), +(guard === undefined || low[guard] !== 0));
  }
  for (const [op, a, b] of steps) {
    places.push(op ? OPERATIONS[op - 1]!(places[a]!, places[b]!) : a);
  }
  all<Element>(":scope > *", drawn).forEach((shape, i) => {
    const [when, shown, isMonth, moves] = shapes[i]!;
    const numbers = moves.flatMap(([, ...at]) => at.map((place) => places[place]!));
    const is = !gone && (when === ALWAYS || places[when]! > 0) && numbers.every(isFinite)
      && (shown === ALWAYS || isFinite(places[shown]!));
    if (!is) {
      shape.setAttribute("display", "none");
      return;
    }
    shape.removeAttribute("display");
    for (const [name, ...at] of moves) {
      shape.setAttribute(name, at.map((place) => coordinate(places[place]!)).join(" "));
    }
    if (shown !== ALWAYS) {
      const value = places[shown]!;
      put(shape, isMonth ? word("months").split(",")[new Date(value * DAY).getUTCMonth()]! : text(value));
    }
  });
};
