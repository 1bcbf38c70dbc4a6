// The numbers of a page by the places of their fields: in a third of the letters, for a code on paper.

import { printedIndex } from "./choice";
import { all } from "./element";
import type { Entry, Field } from "./field";

export const EDITION = "edition";
export const UNIT = "*"; // behind the name or the text of a field: its unit
const NEXT = "_"; // between entries
const LISTED = "listed";

/** The list of a field: its options, where one of them is chosen, or else its units. */
function listOf({ element }: Field): { list?: HTMLSelectElement; chosen: boolean } {
  const [list] = all<HTMLSelectElement>("select", element.parentElement!);
  return { list, chosen: element === list };
}

/** What a field was printed with. */
export function printedEntry(field: Field): Entry {
  const { list, chosen } = listOf(field);
  const name = list?.options[printedIndex(list)]!.text;
  return chosen ? [name!] : [(field.element as HTMLInputElement).defaultValue, name];
}

/** Puts names in the place of the places that a code on paper has for fields, options and units. */
export function nameEntries(record: URLSearchParams, fields: Field[]): void {
  const listed = record.get(LISTED)?.split(NEXT);
  if (listed?.length === fields.length && listed.every((entry) => !entry || entry.includes(UNIT))) {
    record.delete(LISTED); // what was cut off is left over, and the page says so
  }
  fields.forEach((field, i) => {
    const [text, at] = listed?.[i]?.split(UNIT) ?? [];
    const { list, chosen } = listOf(field);
    const name = list?.options[+at!]?.text ?? "?"; // which no list has
    if (at !== undefined) {
      record.set(field.element.id, chosen ? name : text!);
      if (list && !chosen) {
        record.set(field.element.id + UNIT, name);
      }
    }
  });
}

/** What of a page is not the example's, by places; "" for nothing. */
export function listEntries(fields: Field[], edition: string): string {
  const entries = fields.map((field) => {
    const [text] = field.entry();
    const { list, chosen } = listOf(field);
    return field.changed || (list && list.selectedIndex !== printedIndex(list)) // a number may be the same in another unit
      ? (chosen ? "" : text.replace(/[_*]/g, "?")) + UNIT + (list?.selectedIndex ?? "") : "";
  });
  return entries.some(Boolean) ? `${new URLSearchParams({ [EDITION]: edition, [LISTED]: entries.join(NEXT) })}` : "";
}
