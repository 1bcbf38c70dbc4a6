// Small dealings with elements that every part of the script has.

import type { Attribute } from "./wire";

/** The elements that match, as a list that can be walked again and again. */
export function all<E extends Element = HTMLElement>(selector: string, within: ParentNode = document): E[] {
  return [...within.querySelectorAll<E>(selector)];
}

/** An attribute as a number; NaN without one, or when it is empty. */
export function numberIn(element: Element, name: Attribute): number {
  return parseFloat(element.getAttribute(name) ?? "");
}

/** Whether two lists hold the same numbers; one that is not there is the same as another. */
export const same = (a: number[], b: number[]): boolean => a.every((number, i) => Object.is(number, b[i]));

/** The worksheet that an element belongs to, by its place in the list of sheets. */
export const sheetOf = (element: Element): number => numberIn(element.closest("[data-sheet]")!, "data-sheet");

/** Hides an element or shows it. MathML elements have no property for this, so it is the attribute that is set. */
export function hide(element: Element | null, hidden: boolean): void {
  element?.toggleAttribute("hidden", hidden);
}

/** Gives an element a class or takes it away, and leaves no empty attribute behind. */
export function mark(element: Element, name: string, on: boolean): void {
  if (!element.classList.toggle(name, on) && !element.classList.length) {
    element.removeAttribute("class");
  }
}

/** Sets the text that an element begins with, and leaves other elements inside it alone. */
export function put(element: Element, text: string): void {
  const first = element.firstChild;
  if (first instanceof Text) {
    first.data = text;
  } else {
    element.prepend(text);
  }
}

/** Changes the page without moving what the reader is at. */
export function inPlace(change: () => void): void {
  const at = document.activeElement!;
  const top = () => (at === document.body ? 0 : at.getBoundingClientRect().top); // it has the page laid out
  const before = top();
  change();
  const moved = top() - before;
  if (moved) {
    scrollBy(0, moved);
  }
}
