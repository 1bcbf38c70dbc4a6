// Gets an edition ready, and says what it has not.

import { OWN, addressOf, begin, inUse, isWhole, keep, keptOf, use, wantWhole, type Edition } from "./workerkept";
import { site } from "./workerscope";

export const AWAY = "offline/index.html"; // the page that says what is not there, in the folder of each home page

/** Keeps of this worker's edition what is kept of the one in use. The first of all is in use at once. */
export async function prepare(): Promise<Edition> {
  const [before, own] = [await inUse(), await begin()];
  await carry(own, before);
  if (!before) {
    await use(own);
  }
  return own;
}

/** Keeps of this worker's edition what is kept of another, and the pages that say what is not there. */
export async function carry(own: Edition, before: Edition | null): Promise<void> {
  const files = Object.keys(own.list.files);
  const whole = before && (await isWhole(before));
  const wanted = whole ? files : before ? await keptOf(before) : [];
  for (const path of [...files.filter((path) => path.endsWith(AWAY)), ...wanted]) {
    await keep(own, path, before?.name === OWN ? null : before);
  }
  if (whole) {
    await wantWhole(own);
  }
}

/** The folder of the home page that a page belongs to, such as "es/". */
export const homeOf = (path: string, { list }: Edition): string =>
  Object.keys(list.files)
    .filter((name) => name.endsWith(AWAY) && path.startsWith(name.slice(0, -AWAY.length)))
    .reduce((longest, name) => (name.length > longest.length ? name : longest), AWAY)
    .slice(0, -AWAY.length);

/** Leads to the page that says what is not there, in the language of what was asked for. */
export async function away(path: string, kept: Edition | null): Promise<Response> {
  if (!kept) {
    return Response.error();
  }
  const folder = addressOf(path + "/index.html"); // a reader may leave out the last slash
  return Response.redirect((await kept.cache.match(folder)) ? folder
    : `${addressOf(homeOf(path, kept) + AWAY)}#${addressOf(path).slice(site.length)}`);
}
