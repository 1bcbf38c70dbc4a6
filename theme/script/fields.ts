import { makeChoiceField } from "./choice";
import { all } from "./element";
import { makeNumberField } from "./entry";
import type { Field } from "./field";

/** Every field of the page. */
export function findFields(): Field[] {
  return all("[data-cell]").map((element) =>
    element instanceof HTMLSelectElement ? makeChoiceField(element) : makeNumberField(element as HTMLInputElement),
  );
}
