import { hide, mark, put } from "./element";
import { numberWriter, rangeText } from "./shown";
import type { Grid } from "./wire";

/** One answer of a reckoner: its number, and the notes that are with it when it is marked or near. */
interface GridAnswer {
  set(low: number, high: number, marked: boolean): void;
  /** Rings it, or not, as the one that is nearest to the reader's own numbers. */
  ring(near: boolean): void;
}

function makeAnswer(element: Element): GridAnswer {
  const write = numberWriter(element, false);
  let text = element.firstChild!.textContent;
  const teller = (name: string, note: Element | null) => (on: boolean) => {
    mark(element, name, on);
    hide(note, !on);
  };
  const tellMarked = teller("marked", element.querySelector(".mark-note"));
  return {
    set(low, high, marked) {
      const now = rangeText(low, high, write);
      if (now !== text) {
        text = now;
        put(element, now);
      }
      mark(element, "void", !isFinite(low));
      tellMarked(marked);
    },
    ring: teller("near", element.querySelector(".near-note")),
  };
}

/** The answers of a reckoner by row and column. */
export function findGrid(element: Element, { down, across }: Grid): GridAnswer[][] {
  return down[1].map((_, row) =>
    across[1].map((_, column) => {
      const place = `[data-row="${row}"][data-col="${column}"]`;
      return makeAnswer(element.querySelector(place)!);
    }),
  );
}
