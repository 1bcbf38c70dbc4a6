// The page of a course: where to go on, what comes back today, what is done of each lesson, and the record.

import { again } from "./again";
import { UNFINISHED } from "./code";
import { filled, word } from "./data";
import { all } from "./element";
import { fillIn, linked } from "./fillin";
import { today } from "./progress";
import { mountRecord } from "./recordpart";
import { openStore } from "./store";
import { cardsOf, sumOf, sumText, type Sum } from "./sum";
import type { Syllabus } from "./wire";

export function mountCourse(course: Syllabus): void {
  const store = openStore("./");
  const section = document.querySelector(".lessons")!;
  const start = section.querySelector(".start")!;
  const due = section.querySelector<HTMLElement>(".again")!;
  const items = all(":scope > ol > li", section);
  const links = items.map((item) => item.querySelector("a")!);
  const lines = items.map((item) => {
    const line = document.createElement("p");
    line.className = "told";
    item.append(line);
    return line;
  });
  const wayOf = (lesson: number) => links[lesson]!.getAttribute("href")!;
  const begin = [...start.childNodes];

  const showStart = (sums: Sum[]): void => {
    const next = nextOf(sums);
    if (sums.every(({ opened }) => opened === undefined)) {
      start.replaceChildren(...begin);
    } else if (next < 0) {
      start.textContent = word("all-done");
    } else {
      fillIn(start, "go-on", { lesson: linked(wayOf(next), links[next]!.textContent!) });
    }
  };

  const show = (): void => {
    const progress = store.read();
    const sums = course.lessons.map((lesson) => sumOf(progress, lesson));
    showStart(sums);
    const back = course.lessons.flatMap(({ name, exercises }, i) =>
      exercises.flatMap((exercise) => {
        const one = again(cardsOf(progress, name, exercise), exercise.cards, today());
        if (!one || one.days) {
          return [];
        }
        const item = document.createElement("li");
        const label = filled("due-card", { exercise: exercise.title, card: "" + one.card });
        item.append(linked(`${wayOf(i)}#card-${exercise.name}-${one.card}`, label), ` ${links[i]!.textContent!}`);
        return item;
      }),
    );
    due.querySelector("ul")!.replaceChildren(...back);
    due.hidden = !back.length;
    lines.forEach((line, i) => (line.textContent = sumText(sums[i]!, course.lessons[i]!)));
    record(sums);
  };

  const record = mountRecord(
    course,
    links.map(({ textContent }) => textContent!),
    store,
    () => show(),
  );
  addEventListener("storage", show);
  addEventListener("pageshow", show);
  show();
}

/** The lesson to go on with: one that was begun, or else the next behind those that are finished; -1 for none. */
function nextOf(sums: Sum[]): number {
  const left = sums.flatMap(({ day }, i) => (day === UNFINISHED ? [i] : []));
  const last = sums.map(({ day }) => day !== UNFINISHED).lastIndexOf(true);
  return left.find((i) => sums[i]!.asked) ?? left.find((i) => i > last) ?? left[0] ?? -1;
}
