// The blocks of a reader: kept on the device, and nowhere else, in JSON with a version.

import { blocksKey, keptBlocks } from "./blockkey";
import type { Entry } from "./field";

export const VERSION = 1;
const MOST = 200; // blocks
const LONGEST = 60; // letters of a name, a number or a unit
const NAME = /^[a-z][a-z-]*$/; // of a fact

/** What is known of a block, and what was worked of that, by the ids of the facts. */
export interface Block {
  name: string;
  facts: Record<string, Entry>;
  worked: Record<string, Entry>;
  edition: string; // of the calculations that worked it
}

export interface Blocks {
  version: number;
  blocks: Block[];
  current: number; // its place; -1 for none
  page: string; // the way to the page about one block
}

/** Why nothing is kept: the browser forbids it or is full, or what is there cannot be read. */
export type Why = "blocks-not-kept" | "blocks-not-readable";

export const noBlocks = (): Blocks => ({ version: VERSION, blocks: [], current: -1, page: "" });

const clip = (text: unknown): string => {
  if (typeof text !== "string") {
    throw new TypeError();
  }
  return text.slice(0, LONGEST);
};

function readEntries(value: unknown): Record<string, Entry> {
  const all = Object.create(null) as Record<string, Entry>;
  for (const [id, entry] of Object.entries((value ?? {}) as object)) {
    if (NAME.test(id) && Array.isArray(entry)) {
      all[id] = entry.length > 1 ? [clip(entry[0]), clip(entry[1])] : [clip(entry[0])];
    }
  }
  return all;
}

/** Makes blocks of what was read; null where they are none. All that is no part of them is left out. */
export function readBlocks(value: unknown): Blocks | null {
  try {
    const { version, blocks, current, page } = value as Partial<Record<keyof Blocks, unknown>>;
    if (version !== VERSION || !Array.isArray(blocks)) {
      return null;
    }
    const list = blocks.slice(0, MOST).map((one: Partial<Record<keyof Block, unknown>>): Block => ({
      name: clip(one.name).trim() || "?",
      facts: readEntries(one.facts),
      worked: readEntries(one.worked),
      edition: clip(one.edition ?? ""),
    }));
    return { version, blocks: list, current: list[current as number] ? (current as number) : -1, page: clip(page ?? "") };
  } catch {
    return null;
  }
}

/** What is kept; without anything it is empty, and null where it cannot be read. */
export function loadBlocks(): Blocks | null {
  const kept = keptBlocks();
  try {
    return kept === null ? noBlocks() : readBlocks(JSON.parse(kept));
  } catch {
    return null;
  }
}

/**
 * Changes what is kept. It is read, changed and written at once, since another tab may have written meanwhile. Says why
 * that cannot be done; null once it was. What cannot be read may be of a newer page, and is not written over.
 */
export function changeBlocks(how: (kept: Blocks) => void): Why | null {
  const kept = loadBlocks();
  if (!kept) {
    return "blocks-not-readable";
  }
  how(kept);
  try {
    localStorage.setItem(blocksKey(), JSON.stringify(kept));
    return null;
  } catch {
    return "blocks-not-kept";
  }
}

/** A name that no other block has: "North", and then "North 2". */
export function freeName(blocks: Block[], name: string, but = -1): string {
  const taken = blocks.filter((_, i) => i !== but).map((one) => one.name);
  const plain = name.trim().slice(0, LONGEST - 4) || "1";
  let free = plain;
  for (let n = 2; taken.includes(free); n++) {
    free = `${plain} ${n}`;
  }
  return free;
}
