import { all } from "./element";

/** Binds the button that prints a page with all that is folded. What it opens for that is closed again. */
export function bindPrint(): void {
  document.querySelector("[data-print]")?.addEventListener("click", () => {
    const closed = all<HTMLDetailsElement>("details:not([open])");
    const fold = (open: boolean) => closed.forEach((one) => (one.open = open));
    fold(true);
    addEventListener("afterprint", () => fold(false), { once: true });
    print();
  });
}
