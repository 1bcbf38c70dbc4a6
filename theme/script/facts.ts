// What stands for the facts of a block in a page, and what is in it.

import { chosenIn } from "./choice";
import { all } from "./element";
import type { Entry, Field } from "./field";

/** The facts of a block, as calc/fact has them. The press writes them before the script. */
declare const facts: {
  given: Record<string, string>; // by the id of the fact: calculations and their givens
  once: string[]; // those of one sample
  edition: string; // a mark of the calculations that work the facts
  measure: Record<string, string>; // the unit of what is worked
  names: Record<string, string>; // of units: in English, by the name in the language of the page
  options: Record<string, string[]>; // the names of what a choice has, which no language changes
};

export const { edition, once, measure: unitOfWorked } = facts;

/** The fact that a field asks for or stands for; "" for none. */
export function factOf({ element }: Field): string {
  const asked = element.closest(".field")?.getAttribute("data-fact");
  const worksheet = element.closest(".worksheet");
  const code = worksheet?.querySelector<HTMLAnchorElement>('a[href*="calculations/"]')?.pathname.split("/").slice(-2)[0];
  const given = element.id.slice(worksheet?.id.replace("worksheet-", "").length ?? 0);
  const name = code + given.replace("-", ".");
  return asked ?? Object.keys(facts.given).find((id) => facts.given[id].split(" ").includes(name)) ?? "";
}

const ofUnit = (own: string): string => facts.names[own] ?? own;
const ownUnit = (name = ""): string => Object.keys(facts.names).find((own) => facts.names[own] === name) ?? name;
const isList = (element: Element): element is HTMLSelectElement => element instanceof HTMLSelectElement;
const unitIn = (field: Field): string =>
  field.element.parentElement!.querySelector(".unit")?.textContent ?? "";

/** What is in a field, so that a page of another language can take it. */
export function entryOf(field: Field, id: string): Entry {
  const { element } = field;
  if (isList(element)) {
    return [facts.options[id]?.[element.selectedIndex] ?? chosenIn(element)];
  }
  const [text, unit = unitIn(field)] = field.entry();
  return unit ? [text, ofUnit(unit)] : [text];
}

/** What is kept of a fact, as a field takes it; null for what does not fit. */
export function entryFor(field: Field, id: string, [text, unit]: Entry): Entry | null {
  const { element } = field;
  if (isList(element)) {
    const option = element.options[facts.options[id]?.indexOf(text) ?? -1];
    return option ? [option.text] : null;
  }
  const units = all("select", element.parentElement!);
  if (units.length) {
    return [text, ownUnit(unit)];
  }
  return ownUnit(unit) === unitIn(field) ? [text] : null;
}
