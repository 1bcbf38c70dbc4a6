/** The way to this page, by which it keeps things on the device. In a file that has many, its place there belongs to it. */
export const wayHere = (): string => location.pathname + document.body.id;

/** The same of a page to which a way leads from this one. */
export function wayTo(way: string): string {
  const { id } = document.body;
  return id ? location.pathname + "#" + new URL(way, "file:" + id.slice(1)).pathname : new URL(way, location.href).pathname;
}
