// Runs inside Chromium. Works one calculation for ranges with the page's own code, and gives the numbers of the cases
// whose outputs differ in any bit from the native ones. cmd/check/parity/spread.go is its twin.
import { hash } from './parity-page.mjs';
import { spread } from './spread.mjs';
import './ranges.mjs';

export async function compareSpread({ module, inputs, outputs, guards, trends, cases }) {
  const bytes = await (await fetch(module)).arrayBuffer();
  const { exports } = (await WebAssembly.instantiate(bytes)).instance;
  const machine = { bytes: new Uint8Array(bytes), cells: new Float64Array(exports.m.buffer), run: exports.r };
  const { length } = machine.cells;
  return cases.flatMap(({ low, high, sum }, i) => {
    const ends = { low: new Float64Array(length), high: new Float64Array(length) };
    inputs.forEach((cell, k) => { ends.low[cell] = low[k]; ends.high[cell] = high[k]; });
    spread(machine, new Map(guards), ends, new Set(inputs), outputs.map((cell) => [cell, cell]), trends ?? []);
    const found = Float64Array.from([ends.low, ends.high].flatMap((end) => outputs.map((cell) => end[cell])));
    const [a, b] = hash(new Uint32Array(found.buffer), [...found.keys()]);
    return a === sum[0] && b === sum[1] ? [] : [i];
  });
}
