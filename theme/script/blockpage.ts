// The reader's blocks on the page about one block: chosen, named, copied, removed, saved as a file and loaded.

import { makeFiles } from "./blockfile";
import { makeForm } from "./blockform";
import { blocksKey } from "./blockkey";
import { changeBlocks, freeName, loadBlocks, noBlocks, type Block, type Blocks } from "./blockstore";
import { filled, word } from "./data";
import { hide } from "./element";
import { wayHere } from "./key";
import { copy } from "./keeper";
import { BLOCK_NAME, LINK } from "./kept";
import type { Page } from "./page";
import type { Word } from "./wire";

const LONGEST = 50; // letters of a name, as in its field
const PAUSE = 400; // milliseconds after the last change, before it is kept

export function mountBlocks(panel: HTMLElement, page: Page, then: () => void): void {
  const one = <E extends HTMLElement = HTMLElement>(selector: string) => panel.querySelector<E>(selector)!;
  const said = one("[role=status]");
  const list = one<HTMLSelectElement>("select");
  const name = one<HTMLInputElement>("input[type=text]");
  const form = makeForm(page, then);
  const example = list.options[0]!;
  let current = -1; // the block whose numbers the form has
  let came = ""; // the name that a link brought
  let before: Block | undefined; // the block as it was when it was chosen
  let timer: number | undefined;
  panel.hidden = false;
  const lead = document.querySelector(".known > .hint")!;
  const leads = lead.textContent!;
  document.querySelector(".room p")!.textContent = location.host + location.pathname;

  const say = (text: string, ...more: Node[]) => said.replaceChildren(text, ...more);
  /** What the first line of the page says: it is far above, and what it said of other numbers holds no longer. */
  const head = (text: string) => (document.getElementById("state")!.textContent = text);
  const kept = (): Blocks => loadBlocks() ?? noBlocks();
  page.block = () => kept().blocks[current]?.name ?? "";
  const offer = (text: Word, act: () => void): Node => {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = word(text);
    button.onclick = act;
    return button;
  };

  /** Shows which blocks there are. */
  const refresh = (): void => {
    const { blocks } = kept();
    list.replaceChildren(example, ...blocks.map((block) => new Option(block.name)));
    list.selectedIndex = current + 1;
    name.value = blocks[current]?.name ?? came;
    document.querySelectorAll(".sheet-name").forEach((title) => (title.textContent = name.value));
    panel.querySelectorAll<HTMLElement>(".of-block").forEach((button) => hide(button, current < 0));
    current < 0 || head(filled("block-kept", { name: name.value }));
    lead.replaceChildren(...current < 0 ? [leads] : [filled("block-shown", { name: name.value }) + " ", offer("another-block", () => {
      choose(-1);
      document.querySelector<HTMLElement>(".known select")!.focus();
    })]);
  };

  /** Changes what is kept, and says why where that cannot be. While the form is typed in, a name that is begun stays. */
  const change = (how: (kept: Blocks) => void, typing = false): boolean => {
    const why = changeBlocks((blocks) => {
      how(blocks);
      blocks.current = current;
      blocks.page = wayHere();
    });
    if (why) {
      say(word(why));
    }
    if (!typing) {
      refresh();
    }
    return !why;
  };

  /** Keeps what is in the form. Where the browser has let go of the block meanwhile, it is kept again. */
  const keep = (): void => {
    clearTimeout(timer);
    timer = undefined;
    if (current >= 0) {
      change(({ blocks }) => {
        const block = blocks[current];
        block ? Object.assign(block, form.read()) : (current = blocks.push({ name: freeName(blocks, name.value), ...form.read() }) - 1);
      }, true);
    }
  };
  const keepSoon = (): void => {
    clearTimeout(timer);
    timer = window.setTimeout(keep, PAUSE);
  };

  /** Puts a block, or the example, into the form. */
  const choose = (at: number): void => {
    const block = kept().blocks[at];
    current = block ? at : -1;
    before = block;
    came = "";
    const unfit = block ? form.write(block) : (form.clear(), 0);
    then();
    document.dispatchEvent(new Event("block"));
    change(() => {});
    block || head(word("example-shown"));
    say(block ? filled("block-shown", { name: block.name }) : word("example-shown"));
    if (unfit) {
      said.append(" ", word("left-out"));
    } else if (block) {
      keep(); // what an older edition worked is worked again
    }
  };

  /** Shows the name that a link brought. Its numbers are of no block that is kept. */
  const takeName = (): void => {
    if (location.hash.startsWith(LINK)) {
      const whole = (new URLSearchParams(location.hash).get(BLOCK_NAME) ?? "").replace(/[\p{Cc}\p{Cf}]/gu, "").trim();
      current = -1;
      came = [...whole].slice(0, LONGEST).join("");
      refresh();
      if (came) {
        say(filled("block-linked", { name: came }) + (came === whole ? "" : " " + word("name-cut")));
      }
    }
  };

  /**
   * Adds a block with the numbers of the form. Whoever has typed them over those of another block and then keeps them as a
   * new one has that other block as it was, and may give them to both.
   */
  const add = (title: string, old?: Block): void => {
    let as = "";
    const from = current;
    const numbers = form.read();
    const restore = old && JSON.stringify(old.facts) !== JSON.stringify(numbers.facts);
    const worked = change(({ blocks }) => {
      if (restore && blocks[from]) {
        Object.assign(blocks[from], old, { name: blocks[from].name });
      }
      as = freeName(blocks, title);
      current = blocks.push({ name: as, ...numbers }) - 1;
    });
    if (!worked) {
      current = from;
      refresh();
      return;
    }
    before = kept().blocks[current];
    say(filled("block-kept", { name: as }) + " ");
    if (restore) {
      say(said.textContent + filled("as-before", { name: kept().blocks[from]!.name }) + " ", offer("these-too", () => {
        change(({ blocks }) => blocks[from] && Object.assign(blocks[from], numbers));
        say(filled("block-kept", { name: kept().blocks[from]!.name }));
      }));
    }
  };

  list.onchange = () => choose(list.selectedIndex - 1);
  one(".keep").onclick = () => {
    const title = name.value.trim();
    if (!title) {
      say(word("name-it"));
      name.focus();
    } else {
      add(title, before);
    }
  };
  one(".copy").onclick = () => add(name.value);
  one(".rename").onclick = () => {
    let as = "";
    if (change(({ blocks }) => {
      as = freeName(blocks, name.value, current);
      blocks[current] && (blocks[current].name = as);
    })) {
      say(filled("block-renamed", { name: as }));
    }
  };
  one(".remove").onclick = () => {
    const at = current;
    const block = kept().blocks[at];
    if (!block) {
      return;
    }
    current = -1;
    if (change(({ blocks }) => blocks.splice(at, 1))) {
      const back = offer("put-back", () => {
        if (change(({ blocks }) => blocks.splice(at, 0, block))) {
          choose(at);
        }
      });
      const gone = filled("block-removed", { name: block.name });
      say(gone + " ", back);
      head(gone);
      (back as HTMLElement).focus();
    }
  };
  makeFiles(panel, kept, (text) => say(text), (more) => change(({ blocks }) => blocks.push(...more)));

  ["input", "change"].forEach((event) =>
    document.addEventListener(event, ({ target }) => panel.contains(target as Node) || keepSoon()));
  addEventListener("pagehide", () => timer && keep());
  addEventListener("storage", ({ key }) => {
    if (key === blocksKey()) {
      const before = name.value;
      const at = kept().blocks.findIndex((block) => block.name === before);
      if (current >= 0 && at !== current) {
        current = at;
      }
      refresh();
      if (before) {
        const others = filled("other-tab", { name: before });
        say(others + " ", offer("show-it", () => choose(current)));
        head(others);
      }
    }
  });
  // The keeper has made the link by now; the name of the block goes behind its numbers.
  one("[data-link]").addEventListener("click", () => {
    if (name.value && location.hash.startsWith(LINK)) {
      try {
        history.replaceState(history.state, "", `${location.href}&${BLOCK_NAME}=${encodeURIComponent(name.value)}`);
      } catch {
        // a browser may forbid it: the link is without the name
      }
    }
    copy(location.href).then(() => say(word("copied")), () => say(word("in-address")));
  });
  addEventListener("hashchange", takeName);
  const start = loadBlocks();
  if (!start) {
    say(word("blocks-not-readable"));
  }
  if (start && start.current >= 0 && !location.hash.startsWith(LINK)) {
    choose(start.current);
  } else {
    refresh();
    takeName();
  }
}
