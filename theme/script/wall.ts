// The leader's page: exercises for the wall, and a tally of what the room answers. That page alone loads it, in the place
// of practice.ts.

import { all, hide, mark, numberIn } from "./element";
import { makeClock } from "./clock";
import type { Page } from "./page";
import { makeRound } from "./round";
import { mountTally } from "./tally";

/** What each key does: so many lines on, or so many exercises on. */
const KEYS: Record<string, [lines: number, exercises: number]> = {
  " ": [1, 0],
  ArrowRight: [1, 0],
  PageDown: [1, 0],
  ArrowLeft: [-1, 0],
  PageUp: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

globalThis.comePractice = (page) => {
  mountWall(page);
  mountTally(page);
};

/** Mounts the view for the wall: one exercise at a time, and its work a line at a time. */
function mountWall(page: Page): void {
  const wall = document.querySelector<HTMLElement>(".wall")!;
  const one = <E extends Element = HTMLElement>(selector: string) => wall.querySelector<E>(selector)!;
  const slides = all(".slide", wall);
  const rounds = slides.map((slide) => makeRound(slide, page, () => {}));
  const card = one<HTMLInputElement>("#wall-card");
  const clock = makeClock(one(".clock"), slides.map((slide) => numberIn(slide, "data-minutes") || 0));
  const cards = slides.map(() => 1);
  let at = 0;
  let shown = 0; // lines of the work
  let open = false;

  /** The lines of the work that hold for the card, and then the answers. */
  const steps = () => all<Element>(".work li:not([hidden]), .found", slides[at]);

  const show = (): void => {
    document.documentElement.classList.toggle("walled", open);
    hide(one(".bar"), !open);
    slides.forEach((slide, i) => hide(slide, open && i !== at));
    all<Element>(".later", wall).forEach((line) => mark(line, "later", false));
    if (open) {
      steps().forEach((line, i) => mark(line, "later", i >= shown));
      steps()[shown - 1]?.scrollIntoView({ block: "nearest" });
    }
    card.value = "" + cards[at]!;
    clock(open, at);
  };

  const move = (lines: number, exercises: number): void => {
    const to = at + (exercises || (shown + lines > steps().length ? 1 : shown + lines < 0 ? -1 : 0));
    if (to === at) {
      shown += lines;
    } else if (slides[to]) {
      at = to;
      shown = lines < 0 ? steps().length : 0; // back from the first line is the end of the exercise before
    }
    show();
    if (!shown) {
      scrollTo(0, 0);
    }
  };

  const turn = (on: boolean): void => {
    open = on;
    shown = 0;
    show();
    scrollTo(0, 0);
    one(on ? ".next" : ".show").focus();
  };

  rounds.forEach((round) => round.deal(1));
  card.addEventListener("change", () => {
    cards[at] = rounds[at]!.deal(card.valueAsNumber);
    shown = 0;
    show();
  });
  one(".show").onclick = () => turn(true);
  one(".close").onclick = () => turn(false);
  one(".next").onclick = () => move(1, 0);
  one(".back").onclick = () => move(-1, 0);
  slides.forEach((slide) => (slide.onclick = () => open && !getSelection()?.toString() && move(1, 0)));
  document.addEventListener("keydown", (event) => {
    const from = event.target as Element;
    const key = KEYS[event.key];
    if (!open || event.altKey || event.ctrlKey || event.metaKey || from.closest("input, select")) {
      return;
    }
    if (event.key === "Escape") {
      turn(false);
    } else if (key && !(event.key === " " && from.closest("button"))) {
      event.preventDefault();
      move(...key);
    }
  });
}
