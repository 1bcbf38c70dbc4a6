// What a page is live without, in a script of its own that the page's script loads: the work in printed numbers, the
// buttons for a touch screen, and what keeps the reader's numbers.

import { hide } from "./element";
import { makeKeeper, type Keeper } from "./keeper";
import { makeKeys } from "./keys";
import type { Page } from "./page";
import { keptBlocks } from "./blockkey";
import { BLOCK, load, PAPER } from "./later";
import { keepUnits } from "./unitskept";
import { makeWork } from "./work";

declare global {
  /** Adds it to a page that is live, or just about to be. Gives the function that brings the work up to date. */
  var comeAfter: ((page: Page, then: () => void) => () => void) | undefined;
  /** Has the page taken along: on paper, in a file, as a text. A page without fields has no keeper. */
  var comePaper: ((page: Page, keeper?: Keeper) => void) | undefined;
}

globalThis.comeAfter = (page, then) => {
  keepUnits();
  makeKeys();
  const keeper = page.fields.length ? makeKeeper(page.fields, then) : undefined;
  if (keeper) {
    if (keptBlocks() || document.querySelector(".blocks")) {
      load(BLOCK).then(() => globalThis.comeBlock ? globalThis.comeBlock(page, then) : hide(document.querySelector(".lost"), false));
    }
  }
  load(PAPER).then(() => globalThis.comePaper?.(page, keeper)); // a page may be printed as soon as it is open
  const { classList } = document.body;
  classList.add("after");
  document.addEventListener("input", () => classList.add("typing"));
  return makeWork(page);
};
