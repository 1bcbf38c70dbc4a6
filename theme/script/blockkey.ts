// Under which name the blocks of a site are kept on the device: two sites of one host do not mix.

/** The name: it has the way to the root of the site, which the style sheet of every page is one folder below. */
export function blocksKey(): string {
  const { href } = document.querySelector<HTMLLinkElement>("link[rel=stylesheet]")!;
  return "blocks " + new URL("..", href).pathname;
}

/** What is kept, as a text; null for nothing. A browser may forbid that anything is. */
export function keptBlocks(): string | null {
  try {
    return localStorage.getItem(blocksKey());
  } catch {
    return null;
  }
}
