import { blocksKey } from "./blockkey";

/** Keeps in which units a reader has the answers, for all pages of the site. It goes first: later a click is the reader's. */
export function keepUnits(): void {
  const metric = document.querySelector<HTMLInputElement>("#units [value=metric]");
  const key = blocksKey().replace("blocks", "units");
  try {
    if (metric && localStorage.getItem(key)) {
      metric.click();
    }
    document.getElementById("units")?.addEventListener("change", () => {
      metric!.checked ? localStorage.setItem(key, metric!.value) : localStorage.removeItem(key);
    });
  } catch {
    // Forbidden: each page begins with the units of the example.
  }
}
