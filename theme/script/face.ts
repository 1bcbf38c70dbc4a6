// How much of the work of an exercise is shown: all of it, all but the last step, the names of the steps, or none.

import { all, hide } from "./element";

export const WHOLE = 0;
export const BUT_LAST = 1;
export const NAMES = 2;
export const ALONE = 3;

const ENOUGH = 2; // steps in a row that come right lead to less of the work

/** How a learner gets on: what the next card shows follows from it. */
export interface Pace {
  face: number;
  right: number; // steps in a row that came right
  wrong: boolean; // a step of this card did not
}

/** The face of the next card. A card that is worked whole has nothing to answer, and the next one leaves a step out. */
export function nextFace({ face, right, wrong }: Pace): number {
  return wrong ? Math.max(face - 1, WHOLE) : face < ALONE && (right >= ENOUGH || face === WHOLE) ? face + 1 : face;
}

/** Gives the function that shows a face; open says that all of the work may be seen. */
export function makeFaces(element: HTMLElement): (face: number, open: boolean) => void {
  const steps = all("li[data-asked]", element);
  const last = steps.filter((step) => !step.matches(".step, .pick")).pop();
  const solution = element.querySelector<HTMLDetailsElement>(".solution")!;
  return (face, open) => {
    const whole = open || face === WHOLE;
    hide(element.querySelector(".asks"), face === WHOLE);
    steps.forEach((step) => hide(step, face === BUT_LAST ? step !== last && !step.matches(".pick") : face === ALONE && step.matches(".step")));
    all("dl, .last", solution).forEach((part) => hide(part, !whole));
    hide(solution, !whole && face !== BUT_LAST);
  };
}
