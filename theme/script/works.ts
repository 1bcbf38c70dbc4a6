import { all, numberIn } from "./element";
import { fill, type Field } from "./field";
import type { Machine } from "./module";
import { spread, type Asked, type Ends, type Guards } from "./spread";
import type { Whole } from "./data";

/** The page's module at work: the ends of its cells, and what fills and works them. */
export interface Works {
  ends: Ends;
  guards: Guards;
  /** Fills the inputs with the reader's numbers, or with the example's. */
  fill(example: boolean): void;
  /** By an element that shows a number for a part of the ranges only: the place of that in the ends. */
  parts: Map<Element, Asked>;
  /** Works what is asked for. */
  work(asked: Asked[]): void;
}

export function makeWorks(data: Whole, fields: Field[], machine: Machine): Works {
  const guards: Guards = new Map(data.guards);
  const parts = findParts(machine.cells.length, guards);
  const length = machine.cells.length + parts.size;
  const ends = { low: new Float64Array(length), high: new Float64Array(length) };
  data.fixed.forEach(([cell, low, high]) => fill(ends, cell, low, high));
  const inputs = new Set([
    ...fields.flatMap((field) => field.inputs),
    ...data.fixed.map(([cell]) => cell),
    ...data.tables.flatMap(({ down, across }) => [down[0], across[0]]),
  ]);
  return {
    ends,
    guards,
    parts,
    fill: (example) => fields.forEach((field) => field.write(ends, example)),
    work: (asked) => spread(machine, guards, ends, inputs, asked, data.trends),
  };
}

/** The numbers that are in a sentence that may hold for a part of the ranges. */
function findParts(places: number, guards: Guards): Map<Element, Asked> {
  const parts = new Map<Element, Asked>();
  for (const element of all<Element>("p[data-when] [data-show]")) {
    const cell = numberIn(element, "data-show");
    const truth = numberIn(element.closest("[data-when]")!, "data-when");
    if (truth !== guards.get(cell)) {
      parts.set(element, [places++, cell, truth]);
    }
  }
  return parts;
}

/** All that the page looks at after a run. */
export function readBy(data: Whole, { parts }: Works): Asked[] {
  const named = (["data-show", "data-when", "data-kind"] as const).flatMap((name) =>
    all<Element>(`[${name}]`).map((element) => numberIn(element, name)),
  );
  const cells = new Set([
    ...named,
    ...data.sheets.flatMap(({ refusals }) => refusals),
    ...data.guards.map(([, guard]) => guard),
    ...data.tables.flatMap(({ follow }) => follow ?? []),
  ]);
  return [...[...cells].map((cell): Asked => [cell, cell]), ...parts.values()];
}
