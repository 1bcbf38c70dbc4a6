// What a page may ask of the worker, by name. A page of another edition may ask too, so a name keeps its meaning.

import { AWAY, carry, homeOf, prepare } from "./workerprepare";
import { OWN, addressOf, begin, inUse, isPage, isWhole, keep, keptOf, letGo, lookAgain, pathOf, use, wantWhole } from "./workerkept";
import { scope } from "./workerscope";

const BATCH = 8; // files that are kept for each time that a page asks: a worker may be stopped between two

export const deeds: Record<string, (path: string) => Promise<unknown>> = {
  /** Keeps a page that a reader opened, the home page that the next visit may begin with, and the index of words. */
  async visit(path) {
    const kept = (await inUse()) ?? (await prepare());
    await keep(kept, path);
    const home = homeOf(path, kept) + "index.html";
    await keep(kept, home);
    const text = await (await kept.cache.match(addressOf(home)))!.text();
    await keep(kept, pathOf(new URL(/ id="find" href="([^"]+)/.exec(text)![1]!, addressOf(home)).href));
  },

  /** Says what is kept: the page, the whole site if it was asked for, in bytes; and whether a new edition is ready. */
  async tell(path) {
    const kept = await inUse();
    if (!kept) {
      return null;
    }
    const there = new Set(await keptOf(kept));
    const files = Object.entries(kept.list.files);
    const size = (of: typeof files) => of.reduce((sum, [, [, bytes]]) => sum + bytes, 0);
    return { page: there.has(path), asked: await isWhole(kept), bytes: size(files),
      missing: size(files.filter(([name]) => !there.has(name))), another: kept.name !== OWN };
  },

  /** Keeps some more of the whole site. */
  async more() {
    const kept = (await inUse()) ?? (await prepare());
    await wantWhole(kept);
    const there = new Set(await keptOf(kept));
    const missing = Object.keys(kept.list.files).filter((path) => !there.has(path));
    missing.sort((a, b) => +isPage(a) - +isPage(b));
    await Promise.all(missing.slice(0, BATCH).map((path) => keep(kept, path)));
  },

  /** Lets go of all that is kept. */
  drop: () => letGo(),

  /** Has this worker's edition used, with what was kept since it was prepared. */
  async use() {
    lookAgain();
    const own = await begin();
    await carry(own, await inUse());
    await use(own);
    if (scope.registration.waiting) {
      return scope.skipWaiting(); // the pages see their worker change
    }
    for (const client of await scope.clients.matchAll({ includeUncontrolled: true })) {
      client.postMessage("used");
    }
  },

  /** Lists the pages that are kept in the language of a page: the address and the title of each. */
  async pages(path) {
    const kept = await inUse();
    const own = kept ? (await keptOf(kept)).filter((one) => isPage(one) && one in kept.list.files &&
      !one.endsWith(AWAY) && homeOf(one, kept) === homeOf(path, kept)) : [];
    return Promise.all(own.map(async (one) => {
      const text = await (await kept!.cache.match(addressOf(one)))!.text();
      return [addressOf(one), /<h1[^>]*>([^<]*)/.exec(text)?.[1] ?? one];
    }));
  },
};
