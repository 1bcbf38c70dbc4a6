// The language of a first visit. A reader who opens the home page of the main language as the first page, with a browser
// that asks for another language of the site, gets the home page of that one. It happens once: from then on the reader
// chooses, and the device keeps that the visit was. Where nothing can be kept, nothing happens.

const script = document.currentScript as HTMLScriptElement;
const key = "language " + new URL("..", script.src).pathname; // of this site, of several at one address
const links = [...document.querySelectorAll<HTMLAnchorElement>(".languages a[hreflang]")];

/** What a tag such as "es-US" says of the language. */
const primary = (tag: string): string => tag.split("-")[0]!.toLowerCase();

/** The home page that the browser asks for, from here; undefined where this is it. */
function asked(): HTMLAnchorElement | undefined {
  const here = primary(document.documentElement.lang);
  for (const tag of navigator.languages) {
    const link = links.find(({ hreflang }) => primary(hreflang) === primary(tag));
    // From no other page does the way to the other language not go up first.
    if (primary(tag) === here || link) {
      return link?.getAttribute("href")?.startsWith(".") ? undefined : link;
    }
  }
  return undefined;
}

try {
  if (location.protocol !== "file:" && localStorage.getItem(key) === null) {
    localStorage.setItem(key, document.documentElement.lang);
    const home = asked();
    if (home) {
      location.replace(home.href + location.hash);
    }
  }
} catch {
  // Without a store the page stays as it is: it could not know that the reader came back by choice.
}
