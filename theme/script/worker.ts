// The service worker of a pressed site: it answers from what is kept on the device, and keeps pages as it is told.
//
// What is kept comes first, and the network second. With a weak signal a browser may wait a minute for a page that the
// device has had all along, and no reader may get a page of one edition with a script of another. What is new is looked
// for beside that (the browser compares this file), is kept in full, and waits until the reader accepts it.

import { deeds } from "./workerdeeds";
import { away, prepare } from "./workerprepare";
import { Unkept, addressOf, inUse, pathOf } from "./workerkept";
import { scope, site } from "./workerscope";

// Where nothing can be kept, the first worker runs all the same and says why when it is asked. A later one that cannot
// keep all that the one before has does not take its place.
scope.oninstall = (event) => event.waitUntil(prepare().catch(async (error) => (await inUse()) && Promise.reject(error)));

scope.onfetch = (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(site)) {
    event.respondWith(answer(event));
  }
};

async function answer({ request, clientId }: { request: Request; clientId: string }): Promise<Response> {
  const kept = await inUse();
  const at = async (url: string | undefined) => url && kept?.cache.match(addressOf(pathOf(url)));
  const hit = await at(request.url);
  if (request.mode === "navigate") {
    return hit || fetch(request).catch(() => away(pathOf(request.url), kept));
  }
  // A name in assets is that of its bytes. Any other file is of the edition that the page is of.
  if (hit && (pathOf(request.url).startsWith("assets/") || (await at((await scope.clients.get(clientId))?.url)))) {
    return hit;
  }
  return fetch(request).catch((error) => hit || Promise.reject(error));
}

scope.onmessage = (event) => {
  const [deed, path] = event.data as [string, string];
  const work = deeds[deed]!(path).then((given) => [given], (error) => [null, reasonOf(error)]);
  event.waitUntil(work.then((told) => event.ports[0]!.postMessage(told)));
};

const reasonOf = (error: Error): string =>
  error instanceof Unkept ? error.reason : error.name === "QuotaExceededError" ? "room" : "refused";
