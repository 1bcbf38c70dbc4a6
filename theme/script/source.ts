// Where the numbers of a page come from, and where the page is.

import { filled, word } from "./data";
import type { Page } from "./page";

/** Whose numbers the page shows. */
export function whose({ block, fields }: Page): string {
  const name = block?.();
  return !fields.length ? "" : name ? filled("from-block", { name })
    : word(fields.some(({ changed }) => changed) ? "from-reader" : "from-example");
}

/** The address of the page for others: where its site is, or else where the page came from; "" for a file. */
export function liveAddress(): string {
  const { protocol, href } = location;
  return document.querySelector(".foot .address")?.textContent ?? (protocol === "file:" ? "" : href.split("#")[0]!);
}
