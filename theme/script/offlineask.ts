// Asks the worker.

/** Why something could not be kept: a word that a sentence belongs to. */
export type Reason = "signal" | "changed" | "room" | "refused";

/** Asks the worker to do something for this page. Fails with a Reason. */
export type Ask = <Given>(deed: string) => Promise<Given>;

const PATIENCE = 60_000; // milliseconds; a browser may stop a worker, which then never answers

export function makeAsk(worker: () => Promise<ServiceWorker>, site: string): Ask {
  const path = decodeURI(location.href.replace(/[?#].*/, "").slice(site.length)).replace(/(^|\/)$/, "$1index.html");
  return async <Given>(deed: string) => askOf<Given>(await worker(), deed, path);
}

export function askOf<Given>(worker: ServiceWorker, deed: string, path = ""): Promise<Given> {
  return new Promise((resolve, reject) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data: [given, reason] }) => (reason ? reject(reason as Reason) : resolve(given as Given));
    setTimeout(() => reject("signal" satisfies Reason), PATIENCE);
    worker.postMessage([deed, path], [port2]);
  });
}
