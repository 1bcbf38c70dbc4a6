import { sheetOf } from "./element";
import { fill } from "./field";
import { findGrid } from "./grid";
import { isVoid, refuses, type Sheet } from "./sheets";
import type { Asked } from "./spread";
import type { Data, Grid } from "./wire";
import type { Works } from "./works";

/**
 * Gives the function that works every reckoner again, by working the module once for each of its answers. A reckoner
 * that follows a sheet without answers goes back to the example's.
 */
export function makeTables(data: Data, sheets: Sheet[], works: Works): () => void {
  const { ends, guards } = works;
  const tables = data.tables.map((table, index) => ({
    table,
    grid: findGrid(index, table),
    followed: sheets[sheetWith(table.follow?.[0])],
    asked: [table.show, ...sheets[table.of].refusals, guards.get(table.show) ?? table.show].map(
      (cell): Asked => [cell, cell],
    ),
  }));
  const answer = ({ show, of, mark }: Grid): [low: number, high: number, marked: boolean] => {
    const guard = guards.get(show);
    const gone = refuses(sheets[of], ends) || (guard !== undefined && !ends.high[guard]);
    const [low, high] = gone ? [NaN, NaN] : [ends.low[show], ends.high[show]];
    return [low, high, !!mark && low >= (mark[0] ?? -Infinity) && high <= (mark[1] ?? Infinity)];
  };
  return () => {
    for (const { table, grid, followed } of tables.filter(({ followed }) => followed?.fresh)) {
      const [nearRow, nearColumn] = nearest(table, followed!, ends.low);
      grid.forEach((row, r) => row.forEach((cell, c) => cell.ring(r === nearRow && c === nearColumn)));
    }
    for (const { table, grid, asked } of tables.filter(({ table }) => sheets[table.of].fresh)) {
      works.fill(isVoid(sheets[table.of]));
      grid.forEach((row, r) =>
        row.forEach((cell, c) => {
          fill(ends, table.down[0], table.down[1][r]);
          fill(ends, table.across[0], table.across[1][c]);
          works.work(asked);
          cell.set(...answer(table));
        }),
      );
    }
  };
}

/** The worksheet that a given belongs to: it has a field for it, or shows what it takes from another. */
function sheetWith(cell: number | undefined): number {
  const element = document.querySelector(`[data-cell="${cell}"], [data-show="${cell}"]`);
  return element ? sheetOf(element) : NaN;
}

/** The row and the column nearest to the reader's own numbers; -1 where there are none to follow. */
function nearest(table: Grid, followed: Sheet, cells: Float64Array): number[] {
  const { follow, down, across } = table;
  return [down, across].map(([, values], which) => {
    const distances =
      isVoid(followed) ? [] : values.map((value) => Math.abs(value - cells[follow![which]]));
    return distances.indexOf(Math.min(...distances));
  });
}
