// Where a reader's numbers are kept on the device, until the tab is closed; and where a link carries them.

import { wayHere } from "./key";

/** How the fragment of a link with numbers begins. An anchor of the page never does. */
export const LINK = "#numbers&";

/** What a link carries beside the numbers: the name of a block. */
export const BLOCK_NAME = "block";

/** What is kept for this page; null for nothing. A browser may forbid that anything is. */
export function readKept(): string | null {
  try {
    return sessionStorage.getItem(wayHere());
  } catch {
    return null;
  }
}

/** Keeps a text for this page, or nothing. Says whether it could: where that is forbidden or full, the page works without. */
export function keep(text: string): boolean {
  try {
    if (text) {
      sessionStorage.setItem(wayHere(), text);
    } else {
      sessionStorage.removeItem(wayHere());
    }
    return true;
  } catch {
    return !text;
  }
}

/** Whether there are numbers to bring back: from before, or in the address. */
export const isKept = (): boolean => location.hash.startsWith(LINK) || !!readKept();
