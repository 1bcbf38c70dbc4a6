// Under which name the blocks of a site are kept on the device: two sites of one host do not mix.

/**
 * The name: it has the way to the root of the site, which the style sheet of every page is one folder below. A page with
 * its style in itself tells the way.
 */
export function blocksKey(): string {
  const style = document.querySelector<HTMLLinkElement>("link[rel=stylesheet]");
  const root = style ? new URL("..", style.href) : new URL(document.documentElement.dataset["root"]!, location.href);
  return "blocks " + root.pathname;
}

/** What is kept, as a text; null for nothing. A browser may forbid that anything is. */
export function keptBlocks(): string | null {
  try {
    return localStorage.getItem(blocksKey());
  } catch {
    return null;
  }
}
