// The blocks of a reader: the page about one block loads this script in the place of block.ts.

import { mountBlocks } from "./blockpage";

globalThis.comeBlock = (page, then) => mountBlocks(document.querySelector(".blocks")!, page, then);
