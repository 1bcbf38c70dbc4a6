import { all, put } from "./element";

/**
 * Gives the function that follows the switch between US and metric units: an answer and its second unit change places. It
 * says whether they did.
 */
export function makeUnits(): () => boolean {
  const numbers = all<Element>("[data-si]");
  const names = all<Element>("[data-unit]");
  const metric = document.querySelector<HTMLInputElement>("#units [value=metric]");
  let shown = false;
  return () => {
    if (!metric || metric.checked === shown) {
      return false;
    }
    shown = metric.checked;
    for (const number of numbers) {
      const by = number.getAttribute("data-by") ?? "";
      number.setAttribute("data-by", number.getAttribute("data-si")!);
      number.setAttribute("data-si", by);
    }
    for (const name of names) {
      const other = name.textContent!;
      put(name, name.getAttribute("data-unit")!);
      name.setAttribute("data-unit", other);
    }
    return true;
  };
}
