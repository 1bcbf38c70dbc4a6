// The data block of the page, and the words in it.

import type { Data, Word } from "./wire";

declare const words: Record<Word, string>; // the press writes them before the script

/** The data of a page, with an empty list for each that is not in it. */
export type Whole = Required<Data>;

/** The page's data, or null on a page that has none. */
export const readData = (block = document.getElementById("module")): Whole | null =>
  block && { fixed: [], guards: [], trends: [], tables: [], exercises: [], ...JSON.parse(block.textContent!) };

/** A word or a sentence of the page's language, for what the script writes itself. */
export const word = (name: Word): string => words[name];

/** A sentence of the page's language with its blanks filled in. */
export const filled = (name: Word, blanks: Record<string, string>): string =>
  word(name).replace(/\{(\w+)\}/g, (_, blank: string) => blanks[blank]!);
