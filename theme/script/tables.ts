import type { Bound, PageData, TableData } from "./data";
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
  const tables = (data.tables ?? []).map((table, index) => ({ table, grid: findGrid(index, table) }));
  const { cells } = machine;
  return () => {
    const near = tables.map(({ table }) => nearest(table, cells));
    tables.forEach(({ table, grid }, index) => {
      const sheet = sheets[table.sheet];
      const [nearRow, nearColumn] = isVoid(sheet) ? [-1, -1] : near[index];
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

/** The row and the column nearest to the reader's own numbers; -1 where there are none to follow. */
function nearest({ follow, down, across }: TableData, cells: Float64Array): number[] {
  return [down, across].map(([, values], which) => {
    const distances = follow ? values.map((value) => Math.abs(value - cells[follow[which]])) : [];
    return distances.indexOf(Math.min(...distances));
  });
}

/** Whether an answer lies in the marked range, ends included. */
function inside(mark: TableData["mark"], value: number, cells: Float64Array): boolean {
  if (!mark || !isFinite(value)) {
    return false;
  }
  const end = (bound: Bound, open: number): number =>
    bound === null ? open : typeof bound === "object" ? cells[bound.cell] : Number(bound);
  return end(mark[0], -Infinity) <= value && value <= end(mark[1], Infinity);
}
