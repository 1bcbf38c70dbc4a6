// Reads an answer, as calc/practice does (read.go, spelling.go): the checks compare the two.

import { word } from "./data";
import { parse } from "./number";
import { folded, UNSAID } from "./unitword";

const MOST = 1e15; // more than any answer
const FRACTION = /^([-−]?)(\$?)(?:([\d.,]+)[ -])?(\d+)\/(\d+)(?![\d./])(.*)$/;
const AMOUNT = /^([-−]?)(\$?)([\d.,]+(?: × 10\^-?\d+)?)(.*)$/;
/** What makes two numbers of one, behind it. */
const ANOTHER = /^\W*(?:e|(?:to|a|y|and|ft|foot|feet)\W+)?\W*\d| (?:to|a|y|and|[-–—]) ?\$?\d/i;

/** Words for units that people type, and what they are compared as. */
const SPELLINGS = (
  "per cent|percent|por ciento=%,dollars?|dolar|dolares|usd=$,por|cada|each=per,of|de|del=,nitrogen|nitrogeno=n,nitrato=nitrate," +
  "square feet|square foot|sq ft|pies? cuadrados?=ft2,libras?=lb,onzas?=oz,galon|galones=gal,pulgadas?=in,pies?=ft,arbol|arboles=tree,hours?|hrs?|horas?=h," +
  "minutes?|mins?|minutos?=min,dias?=day,hectares?|hectareas?=ha,kilograms?|kilos?|kilogramos?=kg,grams?|gramos?=g," +
  "liters?|litres?|litros?=l"
).split(",").map((pair): [RegExp, string] => {
  const [words, by] = pair.split("=") as [string, string];
  return [RegExp(`\\b(?:${words})\\b`, "g"), by];
});

/** A unit as it is compared. */
const spelled = (text: string): string =>
  folded(
    SPELLINGS.reduce(
      (plain, [word, by]) => plain.replace(word, () => by),
      text.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "").replace(/²/g, "2").replace(/³/g, "3"),
    )
      .replace(/ +/g, " ")
      .replace(/\$/g, "usd"),
  ).replace(/mg\/(kg|l)/, "ppm");

/** Whether what was typed means a unit. */
export const means = (typed: string, unit: string): boolean =>
  UNSAID.some((part) => spelled(unit.replace(part, "")) === spelled(typed));

/** Reads digits, with a decimal comma in a language that has them. */
const readDigits = (text: string): number | null =>
  parse(text) ?? parse(word("decimal") === "," ? text.replace(/^(\d+),(\d+)$/, "$1.$2") : "");

/** The number of an answer, and what is written behind it; null where it is not one number. */
export function readAmount(typed: string): [value: number, unit: string] | null {
  const text = typed
    .trim()
    .replace(/\s+/g, " ")
    .replace(/(\d[ -]?)?([¼-¾⅓-⅞])/g, (_, whole = "", sign: string) => (whole && whole[0] + " ") + sign.normalize("NFKD"))
    .replace(/⁄/g, "/");
  const [, minus, money, whole, above, under, behind] = FRACTION.exec(text) ?? [];
  const [, sign, dollar, digits, after] = AMOUNT.exec(text) ?? [];
  const part = +above! / +under!;
  const added = whole ? (part < 1 ? readDigits(whole) : null) : 0;
  const size = under ? (+under && isFinite(+under) && added !== null ? part + added : null) : digits ? readDigits(digits) : null;
  const unit = under ? money! + behind : dollar! + after;
  return size === null || !(size <= MOST) || ANOTHER.test(under ? behind! : after!) ? null : [minus || sign ? -size : size, unit.trim()];
}
