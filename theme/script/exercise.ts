import { bindAnswer, type Answer } from "./answer";
import { all, hide, numberIn } from "./element";
import { fill } from "./field";
import { makeLine } from "./lines";
import { text } from "./number";
import type { Page } from "./page";
import { mountPart } from "./part";
import type { Varying } from "./wire";
import { readBy } from "./works";

/** An exercise on the page. */
export interface Exercise {
  element: HTMLElement;
  /** Shows a card. */
  deal(card: number): void;
}

/** The place of the value that each given has on a card, as practice.Deal.Picks has it. */
export function picksOf({ deal: [offset, stride, of], picks }: Varying, card: number): number[] {
  let place = (offset + stride * card) % of;
  return picks.map(({ values }) => {
    const pick = place % values.length;
    place = Math.floor(place / values.length);
    return pick;
  });
}

/** Mounts an exercise. A learner chooses a card, and each answer is marked when they ask for that. */
export function mountExercise(element: HTMLElement, exercise: Varying, page: Page): Exercise {
  const { ends } = page.works;
  const asked = readBy(page.data, page.works);
  const typed = new Set(exercise.picks.flatMap(({ cells }) => cells));
  const parts = all("[data-sheet]", element).map((part) => mountPart(part, page));
  const lines = all<Element>(".work li", element).map((line) => makeLine(line, typed, ends));
  const number = element.querySelector<HTMLInputElement>(".card input")!;
  const spoken = element.querySelector("[role=status]")!;
  const hint = element.querySelector(".hint");
  const solution = element.querySelector(".solution");
  let tries = 0; // on this card, that did not come right

  const fillAnswers = (right: boolean) =>
    exercise.asks.forEach(([at, , answer, bare, told], i) => {
      const heard = answers[i]!.heard;
      const [value, plain, unit] = right || !heard ? [ends.low[at]!, ends.low[at]!, 1] : heard;
      [[answer, value], [bare, plain], [told, unit]].forEach(([cell, number]) => fill(ends, cell!, number!));
    });

  /** Works the card: first what is right, then the answers, where one that was not given counts as right. */
  const work = (): void => {
    page.works.work(asked);
    fillAnswers(false);
    page.works.work(asked);
    exercise.sheets.forEach((sheet) => (page.sheets[sheet].fresh = true));
    parts.forEach((part) => part.update());
    lines.forEach((line) => line());
    all(".key", element).forEach((key) => {
      const [at, digits] = exercise.asks[numberIn(key.closest("[data-asked]")!, "data-asked")]!;
      key.textContent = key.textContent!.replace(/^(\$?)[-\d.,–]+/, (_, money: string) => money + text(ends.low[at]!, 0, digits));
    });
  };

  const answers: Answer[] = all("li[data-asked]", element).map((part) =>
    bindAnswer(part, (said, right) => {
      work();
      tries += right() ? 0 : 1;
      hint?.toggleAttribute("open", tries > 0);
      hide(solution, tries < 2 && !answers.every((answer) => answer.heard && answer.right()));
      spoken.textContent = said();
    }),
  );

  const deal = (card: number): void => {
    const last = exercise.cards;
    const shown = Number.isInteger(card) && card >= 1 && card <= last ? card : 1;
    number.value = "" + shown;
    picksOf(exercise, shown).forEach((pick, i) => {
      const { cells, values, names } = exercise.picks[i]!;
      cells.forEach((cell) => fill(ends, cell, values[pick]!));
      all(`[data-picked="${i}"]`, element).forEach((given) => (given.textContent = names[pick]!));
    });
    tries = 0;
    answers.forEach((answer) => answer.clear());
    hint?.removeAttribute("open");
    hide(solution, true);
    work();
  };

  number.readOnly = false;
  number.addEventListener("change", () => deal(number.valueAsNumber));
  element.querySelector<HTMLElement>(".card button")!.onclick = () => deal((number.valueAsNumber % exercise.cards) + 1);
  deal(1);
  return { element, deal };
}
