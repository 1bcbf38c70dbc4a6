// What progress comes to, lesson by lesson.

import { UNFINISHED, type Done } from "./code";
import { filled } from "./data";
import { isFinished, type Card, type Progress } from "./progress";
import type { Check, CourseLesson } from "./wire";

/** The cards of an exercise that fit it as it is now. */
export const cardsOf = (progress: Progress, lesson: string, { name, asks }: Check): Card[] =>
  (progress.lessons[lesson]?.exercises[name] ?? []).filter(({ answers }) => answers.length === asks);

/** How far a lesson is. */
export interface Sum {
  opened: number | undefined; // the day
  day: number; // on which it was finished, or UNFINISHED
  through: number; // exercises of which a card came right
  right: number; // answers at the first try
  asked: number;
}

/**
 * Sums a lesson up. It is finished once a card of each exercise came right, on the day of the last of them; one without
 * exercises once it was opened.
 */
export function sumOf(progress: Progress, { name, exercises }: CourseLesson): Sum {
  const opened = progress.lessons[name]?.day;
  const cards = exercises.map((exercise) => cardsOf(progress, name, exercise));
  const days = cards.flatMap((of) => of.find(isFinished)?.day ?? []);
  const answered = cards.flat().flatMap(({ answers }) => answers.filter(({ tries }) => tries));
  return {
    opened,
    day: days.length < exercises.length ? UNFINISHED : exercises.length ? Math.max(...days) : (opened ?? UNFINISHED),
    through: days.length,
    right: answered.filter(({ first }) => first).length,
    asked: answered.length,
  };
}

/** A sum as a code has it. */
export const done = ({ day, right, asked }: Sum): Done => [day, right, asked - right];

/** A day in words. */
export const dayText = (day: number): string =>
  new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: "long", timeZone: "UTC" }).format(day * 864e5);

/** A score in words; "" where nothing was asked. */
export const score = (right: number, asked: number): string =>
  asked ? filled("score", { right: "" + right, all: "" + asked }) : "";

/** How far a lesson is, in words; "" for one that was not begun. */
export function sumText(sum: Sum, { exercises }: CourseLesson): string {
  const { opened, day, through, right, asked } = sum;
  if (day === UNFINISHED && !asked && !through) {
    return opened === undefined ? "" : filled("opened-on", { date: dayText(opened) });
  }
  const state =
    day === UNFINISHED
      ? filled("lesson-begun", { count: "" + through, all: "" + exercises.length })
      : filled(exercises.length ? "finished-on" : "opened-on", { date: dayText(day) });
  return `${state} ${score(right, asked)}`.trim();
}
