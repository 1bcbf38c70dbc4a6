// What calc/sheet/judge.go, slope.go and assume.go do: terms worked for intervals.

import { ANYTHING, FLAT, both, jump, minus, only, plus, same, single, type Interval } from "./interval";
import { AND, AT_MOST, DIVIDE, LESS, LITERAL, LOAD, MULTIPLY, NOT, OPS, OR, SELECT, type Term } from "./terms";
import type { Trend } from "./wire";

/** What is known of terms beforehand. */
export type Limits = Interval[];

/** The terms of a page, which are worked for values that are set from outside. */
export interface Judge {
  sides: number[];
  value: Interval[];
  /** Works the terms for a box, and their slopes if they are asked for. False if they cannot be as the limits say. */
  pass(box: Interval[], slopes?: boolean, limits?: Limits): boolean;
  /** The slopes of a term for each side. */
  slopes(i: number): Interval[];
  /** What follows for the values that a truth is asked of if it is so, or not. */
  assume(i: number, so: boolean): Limits;
}

/**
 * Makes a judge of some terms. By term there are its value, which it writes, and whether it is a whole number. The
 * sides are the terms that are set from outside.
 */
export function makeJudge(
  terms: Term[], memory: Float64Array, whole: boolean[], value: Interval[], sides: number[], order: number[],
  told: Trend[][],
): Judge {
  // By side, and by term within it: the slopes, and the power of the side that the value is a multiple of. What is of
  // the power 0 stays the same.
  const by = sides.map((side) => {
    const slope = terms.map(() => FLAT);
    const degree = terms.map(() => 0);
    slope[side] = only(1);
    degree[side] = 1;
    for (const i of order) {
      const [op, [a, b = a, c = a]] = terms[i];
      const [d, e, f] = [degree[a], degree[b], degree[c]];
      degree[i] =
        d === 0 && e === 0 && f === 0 ? 0
        : op === MULTIPLY ? d + e
        : op === DIVIDE ? d - e
        : op === SELECT && single(value[a]) ? (value[a][0] ? f : e)
        : NaN;
    }
    return [slope, degree] as const;
  });
  const unlimited = terms.map(() => ANYTHING);
  return {
    sides,
    value,
    pass(box, slopes, limits = unlimited) {
      sides.forEach((i, n) => (value[i] = box[n]));
      for (const i of order) {
        const [op, [a, b = a, c = a], number] = terms[i];
        const [x, y, z] = [value[a], value[b], value[c]];
        const worked =
          op === LITERAL ? only(number)
          : op === LOAD ? only(memory[number + Math.trunc(x[0])])
          : OPS[op][0](x, y, z);
        const own = (value[i] = both(worked, limits[i]));
        if (own[0] > own[1]) {
          return false;
        }
        if (slopes) {
          for (const [slope, degree] of by) {
            const [p, q, r] = [slope[a], slope[b], slope[c]];
            slope[i] =
              told[i] ? told[i].reduce((all, [, from, up]) => (up ? plus : minus)(all, jump(slope[from])), FLAT)
              : single(own) || degree[i] === 0 || (same(p, FLAT) && same(q, FLAT) && same(r, FLAT)) ? FLAT
              : OPS[op][1](p, q, x, y, own, r, z);
          }
        }
      }
      return true;
    },
    slopes: (i) => by.map(([slope]) => slope[i]),
    assume(i, so) {
      const limits = [...unlimited];
      const know = (i: number, limit: Interval) => (limits[i] = both(limits[i], limit));
      const assume = (i: number, so: boolean): void => {
        const [op, [a, b]] = terms[i];
        know(i, only(+so));
        if (op === NOT) {
          assume(a, !so);
        } else if (op === AND || op === OR) {
          // All of a yes to both is a yes to each, and one that is settled leaves it to the other.
          const leaves = (i: number) => so === (op === AND) || (single(value[i]) && !!value[i][0] !== so);
          if (leaves(a)) {
            assume(b, so);
          }
          if (leaves(b)) {
            assume(a, so);
          }
        } else if (op === LESS || op === AT_MOST) {
          const [low, high] = so ? [a, b] : [b, a];
          const apart = +(so === (op === LESS) && whole[low] && whole[high]);
          know(low, [-Infinity, value[high][1] - apart]);
          know(high, [value[low][0] + apart, Infinity]);
        }
      };
      assume(i, so);
      return limits;
    },
  };
}
