// Numbers as a reader sees and types them. Each function here gives what its twin in calc/unit gives, bit for bit and
// letter for letter: text is unit.Digits, operand is Unit.Operand, money is unit.Money, parse is
// unit.ParseNumber, apply is unit.Factor. A shared file of numbers, calc/unit/testdata/number-text.csv, holds them together.

// text writes a number: three significant digits but never fewer than come before the point, commas in thousands; or
// so many digits more.
export function text(value: number, more = 0, usual = USUAL): string {
  if (!Number.isFinite(value)) return "–";
  if (value === 0) return "0";
  const [digits, exponent] = shortest(value);
  if (tiny(value)) {
    const [kept, power] = round(digits, exponent, usual + more);
    return sign(value) + point(kept, 1) + " × 10^" + power;
  }
  return sign(value) + plainly(...round(digits, exponent, Math.max(usual, exponent + 1) + more));
}

// operand writes a number as it is in a formula: with all of its digits where a person may have typed them.
export function operand(value: number, cents: boolean, most: number, more: number, usual = USUAL): string {
  const few = most > 0 && Number.isFinite(value) && !tiny(value) && shortest(value)[0].length <= most;
  return cents ? money(value, few ? ALL : more) : text(value, few ? ALL : more, usual);
}

// money writes an amount of money, in cents where cents tell something.
export function money(value: number, more = 0): string {
  const size = Math.abs(value);
  if (!(size >= 0.1 && size < 1000)) return text(value, more);
  const [digits, exponent] = shortest(value);
  return sign(value) + plainly(...round(digits, exponent, exponent + 3 + more)).replace(/\.\d$/, "$&0");
}

const USUAL = 3;
const ALL = 17;

const sign = (value: number): string => (value < 0 ? "-" : "");

// tiny is what is written as a power of ten, since it is very small or very large.
const tiny = (value: number): boolean => Math.abs(value) >= 1e15 || Math.abs(value) < 1e-6;

// shortest gives the fewest digits that read back as the same number, and the power of ten of the first.
function shortest(value: number): [digits: string, exponent: number] {
  const [mantissa, power] = Math.abs(value).toExponential().split("e") as [string, string];
  return [mantissa.replace(".", ""), Number(power)];
}

// round keeps so many digits. They are rounded as digits, since a binary number is seldom the tie that its shortest
// decimal is.
function round(digits: string, exponent: number, keep: number): [digits: string, exponent: number] {
  if (digits.length > keep) {
    digits = String(BigInt(digits.slice(0, keep)) + BigInt(digits[keep]! >= "5"));
    exponent += digits.length - keep;
  }
  return [digits.replace(/0+$/, ""), exponent];
}

// plainly writes digits out in full.
function plainly(digits: string, exponent: number): string {
  return exponent < 0
    ? "0." + "0".repeat(-exponent - 1) + digits
    : point(digits.padEnd(exponent + 1, "0"), exponent + 1);
}

// point puts commas into the first whole digits, and a decimal point before the rest.
function point(digits: string, whole: number): string {
  const rest = digits.slice(whole);
  return digits.slice(0, whole).replace(/\B(?=(\d{3})+$)/g, ",") + (rest && "." + rest);
}

// parse reads what a person types: digits, one point, commas only between thousands. Anything else is null.
export function parse(typed: string): number | null {
  const [, minus, digits, power = 0] =
    /^([-−]?)((?=\.?\d)(?:\d*|[1-9]\d{0,2}(?:,\d{3})+)(?:\.\d*)?)(?: × 10\^(-?\d{1,3}))?$/.exec(typed.trim()) ?? [];
  const size = digits ? Number(digits.replace(/,/g, "") + "e" + power) : Infinity;
  return size === Infinity ? null : minus ? -size : size;
}

// apply converts a value by a factor "multiply/divide", in that order; a step that is 1 changes nothing.
export function apply(value: number, factor: string): number {
  const [multiply, divide] = factor.split("/").map(Number) as [number, number];
  return (value * multiply) / divide;
}
