import type { PageData, TableData } from "./data";
import { sheetOf } from "./element";
import { fill } from "./field";
import { findGrid } from "./grid";
import { isVoid, refuses, type Sheet } from "./sheets";
import type { Works } from "./works";

/**
 * Gives the function that works every reckoner again, by working the module once for each of its answers. A reckoner
 * that follows a sheet without answers goes back to the example's.
 */
export function makeTables(data: PageData, sheets: Sheet[], works: Works): () => void {
  const tables = (data.tables ?? []).map((table, index) => ({
    table,
    grid: findGrid(index, table),
    followed: sheets[sheetWith(table.follow?.[0])],
  }));
  const { ends, guards } = works;
  const answer = ({ show, sheet, mark }: TableData) => {
    const { refusals } = sheets[sheet];
    const guard = guards.get(show);
    works.work([show, ...refusals, ...(guard === undefined ? [] : [guard])].map((cell) => [cell, cell]));
    const gone = refuses(sheets[sheet], ends) || (guard !== undefined && !ends.high[guard]);
    const [low, high] = gone ? [NaN, NaN] : [ends.low[show], ends.high[show]];
    return { low, high, marked: !!mark && low >= (mark[0] ?? -Infinity) && high <= (mark[1] ?? Infinity) };
  };
  return () => {
    const near = tables.map(({ table, followed }) => nearest(table, followed, ends.low));
    tables.forEach(({ table, grid }, index) => {
      const [nearRow, nearColumn] = near[index];
      works.fill(isVoid(sheets[table.sheet]));
      grid.forEach((row, r) =>
        row.forEach((cell, c) => {
          fill(ends, table.down[0], table.down[1][r]);
          fill(ends, table.across[0], table.across[1][c]);
          const { low, high, marked } = answer(table);
          cell.set(low, high, marked, r === nearRow && c === nearColumn);
        }),
      );
    });
  };
}

/** The worksheet that a given belongs to: it has a field for it, or shows what it takes from another. */
function sheetWith(cell: number | undefined): number {
  const element = document.querySelector(`[data-cell="${cell}"], [data-show="${cell}"]`);
  return element ? sheetOf(element) : NaN;
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
