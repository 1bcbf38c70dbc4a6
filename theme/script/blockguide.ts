// A page whose worksheets can take the numbers of the block that a reader has chosen.

import { loadBlocks, type Block } from "./blockstore";
import { filled, word } from "./data";
import { entryFor, factOf, once } from "./facts";
import { enter, type Entry, type Field } from "./field";
import { linked } from "./fillin";
import { wayHere } from "./key";
import type { Page } from "./page";

const BACK = "example"; // the reader went back to the example

/** What was done with the block on this page, until the tab is closed. */
const mark = (value?: string): string | null => {
  const key = "block " + wayHere();
  try {
    if (value !== undefined) {
      sessionStorage.setItem(key, value);
    }
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
};

/** Shows the block that is chosen, unless the reader has typed numbers on this page. */
export function showBlock(page: Page, then: () => void): void {
  const { fields } = page;
  const kept = loadBlocks();
  const block = kept?.blocks[kept.current];
  const line = document.getElementById("state");
  if (!block || !line) {
    return;
  }
  const taken = fieldsOf(fields, block);
  const now = () => JSON.stringify(fields.map((field) => field.entry()));
  const button = (text: string, act: () => void) => {
    const one = document.createElement("button");
    one.type = "button";
    one.textContent = text;
    one.onclick = (event) => {
      event.stopPropagation();
      act();
      then();
    };
    return one;
  };
  const name = () => (kept.page ? linked(kept.page, block.name) : block.name);
  const offer = (): void => line.replaceChildren(button(filled("show-block", { name: block.name }), show));
  const show = (): void => {
    const unfit = enter(taken.map(([field]) => field), taken.map(([, entry]) => entry));
    unfit.forEach((field) => field.reset());
    mark(now());
    line.replaceChildren(word("shows-block") + " ", name(), " · ", button(word("to-example"), back));
  };
  const back = (): void => {
    fields.forEach((field) => field.reset());
    mark(BACK);
    offer();
  };
  if (!taken.length) {
    return;
  }
  page.block = () => (mark() === now() ? block.name : "");
  const before = mark();
  if (before === BACK || (before !== now() && fields.some((field) => field.changed))) {
    offer();
    return;
  }
  if (before) {
    fields.forEach((field) => field.reset()); // what the block has no longer
  }
  show();
  then();
}

/** The fields that stand for what is known of a block, with what goes into them. */
function fieldsOf(fields: Field[], { facts, worked }: Block): [Field, Entry][] {
  const seen = new Map<string, Element>();
  return fields.flatMap((field): [Field, Entry][] => {
    const worksheet = field.element.closest(".worksheet");
    const id = factOf(field);
    const known = facts[id]?.[0] ? facts[id] : worked[id]; // what is left empty is worked from other facts
    if (!worksheet || !known) {
      return [];
    }
    // A second worksheet may be of another layer of soil.
    if (once.includes(id) && (seen.get(id) ?? worksheet) !== worksheet) {
      return [];
    }
    seen.set(id, worksheet);
    const entry = entryFor(field, id, known);
    return entry ? [[field, entry]] : [];
  });
}
