import type { PageData } from "./data";
import { all, numberIn } from "./element";
import { fill, type Field } from "./field";
import type { Machine } from "./module";
import { MOST_RANGES, spread, type Ends, type Guards } from "./spread";

/** The page's module at work: the ends of its cells, and what fills and works them. */
export interface Works {
  ends: Ends;
  guards: Guards;
  /** Fills the inputs with the reader's numbers, or with the example's. */
  fill(example: boolean): void;
  /** Works the cells that are asked for. */
  work(outputs: number[]): void;
}

export function makeWorks(data: PageData, fields: Field[], machine: Machine): Works {
  const { length } = machine.cells;
  const ends = { low: new Float64Array(length), high: new Float64Array(length) };
  const guards: Guards = new Map(data.guards);
  data.fixed?.forEach(([cell, low, high]) => fill(ends, cell, low, high));
  const inputs = [
    ...fields.flatMap((field) => field.inputs),
    ...(data.fixed ?? []).map(([cell]) => cell),
    ...(data.tables ?? []).flatMap(({ down, across }) => [down[0], across[0]]),
  ];
  return {
    ends,
    guards,
    fill: (example) => fields.forEach((field) => field.write(ends, example)),
    work: (outputs) => spread(machine, guards, ends, inputs, outputs),
  };
}

/** Every cell that the page looks at after a run. */
export function cellsRead(data: PageData): number[] {
  const named = ["data-show", "data-when", "data-kind"].flatMap((name) =>
    all<Element>(`[${name}]`).map((element) => numberIn(element, name)),
  );
  return [...new Set([
    ...named,
    ...(data.sheets ?? []).flatMap(({ refusals }) => refusals ?? []),
    ...(data.guards ?? []).map(([, guard]) => guard),
    ...(data.tables ?? []).flatMap(({ follow }) => follow ?? []),
  ])];
}

/** Gives the function that refuses the newest ranges of a page that has too many. It takes the fields just changed. */
export function makeLimit(data: PageData, fields: Field[]): (news: Field[]) => void {
  const most = MOST_RANGES - (data.fixed ?? []).filter(([, low, high = low]) => low !== high).length;
  let byAge = fields;
  return (news) => {
    byAge = [...byAge.filter((field) => !news.includes(field)), ...news];
    let left = most;
    byAge.forEach((field) => field.refuse(field.ranged && left-- <= 0));
  };
}
