// The blocks of a reader: the page about one block loads this script, and every other page does where a block is kept.

import { showBlock } from "./blockguide";
import { mountBlocks } from "./blockpage";
import type { Page } from "./page";

declare global {
  /** Shows the blocks in a page that is live. */
  var comeBlock: ((page: Page, then: () => void) => void) | undefined;
}

globalThis.comeBlock = (page, then) => {
  const panel = document.querySelector<HTMLElement>(".blocks");
  if (panel) {
    mountBlocks(panel, page, then);
  } else {
    showBlock(page, then);
  }
};
