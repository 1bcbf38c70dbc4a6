import { bindAnswer, type Answer } from "./answer";
import { putCard, showKeys } from "./card";
import { all, hide } from "./element";
import { ALONE, BUT_LAST, makeFaces, nextFace, WHOLE, type Pace } from "./face";
import { fill } from "./field";
import { makeLine } from "./lines";
import { keepCard, readCard } from "./keptcard";
import type { Mark } from "./learn";
import type { Page } from "./page";
import { markOf } from "./marks";
import { mountPart } from "./part";
import type { Asked } from "./spread";
import type { Varying } from "./wire";
import { readBy } from "./works";

/** An exercise on the page. */
export interface Exercise {
  element: HTMLElement;
  /** Shows a card. */
  deal(card: number): void;
}

/** Mounts an exercise. A learner chooses a card, and each answer is marked when they ask for that. */
export function mountExercise(element: HTMLElement, exercise: Varying, page: Page): Exercise {
  const { ends } = page.works;
  const right = exercise.asks.map(([at]): Asked => [at, at]);
  const asked = [...right, ...readBy(page.data, page.works)];
  const typed = new Set(exercise.picks.flatMap(({ cells }) => cells));
  const parts = all("[data-sheet]", element).map((part) => mountPart(part, page));
  const lines = all<Element>(".work li", element).map((line) => makeLine(line, typed, ends));
  const one = <E extends Element = HTMLElement>(selector: string) => element.querySelector<E>(selector)!;
  const number = one<HTMLInputElement>(".card input");
  const faces = one<HTMLSelectElement>(".face");
  const spoken = one("[role=status]");
  const [more, less] = all(".led", element);
  const noCard = one(".no-card");
  const solution = one<HTMLDetailsElement>(".solution");
  const showFace = makeFaces(element);
  let card = 1;
  let tries = 0;
  const pace: Pace = { face: ALONE, right: 0, wrong: false };

  /** Works the card: first what is right, then the answers, where one that was not given counts as right. */
  const work = (): void => {
    page.works.work(right);
    exercise.asks.forEach(([at, , cell], i) => fill(ends, cell, answers[i]!.heard?.[0] ?? ends.low[at]!));
    page.works.work(asked);
    exercise.sheets.forEach((sheet) => (page.sheets[sheet]!.fresh = true));
    parts.forEach((part) => part.update());
    lines.forEach((line) => line());
    showKeys(element, exercise, ends);
    answers.forEach((answer, i) => answer.show((heard) => markOf(exercise.asks[i]!, heard, page)));
  };

  const show = (): void => {
    const due = answers.filter((answer) => !answer.element.hidden);
    showFace(pace.face, tries > 1 || (pace.face !== WHOLE && due.every((answer) => answer.came() === "right")));
  };

  const keep = (): void =>
    keepCard(element.id, { ...pace, card, tries, answers: answers.map((answer) => answer.kept()) });

  const check = (answer: Answer): void => {
    answer.hear();
    work();
    const came = answer.came();
    if (came === "right") {
      pace.right++;
    } else if (came === "wrong") {
      pace.right = 0;
      pace.wrong = true;
      tries++;
      one(".hint")?.setAttribute("open", "");
      solution.open ||= tries > 1;
    }
    show();
    spoken.textContent = answer.said();
    keep();
    (globalThis.marks ??= [] as Mark[]).push([element, card, answer.element, came]);
  };

  const answers: Answer[] = all("li[data-asked]", element).map((part) => bindAnswer(part, check));

  /** Says that there is no such card, or takes that back. */
  const refuse = (none: boolean): void => {
    hide(noCard, !none);
    number.toggleAttribute("aria-invalid", none);
    spoken.textContent = none ? noCard.textContent : "";
  };

  /** Puts the numbers of the card into the page. */
  const put = (): void => {
    number.value = "" + card;
    faces.selectedIndex = pace.face;
    putCard(element, exercise, card, ends);
    work();
    solution.open = pace.face < 2 || tries > 1;
    show();
  };

  const clear = (): void => {
    tries = 0;
    pace.wrong = false;
    answers.forEach((answer) => answer.clear());
    one(".hint")?.removeAttribute("open");
    [more, less].forEach((led) => hide(led!, true));
    refuse(false);
  };

  const deal = (wanted: number): void => {
    if (!(Number.isInteger(wanted) && wanted >= 1 && wanted <= exercise.cards)) {
      refuse(true);
      return;
    }
    card = wanted;
    clear();
    put();
    keep();
  };

  /** The next card, which shows more of the work or less, as this one came out. */
  const next = (): void => {
    const face = nextFace(pace);
    const led = pace.wrong && face < pace.face ? more : pace.right > 1 && face > pace.face ? less : null;
    if (face !== pace.face) {
      pace.right = 0;
    }
    pace.face = face;
    deal((card % exercise.cards) + 1);
    if (led) {
      hide(led, false);
      spoken.textContent = led.textContent;
    }
  };

  number.readOnly = false;
  number.addEventListener("change", () => deal(number.valueAsNumber));
  one(".card button").onclick = next;
  faces.onchange = () => {
    Object.assign(pace, { face: faces.selectedIndex, right: 0, wrong: false });
    solution.open = pace.face <= BUT_LAST;
    show();
    keep();
  };
  element.addEventListener("input", keep);

  const kept = readCard(element.id, answers.length, exercise.cards);
  if (kept) {
    ({ card, tries } = kept);
    Object.assign(pace, { face: kept.face, right: kept.right, wrong: kept.wrong });
    answers.forEach((answer, i) => answer.enter(kept.answers[i]!));
    one(".hint")?.toggleAttribute("open", tries > 0);
  }
  put();
  return {
    element,
    deal(wanted) {
      if (wanted !== card) {
        deal(wanted);
      }
    },
  };
}
