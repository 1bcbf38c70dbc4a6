// Takes a page along: printed, with a code that leads back to the same numbers; as a text; as a file. Nobody waits for it.

import { filled, word } from "./data";
import { all, hide } from "./element";
import type { Keeper } from "./keeper";
import { BLOCK_NAME, LINK } from "./kept";
import { listEntries } from "./listed";
import type { Page } from "./page";
import { codeOf, type Code } from "./qr";
import { blockOf, linkedName, liveAddress, whose } from "./source";
import { mountTake } from "./take";

const SVG = "http://www.w3.org/2000/svg";
const MARGIN = 4; // light modules around a code: ISO/IEC 18004
const MODULE = 0.4; // millimeters of a side, which cameras of telephones still tell apart: common practice
const LEAST = 22; // millimeters of a code
const SHORT = 6; // letters that the printed field of a number has room for

globalThis.comePaper = (page, keeper) => {
  page.edition = keeper?.edition;
  mountTake(page, keeper);
  all("[data-print]").forEach((button) => (button.onclick = printAll));
  const [top, foot] = [makeElement("p", "whose"), makeElement("div", "way-back")];
  document.querySelector(".head")?.after(top);
  const notes = document.querySelector(".room h2"); // on the sheet of a block
  notes ? notes.after(foot) : document.querySelector(".foot")?.prepend(foot);
  onbeforeprint = () => {
    const from = whose(page);
    top.textContent = from;
    hide(top, !page.fields.some(({ changed }) => changed));
    foot.replaceChildren(...leadBack(page, keeper, from));
    all<HTMLInputElement>(".field input").forEach((input) => input.value.length > SHORT && (input.size = input.value.length));
  };
  const sayWhose = () => linkedName(page) && document.getElementById("state")!.append(" ", whose(page));
  sayWhose();
  addEventListener("hashchange", sayWhose);
  document.body.classList.add("paper");
};

function makeElement(name: string, className: string): HTMLElement {
  const element = document.createElement(name);
  element.className = className;
  return element;
}

/** The code with a sentence, or a sentence that says why there is none. */
function leadBack(page: Page, keeper: Keeper | undefined, from: string): Element[] {
  const address = liveAddress();
  const numbers = keeper ? listEntries(page.fields, keeper.edition) : "";
  const link = address + (numbers && LINK + numbers);
  const name = numbers && blockOf(page);
  const code = address && (name && codeOf(`${link}&${BLOCK_NAME}=${encodeURIComponent(name)}`) || codeOf(link));
  const sentence = document.createElement("p");
  const says = code ? word(page.fields.length ? "code" : "code-page") : address ? filled("code-full", { address }) : word("no-address");
  sentence.textContent = `${from} ${says}`.trim();
  return code ? [picture(code, says), sentence] : [sentence];
}

/** Draws a code. */
function picture({ size, dark }: Code, says: string): Element {
  const make = (part: string) => document.createElementNS(SVG, part);
  const [picture, name, path] = [make("svg"), make("title"), make("path")];
  let d = "";
  dark.forEach((value, i) => (d += value ? `M${i % size} ${Math.floor(i / size)}h1v1h-1z` : ""));
  const whole = size + 2 * MARGIN;
  const side = Math.max(LEAST, whole * MODULE) + "mm";
  Object.entries({ viewBox: `${-MARGIN} ${-MARGIN} ${whole} ${whole}`, width: side, height: side, role: "img", "shape-rendering": "crispEdges" })
    .forEach(([attribute, value]) => picture.setAttribute(attribute, value));
  name.textContent = says;
  path.setAttribute("d", d);
  picture.append(name, path);
  return picture;
}

/** Prints a page with all that is folded. What it opens for that is closed again. */
function printAll(): void {
  const closed = all<HTMLDetailsElement>("details:not([open])");
  const fold = (open: boolean) => closed.forEach((one) => (one.open = open));
  fold(true);
  addEventListener("afterprint", () => fold(false), { once: true });
  print();
}
