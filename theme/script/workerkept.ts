// The editions of the site that are kept on the device, each in a cache of its own, and which of them is in use.
//
// The cache of an edition has the edition's list of files, and of those files the ones that are kept, each as the list
// has it. Others with the same address may keep caches too, so ours begin with the path of the site.

import { site } from "./workerscope";

declare const edition: string; // the digest of the list of this worker's edition; the press writes both before the script
declare const listing: string; // where that list is

/** A file of an edition: the digest of its bytes, and how many they are. */
export type File = [digest: string, size: number];

/** What an edition has: the files of the whole site, and those that no page links to. */
interface List {
  files: Record<string, File>;
  apart: Record<string, File>;
}

/** An edition that is kept, or begun. */
export interface Edition {
  name: string;
  cache: Cache;
  list: List;
}

export const OWN = `acreleaf ${new URL(site).pathname} ${edition}`;
const OURS = OWN.slice(0, -edition.length);
const LIST = site + "?list";
const USED = site + "?used";
const WHOLE = site + "?whole";

/** Why a file could not be kept. */
export class Unkept extends Error {
  constructor(readonly reason: "signal" | "changed") {
    super(reason);
  }
}

/** The file that an address of the site means, and the address that a file is asked for by: the folder for a page. */
export function pathOf(address: string): string {
  const path = address.replace(/[?#].*/, "").slice(site.length).replace(/(^|\/)$/, "$1index.html");
  try {
    return decodeURI(path);
  } catch {
    return path; // no file has such a name
  }
}
export const addressOf = (path: string): string => site + encodeURI(path.replace(/(^|\/)index\.html$/, "$1"));

const ours = async () => (await caches.keys()).filter((name) => name.startsWith(OURS));

const open = async (name: string): Promise<Edition | null> => {
  const cache = await caches.open(name);
  const list = await cache.match(LIST);
  return list ? { name, cache, list: await list.json() } : null;
};

let known: Promise<Edition | null> | undefined;

/** Looks again at the next question which edition is in use: another worker may have changed it. */
export const lookAgain = (): void => (known = undefined);

/** The edition in use: the one that a reader accepted, or the first that came; null while nothing is kept. */
export const inUse = (): Promise<Edition | null> =>
  (known ??= (async () => {
    // Both are marked where the last change of editions was cut short: the newer one was complete by then.
    for (const name of (await ours()).sort((a) => (a === OWN ? -1 : 1))) {
      if (await (await caches.open(name)).match(USED)) {
        return open(name);
      }
    }
    return null;
  })().catch(() => null));

/** Begins to keep this worker's edition, or goes on with it. */
export async function begin(): Promise<Edition> {
  const begun = await open(OWN);
  if (begun) {
    return begun;
  }
  const cache = await caches.open(OWN);
  await cache.put(LIST, await fetched(listing, edition));
  return (await open(OWN))!;
}

/** Has an edition used from now on, and no other kept. */
export async function use(chosen: Edition): Promise<void> {
  await chosen.cache.put(USED, new Response());
  await letGo(chosen.name);
}

/** Lets go of all that is kept, but for one edition. */
export async function letGo(but = ""): Promise<void> {
  for (const name of await ours()) {
    if (name !== but) {
      await caches.delete(name);
    }
  }
  lookAgain();
}

export const isWhole = async ({ cache }: Edition): Promise<boolean> => !!(await cache.match(WHOLE));
export const wantWhole = ({ cache }: Edition): Promise<void> => cache.put(WHOLE, new Response());

export const isPage = (path: string): boolean => path.endsWith(".html");

/** The files of an edition that are kept. */
export async function keptOf({ cache, list }: Edition): Promise<string[]> {
  const paths = (await cache.keys()).filter(({ url }) => !url.includes("?")).map(({ url }) => pathOf(url));
  return paths.filter((path) => list.files[path] || list.apart[path]);
}

/** Gets a file from the network, and only the one that is meant: a server may have another edition by now. */
async function fetched(path: string, digest: string): Promise<Response> {
  const answer = await fetch(addressOf(path), { cache: "no-cache" }).catch(() => null);
  const bytes = await answer?.arrayBuffer().catch(() => null);
  if (!bytes) {
    throw new Unkept("signal");
  }
  if (!answer!.ok || (await digestOf(bytes)) !== digest) {
    throw new Unkept("changed");
  }
  // A new answer: a browser takes none for a page that was led there from another address.
  return new Response(bytes, { headers: answer!.headers });
}

async function digestOf(bytes: ArrayBuffer): Promise<string> {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...sum.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

const fileOf = (edition: Edition | null | undefined, path: string): File | undefined =>
  edition?.list.files[path] ?? edition?.list.apart[path];

/**
 * Keeps a file of an edition, if it is one of its files; from the edition before, where that has the same. A page brings
 * all that it shows and runs, and comes last, so that what is kept is whole.
 */
export async function keep(to: Edition, path: string, before?: Edition | null): Promise<void> {
  const [file, address] = [fileOf(to, path), addressOf(path)];
  if (!file || (await to.cache.match(address))) {
    return;
  }
  const same = fileOf(before, path)?.[0] === file[0];
  const got = (same && (await before!.cache.match(address))) || (await fetched(path, file[0]));
  if (isPage(path)) {
    for (const [, way] of (await got.clone().text()).matchAll(/ (?:src|href|srcset)="([^"\s#?]+)/g)) {
      const part = pathOf(new URL(way!, address).href);
      if (!isPage(part)) {
        await keep(to, part, before);
      }
    }
  }
  await to.cache.put(address, got);
}
