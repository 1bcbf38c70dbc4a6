import { all } from "./element";
import { enter, type Entry, type Field } from "./field";
import { BLOCK_NAME } from "./kept";
import { EDITION, nameEntries, printedEntry, UNIT } from "./listed";

const LONGEST = 60; // letters of an entry

/** What became of a record that was read. */
export type Read = "taken" | "left-out" | "other-edition";

/** The numbers of a page as a text, and back. */
export interface Record {
  /** What fits together: the givens of the page. */
  readonly edition: string;
  /** What is not the example's; "" for nothing. */
  write(): string;
  /** Puts what a record says into the fields, which read it as if it were typed. What it does not say is the example's. */
  read(text: string): Read;
}

export function makeRecord(fields: Field[]): Record {
  const edition = editionOf(fields);
  const printed = fields.map(printedEntry);
  return {
    edition,
    write() {
      const record = new URLSearchParams();
      fields.forEach((field, i) => {
        const [text, unit] = field.entry();
        if (text !== printed[i][0] || unit !== printed[i][1]) {
          record.append(field.element.id, text);
          if (unit) {
            record.append(field.element.id + UNIT, unit);
          }
        }
      });
      return record.size ? `${EDITION}=${edition}&${record}` : "";
    },
    read(text) {
      const record = new URLSearchParams(text);
      if (record.get(EDITION) !== edition) {
        return "other-edition";
      }
      nameEntries(record, fields);
      record.delete(EDITION);
      record.delete(BLOCK_NAME); // the page about one block reads it
      fields.forEach((field) => field.reset());
      const there = fields.filter(({ element }) => record.has(element.id));
      const entries = there.map(({ element: { id } }): Entry => [
        record.get(id)!.slice(0, LONGEST),
        record.get(id + UNIT) ?? undefined,
      ]);
      const unfit = enter(there, entries, fields);
      unfit.forEach((field) => field.reset());
      there.forEach(({ element: { id } }) => [id, id + UNIT].forEach((name) => record.delete(name)));
      return unfit.length + record.size ? "left-out" : "taken";
    },
  };
}

/**
 * A mark that is another once the givens of the page, their units, options, ranges or example numbers are: a record of
 * one edition says nothing in another.
 */
function editionOf(fields: Field[]): string {
  const texts = fields.map(({ element }) => [
    element.id,
    ...["value", "data-low", "data-high"].map((name) => element.getAttribute(name)),
    ...[...element.labels!].map((label) => label.textContent),
    ...all<HTMLOptionElement>("option", element.parentElement!).map((option) => option.text + option.defaultSelected),
  ]);
  let mark = 0;
  for (const letter of JSON.stringify(texts)) {
    mark = (Math.imul(mark, 31) + letter.codePointAt(0)!) | 0;
  }
  return (mark >>> 0).toString(36);
}
