/** The way to this page from any other, with its place in a file that has many. */
export function wayHere(): string {
  const { page } = document.body.dataset;
  return location.pathname + (page ? "#" + page : "");
}

/**
 * By what a page keeps things on the device: its path, or that of a page to which a way leads from it. A page of a file
 * that has many (opener.ts) has its place there on its body.
 */
export function pathOf(way = ""): string {
  const { pathname } = location;
  const { page } = document.body.dataset;
  return page ? pathname + new URL(way, "file:" + page).pathname : way ? new URL(way, location.href).pathname : pathname;
}
