// What a learner did in a course: by lesson, exercise and card. What is read from elsewhere is looked through first.

import type { Check } from "./wire";

/** The form of what is kept. A page knows its own version alone. */
export const VERSION = 1;

const LONGEST = 60; // letters of an answer, or of a name
const MOST = 1000; // cards of an exercise
const MOST_DAY = 4e6; // some 11,000 years
const NAME = /^[a-z0-9][\w-]*$/;

/** One thing that a card asks. */
export interface Part {
  answer: string; // as it was typed last
  in: string; // the unit that was chosen for it
  tries: number;
  first: boolean; // it was right at the first try, without the hint and the work
  right: boolean;
}

/** A card that was worked at. */
export interface Card {
  card: number;
  day: number; // of the last mark, from January 1, 1970 on
  helped: boolean; // the hint or the work was asked for before all was right
  answers: Part[];
}

/** A lesson that was opened. */
export interface Lesson {
  day: number; // on which it was opened first
  exercises: Record<string, Card[]>; // in the order in which they were begun
}

export interface Progress {
  version: number;
  lessons: Record<string, Lesson>;
}

/** As much of a text as is kept. */
export const clip = (typed: string): string => typed.slice(0, LONGEST);

/** A list by name that has none yet: not even those that every object brings along. */
export const noNames = <T>(): Record<string, T> => Object.create(null) as Record<string, T>;

export const noProgress = (): Progress => ({ version: VERSION, lessons: noNames() });

/** Today, by the calendar of the device. The clock may be wrong. */
export function today(): number {
  const now = new Date();
  return Math.min(Math.max(0, Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / 864e5), MOST_DAY);
}

export const isFinished = ({ answers }: Card): boolean => answers.every(({ right }) => right);
export const isMissed = ({ helped, answers }: Card): boolean => helped || answers.some(({ tries, first }) => tries && !first);

class Unfit extends Error {}

/** What may be any of these. */
type Loose = Partial<Record<keyof Card | keyof Part | keyof Lesson | keyof Progress, unknown>>;

/** Fails unless it is so. */
function want(so: boolean): void {
  if (!so) {
    throw new Unfit();
  }
}

function object(value: unknown): Loose {
  want(typeof value === "object" && !!value && !Array.isArray(value));
  return value as Loose;
}

function list(value: unknown): unknown[] {
  want(Array.isArray(value) && value.length <= MOST);
  return value as unknown[];
}

function count(value: unknown): number {
  want(Number.isSafeInteger(value) && (value as number) >= 0);
  return value as number;
}

const day = (value: unknown): number => {
  want((value as number) <= MOST_DAY);
  return count(value);
};

function text(value: unknown): string {
  want(typeof value === "string" && value.length <= LONGEST);
  return value as string;
}

function truth(value: unknown): boolean {
  want(typeof value === "boolean");
  return value as boolean;
}

/** Reads what is under each name. */
function named<T>(value: unknown, read: (value: unknown) => T): Record<string, T> {
  const all = noNames<T>();
  for (const [name, one] of Object.entries(object(value))) {
    want(NAME.test(name));
    all[name] = read(one);
  }
  return all;
}

function readCard(value: unknown): Card {
  const read = object(value);
  return {
    card: count(read.card),
    day: day(read.day),
    helped: truth(read.helped),
    answers: list(read.answers).map((value): Part => {
      const part = object(value);
      return {
        answer: text(part.answer),
        in: text(part.in),
        tries: count(part.tries),
        first: truth(part.first),
        right: truth(part.right),
      };
    }),
  };
}

/** Makes progress of what was read; null where it is none. All that is no part of it is left out. */
export function readProgress(value: unknown): Progress | null {
  try {
    const read = object(value);
    want(read.version === VERSION);
    return {
      version: VERSION,
      lessons: named(read.lessons, (value): Lesson => {
        const read = object(value);
        return { day: day(read.day), exercises: named(read.exercises, (cards) => list(cards).map(readCard)) };
      }),
    };
  } catch {
    return null;
  }
}

/** The lesson of a name, opened today where it was not before. */
export const lessonOf = ({ lessons }: Progress, name: string): Lesson =>
  (lessons[name] ??= { day: today(), exercises: noNames() });

/**
 * The card of a number, begun today where it was not before. Once all cards were worked, one that was finished on another
 * day begins anew.
 */
export function cardOf({ exercises }: Lesson, name: string, card: number, { asks, cards: count }: Check): Card {
  const cards = (exercises[name] ??= []);
  const known = cards.filter((one) => one.card === card && one.answers.length === asks).pop();
  const all = new Set(cards.map((one) => one.card)).size >= count;
  if (known && !(all && isFinished(known) && known.day !== today())) {
    return known;
  }
  const part = (): Part => ({ answer: "", in: "", tries: 0, first: false, right: false });
  const begun = { card, day: today(), helped: false, answers: Array.from({ length: asks }, part) };
  if (cards.push(begun) > MOST) {
    cards.shift();
  }
  return begun;
}

const tries = ({ answers }: Card): number => answers.reduce((all, part) => all + part.tries, 0);

/** Adds what only another knows: lessons, exercises and cards, and of a card in both the one with more answers. */
export function join(own: Progress, other: Progress): void {
  for (const [name, lesson] of Object.entries(other.lessons)) {
    const known = (own.lessons[name] ??= { day: lesson.day, exercises: noNames() });
    for (const [exercise, cards] of Object.entries(lesson.exercises)) {
      const mine = (known.exercises[exercise] ??= []);
      cards.forEach((card) => {
        const at = mine.findIndex((one) => one.card === card.card);
        if (at < 0) {
          mine.push(card);
        } else if (tries(card) > tries(mine[at]!)) {
          mine[at] = card;
        }
      });
    }
  }
}
