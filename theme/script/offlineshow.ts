// Shows at the foot of a page what is kept on the device, with the button that keeps the whole site, or lets go of it.

import { filled, word } from "./data";
import { linked } from "./fillin";
import type { Ask, Reason } from "./offlineask";
import type { Word } from "./wire";

interface Kept {
  page: boolean;
  asked: boolean; // the whole site
  bytes: number; // of the whole site
  missing: number; // bytes of it that are not there
}

const sentences: Record<Reason, Word> = {
  signal: "keep-signal", changed: "keep-changed", room: "keep-room", refused: "keep-refused",
};

/** Puts it there. Gives what brings it up to date. */
export function mount(ask: Ask, home: string): (why?: Reason) => Promise<void> {
  const box = document.createElement("div");
  const [name, place] = [document.createElement("dt"), document.createElement("dd")];
  name.append(linked(home + "offline/", word("offline")));
  const line = document.createElement("p");
  line.setAttribute("role", "status");
  const button = document.createElement("button");
  button.type = "button";
  place.append(line, button);
  box.append(name, place);

  const offer = (text: string, deed: () => Promise<void>) => {
    button.textContent = text;
    button.onclick = deed;
    button.hidden = false;
  };
  const show = async (why?: Reason | "gone"): Promise<void> => {
    const kept = await ask<Kept | null>("tell").catch(() => null);
    const whole = kept?.asked && !kept.missing;
    const size = (bytes: number) => filled("size", { number: Math.max(bytes / 1e6, 0.1).toFixed(1) });
    line.textContent = why === "gone" ? word("keep-gone") : why ? word(sentences[why])
      : whole ? filled("keep-whole", { size: size(kept.bytes) }) : word(kept?.page ? "keep-page" : "keep-none");
    if (whole) {
      offer(word("keep-drop"), drop);
    } else if (kept) {
      offer(filled(kept.asked ? "keep-rest" : "keep-all", { size: size(kept.asked ? kept.missing : kept.bytes) }), keep);
    } else {
      button.hidden = true;
    }
    box.isConnected || document.querySelector(".foot dl")!.append(box);
  };
  const drop = () => ask("drop").then(() => show("gone"), show);
  const keep = async (): Promise<void> => {
    button.hidden = true;
    navigator.storage?.persist?.();
    try {
      for (let kept; (kept = await ask<Kept | null>("tell")) && (!kept.asked || kept.missing); ) {
        const done = Math.floor((1 - kept.missing / kept.bytes) * 100);
        line.textContent = filled("keeping", { share: "" + done });
        await ask("more");
      }
      await show();
    } catch (why) {
      await show(why as Reason);
    }
    button.focus();
  };
  return async (why) => {
    await show(why === "room" || why === "refused" ? why : undefined);
    const kept = await ask<Kept | null>("tell").catch(() => null);
    if (kept?.asked && kept.missing && navigator.onLine) {
      await keep(); // the reader left the page before all was there
    }
  };
}
