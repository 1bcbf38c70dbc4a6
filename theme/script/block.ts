// The block of a reader in a page that takes its numbers: each page but the one about a block loads this where one is kept.

import { showBlock } from "./blockguide";
import type { Page } from "./page";

declare global {
  /** Shows the block that is chosen in a page that is live. */
  var comeBlock: ((page: Page, then: () => void) => void) | undefined;
}

globalThis.comeBlock = showBlock;
