import type { PageData } from "./data";
import type { Field } from "./field";
import type { Ends } from "./spread";

/** How a worksheet stands after a run. */
export interface Sheet {
  after: number[];
  refusals: number[];
  tabled: boolean; // it stands behind a reckoner, and refuses a cell of the grid at a time
  waiting: boolean; // a number it needs is missing: its own, or one from another sheet
  refused: boolean; // it has its numbers, and withholds the answers
  changed: boolean; // it does not have the example's numbers
}

/** A void sheet has no answers: nothing that it once worked out may look current. */
export const isVoid = (sheet: Sheet): boolean => sheet.waiting || sheet.refused;

export function makeSheets(data: PageData): Sheet[] {
  const tabled = new Set(data.tables?.map((table) => table.sheet));
  return (data.sheets ?? []).map(({ after, refusals }, index) => ({
    after: after ?? [],
    refusals: refusals ?? [],
    tabled: tabled.has(index),
    waiting: false,
    refused: false,
    changed: false,
  }));
}

/** A sheet refuses a range when it refuses any number in it. */
export const refuses = (sheet: Sheet, { high }: Ends): boolean => sheet.refusals.some((cell) => high[cell] !== 0);

/** Works out how every sheet stands, in the order they are worked, so that each finds the ones before it settled. */
export function settle(sheets: Sheet[], fields: Field[], ends: Ends): void {
  sheets.forEach((sheet, index) => {
    const own = fields.filter((field) => field.sheet === index);
    const before = sheet.after.map((other) => sheets[other]);
    sheet.waiting = own.some((field) => field.faulty) || before.some(isVoid);
    sheet.refused = !sheet.waiting && !sheet.tabled && refuses(sheet, ends);
    sheet.changed = own.some((field) => field.changed) || before.some((other) => other.changed);
  });
}
