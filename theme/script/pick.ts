import { all } from "./element";
import { FITS, type Place } from "./place";

/** What is chosen: the place of an option, "" for none; or the place of each item, a hyphen for one without. */
export const picked = (element: Element): string =>
  all<HTMLInputElement>("input, select", element)
    .map(({ type, value, checked }) => (type !== "radio" ? value || "-" : checked ? value : ""))
    .join("");

/**
 * Binds the options or the items of a choice. Its answer is a number, as practice.Choice has it: the place of the option
 * that is chosen, or a digit for each item, which is its place in the order.
 */
export function bindPick(element: HTMLElement): Place {
  const inputs = all<HTMLInputElement>("input, select", element);
  const items = inputs[0]!.type !== "radio" && inputs.length;
  inputs.forEach((input) => (input.disabled = false));
  return {
    hear() {
      const code = picked(element);
      return +code > 0 && new Set(code).size === (items || 1) ? [+code, +code, FITS] : null;
    },
    entry: () => [picked(element), 0],
    put(code) {
      inputs.forEach((input, i) => {
        if (items) {
          input.value = +code[i]! > 0 ? code[i]! : "";
        } else {
          input.checked = input.value === code;
        }
      });
    },
  };
}
