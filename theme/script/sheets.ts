import { all, numberIn, sheetOf } from "./element";
import type { Field } from "./field";
import type { Ends } from "./spread";
import type { Whole } from "./data";

/** How a worksheet comes after a run. */
export interface Sheet {
  after: number[];
  refusals: number[];
  results: Result[];
  tabled: boolean; // it stands behind a reckoner, and refuses a cell of the grid at a time
  endless: boolean; // a result has no ends, though nothing else is refused
  waiting: boolean; // a number it needs is missing: its own, or one from another sheet
  refused: boolean; // it has its numbers, and withholds the answers
  changed: boolean; // it does not have the example's numbers
  fresh: boolean; // a number of it, or of a sheet that it takes one from, was changed just now
}

/** A number that the work of a sheet comes to. */
interface Result {
  cell: number;
  when: number; // the cell that is 0 while it is left out; NaN when it never is
}

/** A void sheet has no answers: nothing that it once worked out may look current. */
export const isVoid = (sheet: Sheet): boolean => sheet.waiting || sheet.refused || sheet.endless;

/** What belongs to a sheet that is not fresh stays as it is. */
export const isFresh = ({ sheet }: { sheet: Sheet }): boolean => sheet.fresh;

export function makeSheets(data: Whole): Sheet[] {
  const lines = all<Element>(".work li");
  return data.sheets.map(({ after = [], refusals }, index) => ({
    after,
    refusals,
    results: lines.filter((line) => sheetOf(line) === index).map((line) => ({
      cell: numberIn(all("[data-show]", line).pop()!, "data-show"),
      when: numberIn(line, "data-when"),
    })),
    tabled: data.tables.some((table) => table.of === index),
    endless: false,
    waiting: false,
    refused: false,
    changed: false,
    fresh: true,
  }));
}

/** A sheet refuses a range when it refuses any number in it. */
export const refuses = (sheet: Sheet, { high }: Ends): boolean => sheet.refusals.some((cell) => high[cell] !== 0);

/** Whether nothing can be told of a result for all of a range: it divides by what may be 0. */
const isEndless = ({ low, high }: Ends, { cell, when }: Result): boolean =>
  high[when] !== 0 && high[cell] - low[cell] === Infinity;

/**
 * Works out how every sheet stands, in the order they are worked, so that each finds the ones before it settled. News are
 * the fields that have changed; without any, all of the page is to be written again.
 */
export function settle(sheets: Sheet[], fields: Field[], news: Field[], ends: Ends): void {
  sheets.forEach((sheet, index) => {
    const own = fields.filter((field) => field.sheet === index);
    sheet.endless = false;
    const before = sheet.after.map((other) => sheets[other]);
    sheet.fresh = !news.length || own.some((field) => news.includes(field)) || before.some((other) => other.fresh);
    sheet.waiting = own.some((field) => field.faulty) || before.some(isVoid);
    sheet.refused = !sheet.waiting && !sheet.tabled && refuses(sheet, ends);
    sheet.endless = !isVoid(sheet) && sheet.results.some((result) => isEndless(ends, result));
    sheet.changed = own.some((field) => field.changed) || before.some((other) => other.changed);
  });
}
