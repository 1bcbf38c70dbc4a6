// The data block that the press writes into a page with worksheets.

/** A worksheet's part in the page's module. The list of sheets stands in the order they are worked. */
export interface SheetData {
  after: number[]; // the sheets whose answers it takes
  refusals: number[]; // cells that withhold its answers when they are not 0
}

/** A reckoner: one answer over a grid of two givens. */
export interface TableData {
  of: number; // its sheet
  down: [cell: number, values: number[]];
  across: [cell: number, values: number[]];
  show: number;
  mark?: [low: number | null, high: number | null] | null; // in the unit of the cell shown; null where it is open
  follow?: [down: number, across: number] | null; // the reader's own two numbers
}

export interface PageData {
  m: string; // the module, hexadecimal: a server packs it better than base64
  sheets: SheetData[];
  fixed: [cell: number, low: number, high?: number][]; // inputs that no field sets
  guards?: [cell: number, guard: number][]; // values that are left out while their guard is 0
  trends: Trend[]; // what ranges are told of values that the module does not show
  tables: TableData[];
}

/** The value of a cell never goes down when that of another goes up, or never up. */
export type Trend = [of: number, from: number, up: number];

const block = document.getElementById("module");

/** The page's data, or null on a page that has none. */
export const readData = (): PageData | null => block && JSON.parse(block.textContent!);

/** A word or a sentence of the page's language, for what the script writes itself. */
export const word = (name: string): string => block!.getAttribute("data-" + name)!;

/** A sentence of the page's language with its blanks filled in. */
export const filled = (name: string, blanks: Record<string, string>): string =>
  word(name).replace(/\{(\w+)\}/g, (_, blank: string) => blanks[blank]!);
