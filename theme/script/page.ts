import type { Field } from "./field";
import type { Machine } from "./module";
import type { Sheet } from "./sheets";
import type { Whole } from "./data";
import type { Works } from "./works";

/** What the blocks of a page share. */
export interface Page {
  data: Whole;
  fields: Field[];
  sheets: Sheet[];
  works: Works;
  machine: Machine;
  /** The name of the block whose numbers the page shows; "" for none. Only a page that has one says it. */
  block?: () => string;
  /** What a link with its numbers must fit. What takes the page along says it. */
  edition?: string;
}

/** A part of the page that is mounted on an element and follows one worksheet, or more. */
export interface Block {
  element: Element;
  /** Whether a number that it shows was changed just now. */
  fresh(): boolean;
  /** Brings it up to date. */
  update(): void;
}
