// Keeps pages on the device, so that they work without a network: starts the site's worker, tells it which page was
// opened, and shows what is kept. Nothing of it happens from a disk, at the desk, or where a browser has no such workers.

import { makeAsk, type Ask } from "./offlineask";
import { list } from "./offlinelist";
import { offer } from "./offlinenew";
import { mount } from "./offlineshow";

const own = document.currentScript as HTMLScriptElement | null; // a desk runs it once more, as a module, without a tag
const site = own?.src ? new URL("../", own.src).href : "";
const home = document.querySelector<HTMLAnchorElement>(".office a")!.href;
const SOON = 1000; // milliseconds after a page has loaded, when its own scripts have

declare const trustedTypes: undefined | {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): {
    createScriptURL(address: string): string;
  };
};

async function start(): Promise<void> {
  const manifest = document.createElement("link");
  manifest.rel = "manifest";
  manifest.href = home + "site.webmanifest"; // a tag in the page would be in the way of one from a disk
  document.head.append(manifest);

  const address = site + "worker.js";
  const policy = typeof trustedTypes === "undefined" ? null
    : trustedTypes.createPolicy("offline", { createScriptURL: () => address }); // no other address
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.register(policy?.createScriptURL("") ?? address);
  const had = serviceWorker.controller;
  const reload = () => had && location.reload();
  serviceWorker.oncontrollerchange = reload;
  serviceWorker.onmessage = ({ data }) => data === "used" && reload();
  const ask: Ask = makeAsk(async () => registration.active ?? (await serviceWorker.ready).active!, site);
  const show = mount(ask, home);
  offer(registration, ask, site);
  await show(await ask("visit").then(() => undefined, (why) => why));
  await list(ask, site, home);
  if (had) {
    await registration.update().catch(() => endIfGone(address, registration));
  }
}

/** A site that is no longer there, or has no worker any more, would be shown from the device for ever. */
async function endIfGone(address: string, registration: ServiceWorkerRegistration): Promise<void> {
  const { status } = await fetch(address, { method: "HEAD", cache: "no-store" });
  if (status === 404 || status === 410) {
    for (const name of await caches.keys()) {
      if (name.startsWith(`acreleaf ${new URL(site).pathname} `)) {
        await caches.delete(name);
      }
    }
    await registration.unregister();
  }
}

/** Without a network a page that the browser had of its own is whole without a worker. Anything else is told. */
const refused = (error: Error): void => {
  if (error.name !== "TypeError") {
    mount(() => Promise.reject(), home)("refused");
  }
};

const atDesk = document.querySelector('[src^="/.desk/"]');
if (site && isSecureContext && location.protocol !== "file:" && navigator.serviceWorker && !atDesk) {
  addEventListener("load", () => setTimeout(() => start().catch(refused), SOON));
}
