// The page that says what is there without a network: lists the pages that are kept, and names the one that is not.

import { linked } from "./fillin";
import type { Ask } from "./offlineask";

/** Fills the page, if this is the one. */
export async function list(ask: Ask, site: string, home: string): Promise<void> {
  const place = document.querySelector<HTMLElement>("[data-there]");
  if (!place) {
    return;
  }
  const asked = document.querySelector<HTMLElement>("[data-away]")!;
  const way = location.hash.slice(1);
  if (way) {
    asked.querySelector("a")!.replaceWith(linked(site + way, new URL(site + way).pathname));
    asked.hidden = false;
  }
  const pages = await ask<[address: string, title: string][]>("pages");
  pages.sort(([a, one], [b, other]) => +(b === home) - +(a === home) || one.localeCompare(other));
  place.querySelector("ul")!.replaceChildren(...pages.map(([address, title]) => {
    const item = document.createElement("li");
    item.append(linked(address, plain(title)));
    return item;
  }));
  place.hidden = !pages.length;
}

const marks: Record<string, string> = { amp: "&", lt: "<", gt: ">", quot: '"', "#34": '"', "#39": "'" };

/** A text as it was before it was written as HTML. */
const plain = (text: string): string => text.replace(/&(#?\w+);/g, (all, name: string) => marks[name] ?? all);
