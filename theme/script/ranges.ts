// How ranges are worked: the part of calc/sheet/spread.go that is only needed when a number of the page is a range. It is
// a script of its own, which the page's script calls.

import { FLAT, single, type Interval } from "./interval";
import { makeJudge } from "./judge";
import type { Machine } from "./module";
import { search } from "./search";
import type { Ends, Guards } from "./spread";
import { isStep, isTruth, LITERAL, LOAD, readProgram, SELECT } from "./terms";
import type { Trend } from "./wire";

/** Gives the function that finds the ends of a cell, where it is there or a truth holds, if it follows from a range. */
globalThis.findRanges = function findRanges(
  machine: Machine, guards: Guards, { low, high }: Ends, trends: Trend[],
): (cell: number, truth?: number) => Interval | false {
  const [terms, cells] = (machine.program ??= readProgram(machine.bytes));
  const moves: boolean[] = []; // by term: whether it follows from a range, or is one
  const whole: boolean[] = []; // by term: whether it is a whole number
  const ranged: number[] = []; // the terms that read a range
  const value: Interval[] = [];
  terms.forEach(([op, takes, number], i) => {
    const input = op === LOAD && !takes.length;
    if (input) {
      value[i] = [low[number], high[number]];
    } else {
      makeJudge(terms, machine.cells, whole, value, [], [i], []).pass([]);
    }
    moves[i] = input ? !single(value[i]) : takes.some((from) => moves[from]);
    if (input && moves[i]) {
      ranged.push(i);
    }
    whole[i] = isStep(op) || (op === LITERAL && number === Math.trunc(number))
      || (op === SELECT && whole[takes[1]] && whole[takes[2]]);
  });
  /** Whether a term takes every value between two that it takes. */
  const smooth = (i: number): boolean => {
    const [op, [asked]] = terms[i];
    return single(value[i]) || !(isStep(op) || value[i][0] === -Infinity || (op === SELECT && !single(value[asked])));
  };
  const told: Trend[][] = []; // by term
  for (const [of, from, up] of trends) {
    const term = cells.get(of)!;
    told[term] = [...(told[term] ?? []), [term, cells.get(from)!, up]];
  }
  const known = new Map<number, Interval>();

  /** What a query needs to be worked: the terms that are set, and those from there to what is asked. */
  const plan = (of: number, where: number): [sides: number[], order: number[]] => {
    const all: number[] = []; // each after those that it takes
    const visit = (i: number) => {
      if (moves[i] && !all.includes(i)) {
        terms[i][1].forEach(visit);
        all.push(i);
      }
    };
    visit(of);
    visit(where);
    const wanted = new Set(all);
    const set = new Set(ranged);
    for (const i of [...all].reverse()) {
      if (wanted.has(i) && i !== of && i !== where) {
        // Where several ranges reach the query through one value alone, that value is set instead of them.
        const above = new Set([i]);
        for (const other of [...all].reverse()) {
          if (above.has(other)) {
            terms[other][1].forEach((from) => above.add(from));
          }
        }
        const alone = all.every(
          (other) => above.has(other) || terms[other][1].every((from) => from === i || !moves[from] || !above.has(from)),
        );
        const cuts = ([of, from]: Trend) => from !== i && above.has(from) && !above.has(of);
        if (alone && !told.flat().some(cuts) && [...above].every(smooth) && !above.has(of) && !above.has(where) && ranged.filter((range) => above.has(range)).length > 1) {
          above.forEach((other) => wanted.delete(other));
          wanted.add(i);
          set.add(i);
        }
      }
    }
    const left = all.filter((i) => wanted.has(i));
    return [left.filter((i) => set.has(i)), left.filter((i) => !set.has(i))];
  };

  const query = (of: number, where = 0, found = false): Interval => {
    if (where && single(value[where])) {
      if (!value[where][0]) {
        return FLAT;
      }
      where = 0;
    }
    let ends = where ? undefined : single(value[of]) ? value[of] : known.get(of);
    if (!ends) {
      const [sides, order] = plan(of, where);
      const box = sides.map((i) => (ranged.includes(i) ? value[i] : query(i)));
      const [least, most] = [false, true].map((up) => {
        return search(
          makeJudge(terms, machine.cells, whole, [...value], sides, order, told), order.length * (2 + sides.length), box,
          !where && isTruth(terms[of][0]), of, where, found, up,
        );
      });
      ends = most === undefined ? FLAT : [least!, most];
      if (!where) {
        known.set(of, ends);
      }
    }
    return ends;
  };

  return (cell, truth) => {
    const term = (cell: number | undefined) => cells.get(cell!) || 0;
    let of = term(cell);
    const own = term(guards.get(cell));
    const where = truth ? term(truth) : own;
    if (!moves[of] && !moves[where]) {
      return false;
    }
    const [op, takes] = terms[of];
    if (op === SELECT && takes[0] === own) {
      of = takes[2]; // the value itself, and not the nothing that stands for one that is left out
    }
    return query(of, where, !!truth);
  };
};
