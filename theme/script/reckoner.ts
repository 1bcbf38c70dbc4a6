import { numberIn, sheetOf } from "./element";
import { fill } from "./field";
import { findGrid } from "./grid";
import type { Block, Page } from "./page";
import { isVoid, refuses, type Sheet } from "./sheets";
import type { Asked } from "./spread";
import type { Grid } from "./wire";

/**
 * Mounts a reckoner, which works the module once for each of its answers. Without answers from the sheet that it follows
 * it goes back to the example's.
 */
export function mountReckoner(element: Element, { data, sheets, works }: Page): Block {
  const { ends, guards } = works;
  const table = data.tables[numberIn(element.querySelector("[data-table]")!, "data-table")];
  const { of, show, mark, down, across } = table;
  const sheet = sheets[of];
  const grid = findGrid(element, table);
  const followed: Sheet | undefined = sheets[sheetWith(table.follow?.[0])];
  const guard = guards.get(show);
  const asked = [show, ...sheet.refusals, guard ?? show].map((cell): Asked => [cell, cell]);
  const answer = (): [low: number, high: number, marked: boolean] => {
    const gone = refuses(sheet, ends) || (guard !== undefined && !ends.high[guard]);
    const [low, high] = gone ? [NaN, NaN] : [ends.low[show], ends.high[show]];
    return [low, high, !!mark && low >= (mark[0] ?? -Infinity) && high <= (mark[1] ?? Infinity)];
  };
  return {
    element,
    fresh: () => sheet.fresh || !!followed?.fresh,
    update() {
      if (followed?.fresh) {
        const [nearRow, nearColumn] = nearest(table, followed, ends.low);
        grid.forEach((row, r) => row.forEach((cell, c) => cell.ring(r === nearRow && c === nearColumn)));
      }
      if (sheet.fresh) {
        works.fill(isVoid(sheet));
        grid.forEach((row, r) =>
          row.forEach((cell, c) => {
            fill(ends, down[0], down[1][r]);
            fill(ends, across[0], across[1][c]);
            works.work(asked);
            cell.set(...answer());
          }),
        );
        works.fill(false);
      }
    },
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
