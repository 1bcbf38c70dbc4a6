import { word } from "./data";
import type { Word } from "./wire";

/** Puts a sentence into an element, with elements in its blanks. */
export function fillIn(element: Element, name: Word, blanks: Record<string, Node>): void {
  element.replaceChildren(...word(name).split(/\{(\w+)\}/).map((text, i) => (i % 2 ? blanks[text]! : text)));
}

/** A link. */
export function linked(href: string, text: string): HTMLAnchorElement {
  const link = document.createElement("a");
  link.href = href;
  link.textContent = text;
  return link;
}
