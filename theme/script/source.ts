// Where the numbers of a page come from, and where the page is.

import { filled, word } from "./data";
import { BLOCK_NAME } from "./kept";
import { EDITION } from "./listed";
import type { Page } from "./page";

const LONGEST = 50; // letters of a name, as in its field

/**
 * The name of the block whose numbers a link has brought. The address loses it as soon as a number is
 * changed, and a link of another edition brings no numbers.
 */
export function linkedName({ edition }: Page): string | undefined {
  const link = new URLSearchParams(location.hash);
  return link.get(EDITION) === edition ? link.get(BLOCK_NAME)?.replace(/\p{C}/gu, "").slice(0, LONGEST) : undefined;
}

/** The name of the block whose numbers the page shows. */
export const blockOf = (page: Page): string | undefined => page.block?.() || linkedName(page);

/** Whose numbers the page shows. */
export function whose(page: Page): string {
  const name = blockOf(page);
  const { fields } = page;
  return !fields.length ? "" : name ? filled("from-block", { name })
    : word(fields.some(({ changed }) => changed) ? "from-reader" : "from-example");
}

/** The address of the page for others: where its site is, or else where the page came from; "" for a file. */
export function liveAddress(): string {
  const { protocol, href } = location;
  return document.querySelector(".foot .address")?.textContent ?? (protocol === "file:" ? "" : href.split("#")[0]!);
}
