// Offers a new edition of the site that is ready. The reader decides when it takes the place of the one they read.

import { word } from "./data";
import { askOf, type Ask } from "./offlineask";

const LATER = "later"; // in this tab, until the browser closes it

/** Offers it now, or as soon as there is one. */
export async function offer(registration: ServiceWorkerRegistration, ask: Ask, site: string): Promise<void> {
  const key = site + " " + LATER;
  let shown = false;
  const show = (): void => {
    if (shown || !navigator.serviceWorker.controller || read(key)) {
      return;
    }
    shown = true;
    const bar = document.createElement("section");
    bar.className = "edition";
    bar.setAttribute("aria-label", word("new-edition"));
    const line = document.createElement("p");
    line.setAttribute("role", "status");
    const [use, later] = [document.createElement("button"), document.createElement("button")];
    use.type = later.type = "button";
    use.textContent = word("edition-use");
    later.textContent = word("edition-later");
    bar.append(line, use, later);
    document.body.append(bar);
    line.textContent = word("new-edition"); // after the element is there, so that it is spoken
    later.onclick = () => {
      bar.remove();
      write(key);
    };
    use.onclick = () => {
      use.disabled = true;
      const worker = registration.waiting ?? registration.active!;
      askOf(worker, "use").catch(() => {
        use.disabled = false;
        line.textContent = word("edition-failed");
      });
    };
  };

  const watch = (worker: ServiceWorker | null) =>
    worker?.addEventListener("statechange", () => worker.state === "installed" && registration.active && show());
  registration.onupdatefound = () => watch(registration.installing);
  watch(registration.installing);
  if (registration.waiting || (await ask<{ another: boolean } | null>("tell").catch(() => null))?.another) {
    show();
  }
}

const read = (key: string): boolean => {
  try {
    return !!sessionStorage.getItem(key);
  } catch {
    return false;
  }
};

const write = (key: string): void => {
  try {
    sessionStorage.setItem(key, "1");
  } catch {
    // it is offered again on the next page
  }
};
