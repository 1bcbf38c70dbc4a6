const STRETCH = 5; // milliseconds of work before the browser gets a turn; a slow phone needs no more of them for one step

/**
 * Gives the function to wait for between the steps of a long work: it lets the browser draw and answer a tap once the
 * script has worked for a while. Without that a page of many worksheets does not scroll while it starts.
 */
export function makeTurns(): () => Promise<void> {
  let begun = performance.now();
  return async () => {
    if (performance.now() - begun > STRETCH) {
      await new Promise((resolve) => setTimeout(resolve));
      begun = performance.now();
    }
  };
}
