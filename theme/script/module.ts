// The page's module: its cells and the one function that works them.

import type { Program } from "./terms";

export interface Machine {
  bytes: Uint8Array;
  cells: Float64Array; // WebAssembly's memory is little-endian, and so is every machine that has a browser
  run(): void;
  s?(): void; // the second function: an answer and a value (calc/practice/marker.go)
  program?: Program; // read back out of the bytes, for ranges
}

/**
 * Makes the module ready from bytes that are in the page: nothing is fetched, so it works from a disk too.
 * Fails where WebAssembly is missing or not allowed.
 */
export async function instantiate(hexadecimal: string): Promise<Machine> {
  const bytes = Uint8Array.from(hexadecimal.match(/../g)!, (pair) => parseInt(pair, 16));
  const { exports } = (await WebAssembly.instantiate(bytes)).instance;
  return {
    bytes,
    cells: new Float64Array((exports.m as WebAssembly.Memory).buffer),
    run: exports.r as () => void,
    s: exports.s as () => void,
  };
}
