// What calc/sheet/search.go does: looks for one end of a query by halving.

import { FLAT, both, negated, only, product, single, type Interval } from "./interval";
import type { Judge } from "./judge";
import { DOUBT } from "./spread";

const WORK = 2 ** 15;
const NEAR = 2 ** -30;
const EDGE = 2 ** -6;

/** The end, on one side, of the value of a term where the truth of a term, if any, holds; undefined if that is nowhere. */
export function search(
  { sides, value, pass, slopes, assume }: Judge, cost: number, whole: Interval[], truth: boolean, of: number, where: number, found: boolean, up: boolean,
): number | undefined {
  let best = truth ? +up - 1 : -Infinity; // a truth is never, or always, so, unless it is found not to be
  let beyond = -Infinity;
  let size = 0;
  const within = (reach: number) => reach <= Math.max(best, beyond) + size * NEAR;
  const holds = () => (where ? value[where] : only(1));
  const far = () => (up ? value[of][1] : -value[of][0]);
  const queue: [box: Interval[], reach: number][] = [[whole, Infinity]];

  const settle = (box: Interval[], reach: number): void => {
    pass(box, true);
    const turns = holds()[0] ? box.map(() => FLAT) : slopes(where); // the slopes of the truth, where it is not settled
    let own = slopes(of);
    const [never, ever] = truth ? value[of] : holds();
    if (never !== ever) {
      // What is asked for is looked for only where it can be.
      const limits = assume(where || of, !truth || up);
      box = box.map((side, n) => both(side, limits[sides[n]]));
      if (box.some(([low, high]) => low > high) || !pass(box, true, limits)) {
        return;
      }
      own = truth ? own : slopes(of);
    }
    reach = Math.min(reach, far());
    if ((!truth && !ever) || within(reach)) {
      return;
    }
    let cut = -1;
    let most = 0;
    let spread = 0;
    let open = false;
    box = box.map((side, n) => {
      const [low, high] = side;
      const [p, g] = [up ? own[n] : negated(own[n]), turns[n]];
      if (single(side)) {
        return side;
      }
      if (p[0] >= 0 && g[0] >= 0) {
        return only(high);
      }
      if (p[1] <= 0 && g[1] <= 0) {
        return only(low);
      }
      open = true;
      const width = high - low;
      spread += product(Math.max(-p[0], p[1]), width / 2);
      const weight = width / (whole[n][1] - whole[n][0]);
      const middle = low + width / 2;
      if (weight > most && low < middle && middle < high) {
        cut = n;
        most = weight;
      }
      return side;
    });
    const middles = box.map(([low, high]) => low + (high - low) / 2);
    pass(middles.map(only));
    const there = holds();
    if (there[1]) {
      const at = far();
      if (there[0]) {
        best = Math.max(best, at);
      } else {
        beyond = Math.max(beyond, at);
      }
      size = Math.max(size, isFinite(at) ? Math.abs(at) : 0);
      reach = Math.min(reach, at + spread);
    }
    if (!open || within(reach)) {
      return;
    }
    if (cut < 0) {
      beyond = Math.max(beyond, reach);
      return;
    }
    for (const half of [[box[cut][0], middles[cut]], [middles[cut], box[cut][1]]] as const) {
      queue.push([box.map((side, n) => (n === cut ? half : side)), reach]);
    }
  };

  let next = 0;
  for (let work = 0; next < queue.length && work < WORK; work += cost) {
    const [box, reach] = queue[next++];
    if (!within(reach)) {
      settle(box, reach);
    }
  }
  for (const [, reach] of queue.slice(next)) {
    beyond = within(reach) ? beyond : Math.max(beyond, reach);
  }
  let end = best;
  if (beyond > end && (!(found && best > -Infinity) || beyond - end <= size * EDGE)) {
    end = truth && beyond === 1 ? DOUBT : beyond;
  }
  if (Math.abs(end) < size * NEAR * 64) {
    end = 0;
  }
  return end === -Infinity ? undefined : up ? end : 0 - end;
}
