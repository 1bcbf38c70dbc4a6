import { filled, word } from "./data";

/** What was typed: one number twice, or the two ends of a range, and the unit behind it. */
export interface Typed {
  low: number;
  high: number;
  below: boolean; // a laboratory's "<5"
  unit: string; // "" when none was typed
}

/** A number as it may be typed, with a fraction or without. */
const amount = "([-−$]*(?:\\d+[ -])?\\d+/\\d+|[-−$]*[\\d.,]*[¼½¾]?(?: × 10\\^-?\\d+)?)";

/**
 * Reads what a person types or pastes: one number, two ("3 to 4", "3–4", "3-4"), less than one as a laboratory prints it
 * ("<5"), with the unit or without it ("12 ppm NO3"). What cannot be read gives the sentence that says why; it is "" when
 * the field's own says enough.
 */
export function readTyped(typed: string, one: (text: string) => number | null, day: boolean): Typed | string {
  const plain = typed.trim().replace(/\s+/g, " ");
  if (/^(nd|n\.d|bdl)\.*( |$)/i.test(plain)) {
    return word("not-detected");
  }
  const end = day ? "([\\d-]+)" : amount;
  const shape = RegExp(`^(<?) ?${end}(?: ?(?:to|${word("to")}|[–—‑−-]) ?${end})?((?! ?\\d).*)$`);
  const [, below, first = "", second = first, unit] = shape.exec(plain) ?? [];
  const [low, high] = [first, second].map((text) => one(text) ?? withPart(text, one));
  if (low == null || high == null || (below && first !== second)) {
    const number = /^\d+,\d+$/.test(first) ? first.replace(",", ".") : "";
    return plain[0] === ">" ? word("above") : number ? filled("comma", { number }) : /\d/.test(plain) ? "" : word("no-number");
  }
  return low > high ? word("order") : { low: below ? 0 : low, high, below: !!below, unit: unit!.trim() };
}

/**
 * A number with a fraction (½, 1/2, 2 1/2), with a dollar sign, or with a decimal comma in a language that has them. A
 * comma that parts thousands stays one.
 */
function withPart(text: string, one: (text: string) => number | null): number | null {
  const [, whole, above, under, sign] = /^(\d*)[ -]?(?:(\d+)\/(\d+)|([¼½¾]))$/.exec(text) ?? [];
  const part = sign ? ("¼½¾".indexOf(sign) + 1) / 4 : Number(above) / Number(under);
  return part < 1 ? Number(whole) + part : one(text.replace("$", "").replace(word("decimal") === "," ? "," : "$", "."));
}
