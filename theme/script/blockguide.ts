// A page whose worksheets can take the numbers of the block that a reader has chosen.

import { loadBlocks, type Block } from "./blockstore";
import { filled, word } from "./data";
import { all } from "./element";
import { edition, entryFor, factOf, once } from "./facts";
import { enter, type Entry, type Field } from "./field";
import { linked } from "./fillin";
import { LINK } from "./kept";
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
  const old = block.edition !== edition && Object.keys(block.worked).length > 0;
  const taken = fieldsOf(fields, old ? { ...block, worked: {} } : block);
  const now = () => JSON.stringify(fields.map((field) => field.entry()));
  const button = (text: string, act: () => void) => {
    const one = document.createElement("button");
    one.type = "button";
    one.textContent = text;
    one.onclick = act;
    return one;
  };
  const name = () => (kept.page ? linked(kept.page, block.name) : block.name);
  const offer = (): void => {
    const one = button(filled("show-block", { name: block.name }), show);
    location.hash.startsWith(LINK) ? line.append(" ", one) : line.replaceChildren(one); // a link has said what it brought
  };
  const show = (): void => {
    const unfit = enter(taken.map(([field]) => field), taken.map(([, entry]) => entry));
    unfit.forEach((field) => field.reset());
    mark(now());
    then();
    line.replaceChildren(word("shows-block") + " ", name(), " · ", button(word("to-example"), back));
    if (old) {
      line.append(" ", word("block-old"));
    }
    if (block.facts["counted"]?.[0] && fields.some((field) => factOf(field) === "row")) {
      line.append(" ", word("by-spacing"));
    }
    // Where a number of the block does not go, such as a dry material through an injector, it says why.
    const whys = taken.flatMap(([{ element }]) => all("[data-refusal]:not([hidden])", element.closest(".worksheet")!));
    new Set(whys).forEach((why) => {
      const choice = why.closest(".worksheet")!.querySelector("select[data-cell]");
      line.append(" ", why.textContent!, " ");
      choice && line.append(linked("#" + choice.id, document.querySelector(`[for="${choice.id}"]`)!.textContent!));
    });
  };
  const back = (): void => {
    fields.forEach((field) => field.reset());
    mark(BACK);
    then();
    line.replaceChildren();
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
