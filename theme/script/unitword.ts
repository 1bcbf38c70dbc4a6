/** A unit as it is compared: "PPM nitrate-N" is "ppmno3n". Crop, soil and product go without saying. */
export const folded = (unit: string): string =>
  unit
    .toLowerCase()
    .normalize("NFD")
    .replace(/ (per|por|an?) /g, "/")
    .replace(/nitrate/g, "no3")
    .replace(/no3( as|[ _-])? ?n\b|n-no3/g, "no3n")
    .replace(/inch(es)?|["”″]/g, "in")
    .replace(/f(ee|oo)t|['’′]/g, "ft")
    .replace(/pound/g, "lb")
    .replace(/ounce/g, "oz")
    .replace(/gallon/g, "gal")
    .replace(/acre|\ba$/g, "ac")
    .replace(/[^a-z0-9%/]|s\b|(de )?(crop|soil|producto?|suelo|cosecha)/g, "");

/** What may be left unsaid of a unit: nothing; what was done with the nitrogen; and that, and its form. */
export const UNSAID = [
  "",
  / (fed|taken up|presente?|(aplica|absorbi)do)$/,
  / (NO3-N|NO3|N)\b| (fed|taken up|presente?|(aplica|absorbi)do)(\/fed|\/aplicado)?$/g,
];

/**
 * The place of the unit that was typed in a list of units; -1 when it is none of them. What it leaves unsaid can only be
 * as it is in the one that is chosen.
 */
export function findUnit(typed: string, units: string[], chosen: number): number {
  const places = UNSAID.map((part) => {
    const kept = units[chosen]?.match(part);
    return units.findIndex(
      (unit) =>
        folded(unit.replace(part, "")) === folded(typed) && (!kept || `${unit.match(part)},`.startsWith(`${kept},`)),
    );
  });
  return places.find((place) => place >= 0) ?? -1;
}
