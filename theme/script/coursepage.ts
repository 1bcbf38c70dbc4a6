// The page of a course: where to go on, what comes back today, what is done of each lesson, and the record.

import { again } from "./again";
import { UNFINISHED } from "./code";
import { filled, word } from "./data";
import { all } from "./element";
import { fillIn, linked } from "./fillin";
import { today } from "./progress";
import { mountRecord } from "./recordpart";
import { openStore } from "./store";
import { cardsOf, sumOf, sumText } from "./sum";
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
  const begin = [...start.childNodes];

  const showStart = (finished: boolean[], begun: boolean): void => {
    const next = finished.indexOf(false);
    if (!begun) {
      start.replaceChildren(...begin);
    } else if (next < 0) {
      start.textContent = word("all-done");
    } else {
      fillIn(start, "go-on", { lesson: linked(links[next]!.href, links[next]!.textContent!) });
    }
  };

  const show = (): void => {
    const progress = store.read();
    const sums = course.lessons.map((lesson) => sumOf(progress, lesson));
    showStart(
      sums.map(({ day }) => day !== UNFINISHED),
      sums.some(({ opened }) => opened !== undefined),
    );
    const back = course.lessons.flatMap(({ name, exercises }, i) =>
      exercises.flatMap((exercise) => {
        const one = again(cardsOf(progress, name, exercise), exercise.cards, today());
        if (!one || one.days) {
          return [];
        }
        const item = document.createElement("li");
        const label = filled("due-card", { exercise: exercise.title, card: "" + one.card });
        item.append(linked(`${links[i]!.href}#card-${exercise.name}-${one.card}`, label), ` ${links[i]!.textContent!}`);
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
