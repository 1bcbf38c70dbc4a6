import { word } from "./data";

/**
 * Two buttons under a field for what the number pad of a touch screen has not: a laboratory's "<", and a range. They
 * come where a finger points.
 */
export function makeKeys(): void {
  const row = document.createElement("div");
  row.className = "keys";
  for (const text of ["<", ` ${word("to")} `]) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = text;
    button.onpointerdown = (event) => {
      event.preventDefault(); // the field keeps the keyboard
      const input = document.activeElement as HTMLInputElement;
      input.value = text[1] ? input.value + text : text + input.value;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    };
    row.append(button);
  }
  addEventListener("focusin", ({ target }) => {
    const input = target as HTMLInputElement;
    if (input.inputMode && input.closest(".field") && matchMedia("(pointer: coarse)").matches) { // an exercise takes one number
      input.parentElement!.after(row);
    }
  });
}
