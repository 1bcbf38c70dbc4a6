import { all, numberIn } from "./element";
import type { Field } from "./field";

/** Makes the buttons that take a worksheet back to its example work. */
export function bindReset(fields: Field[], then: () => void): void {
  for (const button of all("[data-reset]")) {
    const sheet = numberIn(button, "data-reset");
    button.addEventListener("click", () => {
      fields.filter((field) => field.sheet === sheet).forEach((field) => field.reset());
      then();
    });
  }
}
