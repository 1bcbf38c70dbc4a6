import { word } from "./data";
import { all } from "./element";
import type { Field } from "./field";
import { keep, LINK, readKept } from "./kept";
import { makeRecord } from "./record";
import type { Word } from "./wire";

const PAUSE = 300; // milliseconds after the last change, before the numbers are kept

/** The numbers of a page for a link. */
export interface Keeper {
  /** The fragment with what is not the example's; "" for nothing. */
  fragment(): string;
  /** Puts them into the address and copies it; gives the sentence about that. */
  link(): Promise<string>;
  readonly edition: string;
}

/**
 * Brings back the numbers that were typed on this page before, or that a link has brought; keeps those that are typed,
 * and makes such a link. Then is called when numbers have come in later.
 */
export function makeKeeper(fields: Field[], then: () => void): Keeper {
  const record = makeRecord(fields);
  const line = document.getElementById("state")!;
  const here = () => location.href.split("#")[0];
  const linked = () => location.hash.startsWith(LINK);
  const tell = (text: string) => (line.textContent = text);
  const say = (name: Word) => tell(word(name));
  let timer: number | undefined;
  let keeps = true;

  /** Keeps the numbers, unless the page was made again without these fields. */
  const keepNow = (): void => {
    clearTimeout(timer);
    if (fields.every(({ element }) => element.isConnected)) {
      const kept = keep(record.write());
      keeps && !kept && say("unkept"); // once
      keeps = kept;
    }
  };
  const keepSoon = (): void => {
    if (linked()) {
      setAddress(here()); // its numbers are no longer those of the page
    }
    clearTimeout(timer);
    timer = window.setTimeout(keepNow, PAUSE);
  };

  /** Reads a record and says so. The numbers that it takes the place of can be brought back. */
  const read = (text: string, as: Word, before: string): void => {
    const found = record.read(text);
    say(found === "taken" ? as : found);
    if (before && before !== record.write()) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = word("undo");
      button.onclick = () => {
        read(before, "kept", "");
        then();
      };
      line.append(" ", button);
    }
  };
  const readLink = (before: string): void => read(location.hash.slice(LINK.length), "linked", before);

  const kept = readKept();
  if (linked()) {
    readLink(kept ?? "");
  } else if (kept && !document.body.matches(".live") && !record.write()) { // the desk puts back itself what was typed
    read(kept, "kept", "");
  }
  keepNow();
  addEventListener("hashchange", () => {
    if (linked()) {
      readLink(record.write());
      then();
      keepNow();
    }
  });
  // In the body, since the document is told of a script that has come, too.
  ["input", "change", "click"].forEach((name) => document.body.addEventListener(name, keepSoon));
  addEventListener("pagehide", keepNow);
  const keeper: Keeper = {
    edition: record.edition,
    fragment() {
      const numbers = record.write();
      return numbers && LINK + numbers;
    },
    link() {
      keepNow();
      setAddress(here() + keeper.fragment());
      return copy(location.href).then(() => word("copied"), () => word("in-address"));
    },
  };
  all("[data-link]").forEach((button) => {
    button.onclick = (event) => {
      event.stopPropagation();
      keeper.link().then(tell);
    };
  });
  return keeper;
}

/** Puts an address of this page in the place of its own. A browser may forbid it; the page works without. */
function setAddress(address: string): void {
  try {
    history.replaceState(history.state, "", address);
  } catch {
    location.hash = address.split("#")[1] ?? "";
  }
}

/** Copies a text, if the browser lets a page do that. */
export const copy = async (text: string): Promise<void> => navigator.clipboard.writeText(text);
