import { filled, word } from "./data";
import { parse } from "./number";
import { parseDay } from "./shown";
import { folded } from "./unitword";

/** What was typed: one number twice, or the two ends of a range, and the unit after it. */
export interface Typed {
  low: number;
  high: number;
  below: boolean; // a laboratory's "<5"
  unit: string; // "" when none was typed
  parted?: boolean; // it is in feet and inches: 18' 6"
}

/** A number as it may be typed: 12, 1,200.5, 1/2, 2 1/2, 2-1/2. The fractions are those of a ruler and of a dozen. */
const AMOUNT =
  "([-−$]*(?:(?:[\\d,]+[ -])?\\d\\d?/(?:[234568]|1[026]|32|64)(?![/.]?\\d)|[\\d.,]+(?: × 10\\^-?\\d+)?))";

/**
 * Reads what a person types or pastes, as calc/unit does: one number, two ("3 to 4", "3–4", "3-4"), less than one as a
 * laboratory prints it ("<5"), with the unit or without it ("12 ppm NO3"). What cannot be read gives the sentence that
 * says why; it is "" when the field's own says enough. Only what a laboratory measures may be less than a number.
 */
export function readTyped(typed: string, day: boolean, lab: boolean): Typed | string {
  const plain = typed
    .trim()
    .replace(/\s+/g, " ")
    .replace(/(\d[ -]?)?([¼-¾⅓-⅞])/g, (_, whole = "", sign: string) => (whole && whole[0] + " ") + sign.normalize("NFKD"))
    .replace(/⁄/g, "/");
  if (/^(nd|n\.d|bdl)\.*( |$)/i.test(plain)) {
    return word("not-detected");
  }
  const read = day ? parseDay : readAmount;
  const [, feet, foot, inches, inch] = RegExp(`^(\\d+)([^\\d.,]+)${AMOUNT}(\\D+)$`).exec(plain) ?? [];
  if (feet && folded(foot!) === "ft" && folded(inch!) === "in" && read(inches!)! < 12) {
    const length = (+feet * 12 + read(inches!)!) / 12;
    return { low: length, high: length, below: false, unit: "ft", parted: true };
  }
  const end = day ? "([\\d-]+)" : AMOUNT;
  const shape = RegExp(`^(<?) ?${end}(?:(.*?) ?(?:to|a|${word("to")}|[–—‑‒−-]) ?${end})?(.*)$`);
  const [, below, first = "", between, second = first, unit] = shape.exec(plain) ?? [];
  const [low, high] = [first, second].map(read);
  if (low == null || high == null || (below && (!lab || first !== second))) {
    const number = first.replace(/^(\d+),(\d+)$/, "$1.$2");
    return plain[0] === ">" ? word("above")
      : number !== first ? filled("comma", { number })
      : "";
  }
  const same = !between || folded(between) === folded(unit!);
  return low > high
    ? word("order")
    : { low: below ? 0 : low, high, below: !!below, unit: (same ? unit! : between + unit!).trim() };
}

/**
 * A number, perhaps with a fraction (1/2, 2 1/2), with a dollar sign, or with a decimal comma in a language that has them. A
 * comma that parts thousands stays one.
 */
function readAmount(text: string): number | null {
  const plain = text.replace("$", "");
  const [, minus, whole, above, under] = /^([-−]?)(?:([\d,]+)[ -])?(\d+)\/(\d+)$/.exec(plain) ?? [];
  if (!under) {
    return parse(plain) ?? parse(word("decimal") === "," ? plain.replace(/(\d),(?=\d)/, "$1.") : "");
  }
  const part = +above! / +under;
  const size = part > 0 && part < 1 ? parse(whole ?? "0") : null;
  return size === null ? null : (minus ? -1 : 1) * (size + part);
}
