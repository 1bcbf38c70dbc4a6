// What a page is live without, in a script of its own that the page's script loads: the work in printed numbers, the
// buttons for a touch screen, and what keeps the reader's numbers.

import { makeKeeper } from "./keeper";
import { makeKeys } from "./keys";
import type { Page } from "./page";
import { keptBlocks } from "./blockkey";
import { BLOCK, load } from "./later";
import { bindPrint } from "./print";
import { makeWork } from "./work";

declare global {
  /** Adds it to a page that is live, or just about to be. Gives the function that brings the work up to date. */
  var comeAfter: ((page: Page, then: () => void) => () => void) | undefined;
}

globalThis.comeAfter = (page, then) => {
  makeKeys();
  if (page.fields.length) {
    makeKeeper(page.fields, then);
    if (keptBlocks() || document.querySelector(".blocks")) {
      load(BLOCK).then(() => globalThis.comeBlock?.(page, then));
    }
  }
  bindPrint();
  const become = (name: string) => document.body.classList.add(name);
  become("after");
  document.addEventListener("input", () => become("typing"), { once: true });
  return makeWork(page);
};
