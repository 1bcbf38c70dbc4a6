// Loads the scripts that a page is live without: what works ranges (ranges.ts), what comes after (after.ts), what takes
// the page along (paper.ts), what shows a reader's blocks (block.ts), what draws pictures (drawing.ts), and what exercises
// need (practice.ts).

export const RANGES = 0;
export const AFTER = 1;
export const PAPER = 2;
export const BLOCK = 3;
export const DRAWING = 4;
export const PRACTICE = -1; // the last, since not every page has the one before it

const coming: Record<number, Promise<void> | undefined> = {};

/**
 * Loads one of them unless it is there or on its way, and has the fields read again once it is there. Ends when there is
 * no more to wait for, whether it came or not. The page was printed with their tags in a template, where a browser leaves
 * them alone: an address that is set here would need a policy for Trusted Types. A page without a template has all of its
 * scripts in itself, before this one.
 */
export function load(which: number): Promise<void> {
  return (coming[which] ??= new Promise<void>((resolve) => {
    const tags = document.querySelector<HTMLTemplateElement>("template")?.content;
    if (!tags) {
      return resolve();
    }
    const script = document.importNode([...tags.children].at(which)!, true) as HTMLScriptElement;
    script.onload = () => {
      resolve();
      document.dispatchEvent(new Event("change"));
    };
    script.onerror = () => {
      coming[which] = undefined; // the next time that it is needed asks for it again
      resolve();
    };
    document.head.append(script);
  }));
}
