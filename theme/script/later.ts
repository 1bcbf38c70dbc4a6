// Loads the script that works ranges (ranges.ts). No page waits for it whose numbers are single ones.

let coming: Promise<void> | undefined;

/**
 * Loads the script unless it is there or on its way, and has the fields read again once it is there. Ends when there is
 * no more to wait for, whether it came or not. The page was
 * printed with its tag in a template, where a browser leaves it alone: an address that is set here would need a policy
 * for Trusted Types.
 */
export function loadRanges(): Promise<void> {
  return (coming ??= new Promise<void>((resolve) => {
    const tag = document.querySelector<HTMLTemplateElement>("template")!;
    const script = document.importNode(tag.content, true).firstElementChild as HTMLScriptElement;
    script.onload = () => {
      resolve();
      document.dispatchEvent(new Event("change"));
    };
    script.onerror = () => {
      coming = undefined; // the next range that is typed asks for it again
      resolve();
    };
    document.head.append(script);
  }));
}
