// When what was missed comes back: as another card after a day, then after three, then after ten.

import { isFinished, isMissed, type Card } from "./progress";

const DAYS = [1, 3, 10];

/** When an exercise comes back, and with which card. */
export interface Again {
  days: number; // until then; 0 for today
  card: number;
}

/**
 * Says when an exercise comes back; null where it does not. A miss begins with the first wait, and a card that came right
 * once it was due leads to the next. Where the clock went back since, it is due today: a day too early loses nothing.
 */
export function again(cards: Card[], count: number, today: number): Again | null {
  let wait = -1;
  let since = 0;
  const left = (day: number) => (day < since ? 0 : Math.max(0, since + DAYS[wait]! - day));
  for (const card of cards) {
    if (isMissed(card)) {
      wait = 0;
      since = card.day;
    } else if (wait >= 0 && isFinished(card) && !left(card.day)) {
      wait = wait + 1 < DAYS.length ? wait + 1 : -1;
      since = card.day;
    }
  }
  return wait < 0 ? null : { days: left(today), card: nextCard(cards, count) };
}

/** The next card that was not worked; after all of them the one that comes next in turn. */
function nextCard(cards: Card[], count: number): number {
  const worked = new Set(cards.map(({ card }) => card));
  let next = (cards.at(-1)!.card % count) + 1;
  for (let i = 0; i < count && worked.has(next); i++) {
    next = (next % count) + 1;
  }
  return next;
}
