import { filled } from "./data";
import { hide } from "./element";

const MINUTE = 60_000; // milliseconds

/**
 * Makes the clock of the wall: the time of day and, once it was started, how far the exercises are and how much is left for
 * the one at hand. The function that it gives is told whether the wall is shown, and which exercise.
 */
export function makeClock(element: HTMLElement, minutes: number[]): (shown: boolean, at: number) => void {
  const time = element.querySelector(".now")!;
  const elapsed = element.querySelector(".elapsed")!;
  const start = element.querySelector<HTMLElement>(".start")!;
  const all = minutes.reduce((sum, more) => sum + more, 0);
  let began = 0;
  let at = 0;
  let ticking: number | undefined;

  const tick = (): void => {
    const now = new Date();
    time.textContent = now.toLocaleTimeString(document.documentElement.lang, { hour: "numeric", minute: "2-digit" });
    if (began) {
      const gone = Math.floor((now.getTime() - began) / MINUTE);
      const left = minutes.slice(0, at + 1).reduce((sum, more) => sum + more, 0) - gone;
      const rest = filled(left < 0 ? "over" : "left", { count: "" + Math.abs(left) });
      elapsed.textContent = `${filled("elapsed", { now: "" + gone, all: "" + all })}, ${rest}`;
    }
  };

  hide(start, !all);
  start.onclick = () => {
    began = Date.now();
    hide(start, true);
    tick();
  };
  return (shown, exercise) => {
    at = exercise;
    clearInterval(ticking);
    if (shown) {
      ticking = window.setInterval(tick, 1000);
      tick();
    }
  };
}
