// Reads the terms back out of the page's module: what wasm/body.go has written. It is straight-line code, so the stack
// of the machine holds terms instead of numbers, and what is stored is a term.

import {
  ANYTHING, FLAT, ask, each, either, jump, least, minus, most, negated, over, plus, product, same, single, times,
  type Interval,
} from "./interval";

/** One operation of the module, and the earlier terms that it takes, by their place in the list. */
export type Term = [
  op: number, // as the module has it
  takes: number[],
  value: number, // of a literal; of an input its cell; of a lookup the cell where its table begins
];

export const SELECT = 0x1b;
export const LOAD = 0x2b;
export const LITERAL = 0x44;
export const NOT = 0x45;
export const EQUAL = 0x61;
export const LESS = 0x63;
export const AT_MOST = 0x65;
export const AND = 0x71;
export const OR = 0x72;
const CEILING = 0x9b;
const FLOOR = 0x9c;
export const MULTIPLY = 0xa2;
export const DIVIDE = 0xa3;

export const isTruth = (op: number): boolean => op >= NOT && op <= OR;

/** Whether an operation gives whole numbers, and so leaves some out. */
export const isStep = (op: number): boolean => isTruth(op) || op === CEILING || op === FLOOR;

/** The interval of an operation from those of its operands. */
type Value = (x: Interval, y: Interval, z: Interval) => Interval;

/** Its slopes, from those of its operands (p, q, r), from their intervals and from its own. */
type Slope = (p: Interval, q: Interval, x: Interval, y: Interval, own: Interval, r: Interval, z: Interval) => Interval;

/** The slopes of a value that is one of two, surely the first, surely the second, or now this and now that. */
const oneOf = (p: Interval, q: Interval, first: unknown, second: unknown) => (first ? p : second ? q : either(p, q));

const below: Slope = (p, q) => jump(minus(q, p));
type Rule = [value: Value, slope: Slope];
const smaller: Rule = [least, (p, q, x, y) => oneOf(p, q, x[1] <= y[0], y[1] <= x[0])];
const larger: Rule = [most, (p, q, x, y) => oneOf(p, q, x[0] >= y[1], y[0] >= x[1])];

export const OPS: Record<number, Rule> = {
  // It takes the question, what stands for a no, and what stands for a yes.
  [SELECT]: [
    (x, y, z) => oneOf(z, y, x[0], !x[1]),
    (p, q, x, y, _, r, z) =>
      single(x) ? (x[0] ? r : q) : plus(either(r, q), times(p, minus(z, y), product)),
  ],
  [NOT]: [(x) => ask(!x[1], !!x[0]), negated],
  [EQUAL]: [
    (x, y) => ask(single(x) && same(x, y), x[1] < y[0] || x[0] > y[1]),
    (p, q) => (single(p) && same(p, q) ? FLAT : ANYTHING),
  ],
  0x66: [(x, y) => OPS[AT_MOST][0](y, x, x), below],
  [LESS]: [(x, y) => ask(x[1] < y[0], x[0] >= y[1]), below],
  [AT_MOST]: [(x, y) => ask(x[1] <= y[0], x[0] > y[1]), below],
  [AND]: smaller,
  [OR]: larger,
  0x99: [
    (x) => (x[0] > 0 ? x : x[1] < 0 ? negated(x) : [0, Math.max(-x[0], x[1])]),
    (p, _, x) => oneOf(p, negated(p), x[0] >= 0, x[1] <= 0),
  ],
  0x9a: [negated, negated],
  [CEILING]: [each(Math.ceil), jump],
  [FLOOR]: [each(Math.floor), jump],
  0x9f: [
    (x) => (x[1] < 0 ? ANYTHING : each(Math.sqrt)(most(x, FLAT))),
    (p, _, _x, _y, [low, high]) => times(p, [1 / (2 * high), 1 / (2 * low)], product),
  ],
  0xa0: [plus, plus],
  0xa1: [minus, minus],
  [MULTIPLY]: [(x, y) => times(x, y), (p, q, x, y) => plus(times(x, q, product), times(y, p, product))],
  [DIVIDE]: [over, (p, q, _, y, own) => over(minus(p, times(own, q, product)), y)],
  0xa4: smaller,
  0xa5: larger,
};

/** The terms of a module, and by cell the term that is written to it or that reads it. */
export type Program = [terms: Term[], cells: Map<number, number>];

export function readProgram(bytes: Uint8Array): Program {
  const CODE = 10; // the section; what comes before it is short, and has no such byte
  let at = bytes.indexOf(CODE) + 1;
  const whole = (): number => {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = bytes[at++];
      value |= (byte & 127) << shift;
      if (byte < 128) {
        return value;
      }
    }
  };
  // The size of the section, the number of functions, the size of the one, and its two groups of locals.
  for (let skipped = 8; skipped--; ) {
    whole();
  }
  const terms: Term[] = [[LITERAL, [], 0]]; // so that 0 is no place of a term that is asked for
  const cells = new Map<number, number>();
  const stack: number[] = [];
  const locals: number[] = [];
  const pop = () => stack.pop()!;
  const push = (op: number, takes: number[] = [], value = 0) => stack.push(terms.push([op, takes, value]) - 1);
  for (;;) {
    const op = bytes[at++];
    if (op === 0x0b) { // end
      return [terms, cells];
    } else if (op === 0x20) { // local.get
      stack.push(locals[whole()]);
    } else if (op === 0x22) { // local.tee
      locals[whole()] = stack[stack.length - 1];
    } else if (op === LOAD) {
      at++; // its alignment
      const index = pop();
      const cell = whole() / 8;
      if (terms[index][0] === LITERAL) {
        cells.set(cell, terms.length);
        push(op, [], cell);
      } else {
        push(op, [index], cell);
      }
    } else if (op === 0x39) { // f64.store
      at++;
      cells.set(whole() / 8, pop());
      pop();
    } else if (op === 0x41) { // i32.const, which is small here
      push(LITERAL, [], (bytes[at++] << 25) >> 25);
    } else if (op === LITERAL) {
      push(op, [], new DataView(bytes.buffer).getFloat64(at, true));
      at += 8;
    } else if (op === 0x62 || op === 0x74) { // f64.ne 0: a truth is one already; i32.shl 3: an index as an address
      pop();
    } else if (op < 0xa6) {
      const last = pop();
      push(op, op === NOT || (op > 0x98 && op < 0xa0) ? [last] : op === SELECT ? [last, pop(), pop()] : [pop(), last]);
    } // what is left turns an i32 into an f64 or back
  }
}
