/** A unit as it is compared: "PPM nitrate-N" is "ppmno3n". Crop, soil and product go without saying. */
export const folded = (unit: string): string =>
  unit
    .toLowerCase()
    .replace(/ (per|an?) /g, "/")
    .replace(/nitrate/g, "no3")
    .replace(/no3( as|[ _-])? ?n\b|n-no3/g, "no3n")
    .replace(/inch(es)?|["”″]/g, "in")
    .replace(/f(ee|oo)t|['’′]/g, "ft")
    .replace(/pound/g, "lb")
    .replace(/ounce/g, "oz")
    .replace(/gallon/g, "gal")
    .replace(/acre|\ba$/g, "ac")
    .replace(/[^a-z0-9%/]|s\b|crop|soil|product/g, "");

/**
 * The place of the unit that was typed in a list of units; -1 when it is none of them. What tells no form of nitrogen can
 * only be of the one that is chosen.
 */
export function findUnit(typed: string, units: string[], chosen: number): number {
  const exact = units.findIndex((unit) => folded(unit) === folded(typed));
  return exact < 0 && folded(units[chosen] ?? "").replace(/(no3)?n?(?=\/|$)/, "") === folded(typed) ? chosen : exact;
}
