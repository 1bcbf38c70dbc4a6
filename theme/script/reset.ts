import { word } from "./data";
import { all, numberIn } from "./element";
import { enter, type Entry, type Field } from "./field";

/** Makes the buttons that take a worksheet back to its example work, and then bring the reader's numbers back. */
export function bindReset(fields: Field[], then: () => void): void {
  for (const button of all("[data-reset]")) {
    const own = fields.filter((field) => field.sheet === numberIn(button, "data-reset"));
    const printed = button.textContent!;
    let before: Entry[] | null = null; // what the example took the place of, until something is typed again
    const offer = (entries: Entry[] | null) => {
      before = entries;
      button.textContent = entries ? word("undo") : printed;
    };
    button.onclick = () => {
      const changed = own.some((field) => field.changed);
      if (before && !changed) {
        enter(own, before);
        offer(null);
      } else {
        offer(changed ? own.map((field) => field.entry()) : null);
        own.forEach((field) => field.reset());
      }
      then();
    };
    own.forEach(({ element }) => (element.closest<HTMLElement>(".field")!.oninput = () => offer(null)));
  }
}
