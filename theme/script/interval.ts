// What calc/sheet/interval.go and slope.go do: intervals of values and of slopes.

/** The least and the greatest that a value can be. */
export type Interval = readonly [low: number, high: number];

export const ANYTHING: Interval = [-Infinity, Infinity];
export const FLAT: Interval = [0, 0];

export const only = (v: number): Interval => [v, v];
export const single = ([low, high]: Interval): boolean => low === high;
export const negated = ([low, high]: Interval): Interval => [-high, -low];
export const same = (a: Interval, b: Interval): boolean => a[0] === b[0] && a[1] === b[1];

/** The interval of some values; anything if one of them is no number. */
function among(a: number, b: number, c = a, d = b): Interval {
  const low = Math.min(a, b, c, d);
  return isNaN(low) ? ANYTHING : [low, Math.max(a, b, c, d)];
}

export const plus = (a: Interval, b: Interval): Interval => among(a[0] + b[0], a[1] + b[1]);
export const minus = (a: Interval, b: Interval): Interval => plus(a, negated(b));

/** The interval of products; of slopes, nothing times an end without a limit is nothing. */
export const times = ([a, b]: Interval, [c, d]: Interval, by = (x: number, y: number): number => x * y): Interval =>
  among(by(a, c), by(a, d), by(b, c), by(b, d));

export const product = (x: number, y: number): number => (x && y ? x * y : 0);

export const over = ([a, b]: Interval, [c, d]: Interval): Interval =>
  c <= 0 && d >= 0 ? ANYTHING : among(a / c, a / d, b / c, b / d);

const ends = (low: typeof Math.min, high: typeof Math.min) => (a: Interval, b: Interval): Interval =>
  [low(a[0], b[0]), high(a[1], b[1])];

export const least = ends(Math.min, Math.min);
export const most = ends(Math.max, Math.max);
export const either = ends(Math.min, Math.max);
export const both = ends(Math.max, Math.min);
export const each = (f: (x: number) => number) => ([low, high]: Interval): Interval => [f(low), f(high)];

/** The interval of a truth that is surely so, or surely not, or may be either. */
export const ask = (surely: boolean, surelyNot: boolean): Interval => (surely ? [1, 1] : surelyNot ? FLAT : [0, 1]);

/** The slopes of what moves at once, and the same way, where a value with these slopes passes it. */
export const jump = (slopes: Interval): Interval => times(slopes, [0, Infinity], product);
