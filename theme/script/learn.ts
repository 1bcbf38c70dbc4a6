// A lesson: what was done on its cards is kept, and told again when the learner comes back.

import type { Came } from "./answer";
import { again } from "./again";
import { filled, word } from "./data";
import { all } from "./element";
import { ALONE, BUT_LAST } from "./face";
import { fillIn, linked } from "./fillin";
import { keepCard, readCard } from "./keptcard";
import { picked } from "./pick";
import { cardOf, clip, isFinished, lessonOf, today, type Card } from "./progress";
import { openStore } from "./store";
import { cardsOf, dayText, sumOf, sumText } from "./sum";
import type { Check, CourseLesson } from "./wire";

const SHOWN = 3; // cards that are told of

/** An answer that was marked: its exercise, the card, the part of the exercise, and how it came out. */
export type Mark = [exercise: HTMLElement, card: number, part: HTMLElement, came: Came | null];

declare global {
  /** Takes the marks of a page. Until a lesson does, they wait in a list. */
  var marks: { push(mark: Mark): unknown } | undefined;
}

/** An exercise of the page. */
interface Own {
  element: HTMLElement;
  check: Check;
  asked: HTMLElement[]; // what a card asks, without the steps
  told: HTMLElement; // what was kept
}

/** Mounts a lesson, whose own line is at its top. */
export function mountLesson(line: HTMLElement): void {
  const store = openStore(line.getAttribute("data-course")!);
  const name = line.getAttribute("data-lesson")!;
  const exercises = all("[data-exercise]").map(findExercise);
  const lesson: CourseLesson = { name, exercises: exercises.map(({ check }) => check) };

  /** Changes what is kept of a card, unless all of it came right before. */
  const change = ({ check }: Own, card: number, how: (card: Card) => void): void => {
    if (Number.isInteger(card) && card >= 1 && card <= check.cards) {
      store.change((progress) => {
        const one = cardOf(lessonOf(progress, name), check.name, card, check);
        if (!isFinished(one)) {
          one.day = today();
          how(one);
        }
      });
      show();
    }
  };
  const ownOf = (target: Element) => exercises.find(({ element }) => element.contains(target));
  const help = (target: Element): void => {
    const own = ownOf(target);
    if (own) {
      change(own, cardField(own.element).valueAsNumber, (card) => (card.helped = true));
    }
  };

  const take = ([element, number, part, came]: Mark): void => {
    const own = ownOf(element)!;
    const at = own.asked.indexOf(part);
    if (at < 0 || came === "unread") {
      return;
    }
    change(own, number, (card) => {
      card.helped ||= faceOf(element) <= BUT_LAST;
      const one = card.answers[at]!;
      if (!one.right) {
        one.right = came === "right";
        one.first ||= !one.tries && !card.helped && (one.right || !!part.querySelector(".carried:not([hidden])"));
        one.tries++;
        one.answer = clip(part.matches(".pick") ? picked(part) : part.querySelector("input")!.value);
        one.in = clip(part.querySelector<HTMLSelectElement>(".entry select")?.value ?? "");
      }
    });
  };

  const show = (): void => {
    const progress = store.read();
    const why = store.why();
    line.textContent = why ? word(why) : `${sumText(sumOf(progress, lesson), lesson)} ${word("stays")}`.trim();
    line.hidden = false;
    exercises.forEach(({ check, told }) => {
      const cards = cardsOf(progress, name, check);
      const back = again(cards, check.cards, today());
      told.replaceChildren(...cards.slice(-SHOWN).map((card) => paragraph(cardText(card))));
      if (back) {
        const sentence = back.days ? paragraph(filled("back-on", { date: dayText(today() + back.days) })) : document.createElement("p");
        if (!back.days) {
          const label = filled("card-of", { card: "" + back.card });
          fillIn(sentence, "back-today", { card: linked(`#card-${check.name}-${back.card}`, label) });
        }
        told.append(sentence);
      }
    });
  };

  store.change((progress) => lessonOf(progress, name));
  exercises.forEach((own) => bringBack(own, cardsOf(store.read(), name, own.check).pop()));
  const early = globalThis.marks;
  globalThis.marks = { push: take };
  if (Array.isArray(early)) {
    (early as Mark[]).forEach(take);
  }
  addEventListener("click", ({ target }) => {
    const fold = (target as Element).closest(".exercise summary")?.parentElement as HTMLDetailsElement | undefined;
    if (fold && !fold.open) {
      help(fold);
    }
  });
  addEventListener("change", ({ target }) => {
    const list = target as HTMLSelectElement;
    if (list.matches(".face") && list.selectedIndex <= BUT_LAST) {
      help(list);
    }
  });
  addEventListener("storage", show);
  addEventListener("pageshow", show);
  show();
}

const cardField = (element: HTMLElement) => element.querySelector<HTMLInputElement>(".card input")!;
const faceOf = (element: HTMLElement) => element.querySelector<HTMLSelectElement>(".face")!.selectedIndex;

function findExercise(element: HTMLElement): Own {
  const asked = all("li[data-asked]:not(.step)", element);
  const told = document.createElement("div");
  told.className = "told";
  element.append(told);
  return {
    element,
    asked,
    told,
    check: {
      name: element.id.replace("exercise-", ""),
      title: element.querySelector("h2")!.textContent!,
      asks: asked.length,
      cards: +cardField(element).max,
    },
  };
}

/** What a card came to. */
function cardText(card: Card): string {
  const { answers } = card;
  const open = answers.filter(({ right }) => !right).length;
  return filled(open ? "on-card-open" : "on-card", {
    card: "" + card.card,
    right: "" + answers.filter(({ first }) => first).length,
    all: "" + answers.length,
    open: "" + open,
  });
}

function paragraph(text: string): HTMLElement {
  const element = document.createElement("p");
  element.textContent = text;
  return element;
}

/** Has the exercise begin with the card that was worked last, unless this tab knows better. */
function bringBack({ element, asked, check }: Own, card: Card | undefined): void {
  const steps = all("li[data-asked]", element);
  if (!card || readCard(element.id, steps.length, check.cards)) {
    return;
  }
  const tries = card.answers.reduce((all, part) => all + part.tries - +part.right, 0);
  keepCard(element.id, {
    face: ALONE,
    right: 0,
    wrong: isMissedTry(card),
    card: card.card,
    tries,
    answers: steps.map((step) => {
      const part = card.answers[asked.indexOf(step)];
      const units = [...(step.querySelector<HTMLSelectElement>(".entry select")?.options ?? [])];
      const unit = Math.max(0, units.findIndex(({ value }) => part && value === part.in));
      return [part?.answer ?? "", unit, !!part?.tries];
    }),
  });
}

/** Whether the next card shows more of the work. */
const isMissedTry = ({ answers }: Card): boolean => answers.some(({ tries, right }) => tries > +right);
