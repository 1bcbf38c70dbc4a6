// Numbers as a reader sees and types them. Each function here gives what its twin in calc/unit gives, bit for bit and
// letter for letter: text is unit.Text, parse is unit.ParseNumber, apply is unit.Factor. A shared file of numbers,
// calc/unit/testdata/number-text.csv, holds them together.

// text writes a number: three significant digits but never fewer than stand before the point, commas in thousands.
export function text(value: number): string {
  if (!Number.isFinite(value)) return "–";
  if (value === 0) return "0";
  const size = Math.abs(value);
  // Without an argument, toExponential gives the fewest digits that read back as the same number.
  const [mantissa, power] = size.toExponential().split("e") as [string, string];
  let digits = mantissa.replace(".", "");
  let exponent = Number(power);
  const scientific = size >= 1e15 || size < 1e-6;
  const keep = scientific ? 3 : Math.max(3, exponent + 1);
  // Digits are rounded as digits, since a binary number is seldom the tie that its shortest decimal is.
  if (digits.length > keep) {
    digits = String(BigInt(digits.slice(0, keep)) + (digits[keep]! >= "5" ? 1n : 0n));
    exponent += digits.length - keep;
  }
  digits = digits.replace(/0+$/, "");
  const sign = value < 0 ? "-" : "";
  if (scientific) return sign + point(digits, 1) + " × 10^" + exponent;
  if (exponent < 0) return sign + "0." + "0".repeat(-exponent - 1) + digits;
  return sign + point(digits.padEnd(exponent + 1, "0"), exponent + 1);
}

// point puts commas into the first whole digits, and a decimal point before the rest.
function point(digits: string, whole: number): string {
  const rest = digits.slice(whole);
  return digits.slice(0, whole).replace(/\B(?=(\d{3})+$)/g, ",") + (rest && "." + rest);
}

// parse reads what a person types: digits, one point, commas only between thousands. Anything else is null.
export function parse(typed: string): number | null {
  const match = /^([-−]?)((?:\d*|[1-9]\d{0,2}(?:,\d{3})+)(?:\.\d*)?)(?: × 10\^(-?\d{1,3}))?$/.exec(typed.trim());
  if (!match || !/\d/.test(match[2]!)) return null;
  const size = Number(match[2]!.replace(/,/g, "") + "e" + (match[3] ?? 0));
  if (size === Infinity) return null;
  return match[1] ? -size : size;
}

// apply converts a value by a factor "multiply/divide", in that order; a step that is 1 changes nothing.
export function apply(value: number, factor: string): number {
  const [multiply, divide] = factor.split("/").map(Number) as [number, number];
  return (value * multiply) / divide;
}
