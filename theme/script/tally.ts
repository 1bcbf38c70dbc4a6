import type { Answer } from "./answer";
import { bindCounts } from "./counts";
import { filled, word } from "./data";
import { all, hide, numberIn } from "./element";
import type { Page } from "./page";
import { makeRound } from "./round";

/** Mounts the tally: answers that are heard in the room are marked, counted, and kept on the device alone. */
export function mountTally(page: Page): void {
  const tally = document.querySelector<HTMLElement>(".tally")!;
  const choice = tally.querySelector<HTMLSelectElement>("#tally-exercise")!;
  const card = tally.querySelector<HTMLInputElement>("#tally-card")!;
  const last = tally.querySelector(".last")!;
  const boxes = all(".heard", tally);
  const rounds = boxes.map((box, exercise) => makeRound(box, page, (answer) => check(exercise, answer)));
  const counts = bindCounts(tally, boxes, () => choice.selectedIndex);

  /** Empties the fields for the next card. What nobody names has the unit that is asked for. */
  const begin = (): void => {
    const round = rounds[choice.selectedIndex]!;
    round.answers.forEach((answer) => {
      answer.clear();
      const units = answer.element.querySelector<HTMLSelectElement>(".entry select");
      if (units) {
        units.selectedIndex = [...units.options].findIndex((unit) => unit.getAttribute("data-fits"));
      }
    });
    card.value = "" + round.deal(card.valueAsNumber);
    boxes.forEach((box, i) => hide(box, i !== choice.selectedIndex));
  };

  const check = (exercise: number, answer: Answer): void => {
    const round = rounds[exercise]!;
    const number = round.deal(card.valueAsNumber);
    answer.hear();
    round.deal(number);
    last.textContent = filled("heard-of", { card: "" + number, text: answer.said() });
    if (answer.came() === "unread") {
      return;
    }
    const sentences = all(".mark > *", answer.element).flatMap((one, i) => (one.hidden ? [] : [i]));
    counts.add({ exercise, ask: numberIn(answer.element, "data-asked"), right: answer.came() === "right", sentences });
    const next = round.answers[round.answers.indexOf(answer) + 1];
    if (!next) {
      card.value = "" + ((number % round.cards) + 1);
      begin();
    }
    (next ?? round.answers[0]!).element.querySelector<HTMLElement>("input, select")!.focus();
  };

  all("li[data-asked] button", tally).forEach((button) => (button.textContent = word("count")));
  choice.addEventListener("change", () => {
    begin();
    counts.show();
  });
  card.addEventListener("change", begin);
  begin();
  counts.show();
}
