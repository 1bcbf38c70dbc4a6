import { bindAnswer, type Answer } from "./answer";
import { putCard, showKeys } from "./card";
import { all, numberIn } from "./element";
import { fill } from "./field";
import { makeLine } from "./lines";
import { markOf } from "./marks";
import type { Page } from "./page";
import { mountPart } from "./part";
import type { Asked } from "./spread";
import { readBy } from "./works";

/** An exercise as the leader's page shows it: with the numbers of any card, and the answers that were heard for it. */
export interface Round {
  readonly element: HTMLElement;
  readonly cards: number; // how many there are
  readonly answers: Answer[];
  /** Shows a card, with the marks of its answers; a number that is no card is the first. Gives the card. */
  deal(card: number): number;
}

/** Mounts it. Check is called when a field of an answer asks for a mark. */
export function makeRound(element: HTMLElement, page: Page, check: (answer: Answer) => void): Round {
  const exercise = page.data.exercises[numberIn(element, "data-exercise")]!;
  const { ends } = page.works;
  const asked = [...exercise.asks.map(([at]): Asked => [at, at]), ...readBy(page.data, page.works)];
  const typed = new Set(exercise.picks.flatMap(({ cells }) => cells));
  const parts = all("[data-sheet]", element).map((part) => mountPart(part, page));
  const lines = all<Element>(".work li", element).map((line) => makeLine(line, typed, ends));
  const answers = all("li[data-asked]", element).map((part) => bindAnswer(part, check));
  const heardOf = (ask: number) => answers.find((answer) => numberIn(answer.element, "data-asked") === ask)?.heard;

  const deal = (number: number): number => {
    const card = Number.isInteger(number) && number >= 1 && number <= exercise.cards ? number : 1;
    putCard(element, exercise, card, ends);
    page.works.work(asked);
    exercise.asks.forEach(([at, , cell], ask) => fill(ends, cell, heardOf(ask)?.[0] ?? ends.low[at]!));
    page.works.work(asked);
    exercise.sheets.forEach((sheet) => (page.sheets[sheet]!.fresh = true));
    parts.forEach((part) => part.update());
    lines.forEach((line) => line());
    showKeys(element, exercise, ends);
    answers.forEach((answer) => answer.show((heard) => markOf(exercise.asks[numberIn(answer.element, "data-asked")]!, heard, page)));
    return card;
  };

  return { element, cards: exercise.cards, answers, deal };
}
