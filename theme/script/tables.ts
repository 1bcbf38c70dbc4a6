import type { Bound, PageData, TableData } from "./data";
import { numberIn } from "./element";
import { findGrid } from "./grid";
import type { Machine } from "./module";
import { isVoid, refuses, type Sheet } from "./sheets";

/** Fills the inputs of the module with the reader's numbers, or with the example's. */
type Fill = (example: boolean) => void;

/**
 * Gives the function that works every reckoner again, by running the module once for each of its answers. A reckoner
 * that follows a sheet without answers goes back to the example's.
 */
export function makeTables(data: PageData, sheets: Sheet[], machine: Machine, fill: Fill): () => void {
  const tables = (data.tables ?? []).map((table, index) => ({
    table,
    grid: findGrid(index, table),
    followed: sheets[sheetOf(table.follow?.[0])],
  }));
  const { cells } = machine;
  return () => {
    const near = tables.map(({ table, followed }) => nearest(table, followed, cells));
    tables.forEach(({ table, grid }, index) => {
      const sheet = sheets[table.sheet];
      const [nearRow, nearColumn] = near[index];
      fill(isVoid(sheet));
      grid.forEach((row, r) =>
        row.forEach((answer, c) => {
          cells[table.down[0]] = table.down[1][r];
          cells[table.across[0]] = table.across[1][c];
          machine.run();
          const value = refuses(sheet, cells) ? NaN : cells[table.show];
          answer.set(value, inside(table.mark, value, cells), r === nearRow && c === nearColumn);
        }),
      );
    });
  };
}

/** The worksheet that a given belongs to: it has a field for it, or shows what it takes from another. */
function sheetOf(cell: number | undefined): number {
  const element = document.querySelector(`[data-cell="${cell}"], [data-show="${cell}"]`);
  return element ? numberIn(element, "data-sheet") : NaN;
}

/** The row and the column nearest to the reader's own numbers; -1 where there are none to follow. */
function nearest(table: TableData, followed: Sheet | undefined, cells: Float64Array): number[] {
  const { follow, down, across } = table;
  return [down, across].map(([, values], which) => {
    const distances =
      follow && followed && !isVoid(followed) ? values.map((value) => Math.abs(value - cells[follow[which]])) : [];
    return distances.indexOf(Math.min(...distances));
  });
}

/** Whether an answer lies in the marked range, ends included. */
function inside(mark: TableData["mark"], value: number, cells: Float64Array): boolean {
  if (!mark || !isFinite(value)) {
    return false;
  }
  const end = (bound: Bound, open: number): number =>
    bound === null ? open : typeof bound === "object" ? cells[bound.cell] : bound;
  return end(mark[0], -Infinity) <= value && value <= end(mark[1], Infinity);
}
