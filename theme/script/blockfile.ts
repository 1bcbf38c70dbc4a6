// Blocks as a file: plain JSON with a version, for another device.

import { freeName, readBlocks, VERSION, type Block, type Blocks } from "./blockstore";
import { filled } from "./data";
import type { Word } from "./wire";

const MOST = 1e6; // bytes of a file
const OF = "blocks of an orchard"; // what the file says that it is

/** Binds the buttons that save and load. Say tells what happened; add keeps more blocks and says whether it could. */
export function makeFiles(
  panel: HTMLElement,
  kept: () => Blocks,
  say: (text: string) => void,
  add: (more: Block[]) => boolean,
): void {
  const picker = panel.querySelector<HTMLInputElement>("[type=file]")!;
  panel.querySelector<HTMLElement>(".save")!.onclick = () => {
    const link = document.createElement("a");
    const { version, blocks } = kept();
    const file = { of: OF, version, blocks: blocks.map(({ name, facts }) => ({ name, facts })) };
    link.href = URL.createObjectURL(new Blob([JSON.stringify(file, null, 1) + "\n"], { type: "application/json" }));
    link.download = "blocks.json";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1e4);
    say(filled("blocks-saved", { name: link.download }));
  };
  panel.querySelector<HTMLElement>(".load")!.onclick = () => picker.click();
  picker.onchange = () => {
    const [file] = picker.files!;
    if (file) {
      take(file).then((found) => {
        if (found) {
          say(filled(found, { name: file.name }));
        }
        picker.value = "";
      });
    }
  };

  /** Adds the blocks of a file to those that are kept, and says what happened; null where that was said. */
  const take = async (file: Blob): Promise<Word | null> => {
    if (file.size > MOST) {
      return "blocks-large";
    }
    let found: { of?: unknown; version?: unknown } | null;
    try {
      found = JSON.parse(await file.text()) as { of?: unknown; version?: unknown } | null;
    } catch {
      return "blocks-damaged"; // it is no JSON, or cannot be read
    }
    if (found?.of !== OF) {
      return "blocks-other";
    }
    if (typeof found.version === "number" && found.version > VERSION) {
      return "blocks-newer";
    }
    const read = readBlocks(found);
    if (!read) {
      return "blocks-damaged";
    }
    const all = [...kept().blocks];
    const more = read.blocks.filter((block) => !all.some((own) => same(own, block)));
    more.forEach((block) => {
      block.name = freeName(all, block.name);
      all.push(block);
    });
    return add(more) ? "blocks-loaded" : null;
  };
}

const same = (a: Block, b: Block): boolean =>
  a.name === b.name && JSON.stringify(Object.entries(a.facts).sort()) === JSON.stringify(Object.entries(b.facts).sort());
