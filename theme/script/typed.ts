import { word } from "./data";

/** What was typed: one number twice, or the two ends of a range. */
export interface Typed {
  low: number;
  high: number;
  below: boolean; // a laboratory's "<5"
}

/**
 * Reads what a person types: one number, two ("3 to 4", "3–4", "3-4"), or less than one as a laboratory prints it
 * ("<5"). What cannot be read gives the name of the sentence that says why; it is "" when the field's own says enough.
 */
export function readTyped(typed: string, one: (text: string) => number | null): Typed | string {
  const plain = typed.trim().replace(/\s+/g, " ");
  if (/^(nd|n\.d|bdl)\.*( |$)/i.test(plain)) {
    return "not-detected";
  }
  const between = ` ${word("to")} `;
  const below = plain.startsWith("<");
  const parts = plain.slice(below ? 1 : 0).split(between);
  const ends = parts.flatMap((part) => (one(part) === null ? dashed(part) : [part])).map(one);
  const [low, high = low] = ends;
  if (ends.includes(null) || ends.length > (below ? 1 : 2)) {
    return "";
  }
  return low! > high! ? "order" : { low: below ? 0 : low!, high: high!, below };
}

/** The two numbers that a dash parts. A dash before a number alone is its sign. */
const dashed = (text: string): string[] => text.replace(/(\d\.?) ?[–-] ?(?=[\d.])/, "$1\n").split("\n");
