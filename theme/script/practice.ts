// Makes the exercises of a page live: the numbers of any card, and marks for the answers that a learner gives. A page
// without exercises does not load it.

import { mountExercise, type Exercise } from "./exercise";
import { all } from "./element";
import type { Page } from "./page";

declare global {
  /** Adds it to a page that is live. */
  var comePractice: ((page: Page) => unknown) | undefined;
}

/** The fragment that opens a card: #card-soil-7 is card 7 of the exercise soil. */
const CARD = /^#card-(.+)-(\d+)$/;

globalThis.comePractice = async (page) => {
  const exercises: Exercise[] = [];
  for (const [index, element] of all("[data-exercise]").entries()) {
    index && (await new Promise((then) => setTimeout(then))); // so that the page answers between two of them
    exercises.push(mountExercise(element, page.data.exercises[index]!, page));
  }
  const open = () => {
    const [, name, card] = CARD.exec(location.hash) ?? [];
    const at = exercises.find(({ element }) => element.id === "exercise-" + name);
    if (at) {
      at.deal(+card!);
      at.element.scrollIntoView();
    }
  };
  addEventListener("hashchange", open);
  open();
};
