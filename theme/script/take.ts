// Takes a worksheet along: as a link, as a text, or as a file for a spreadsheet.

import { csv } from "./csv";
import { filled, word } from "./data";
import { all, hide, numberIn } from "./element";
import { wayHere } from "./key";
import { copy, type Keeper } from "./keeper";
import type { Page } from "./page";
import { isVoid } from "./sheets";
import { answers, givens, shownText, type Named } from "./sheettext";
import { liveAddress, whose } from "./source";

/** Mounts what the button at the foot of each worksheet opens. */
export function mountTake(page: Page, keeper?: Keeper): void {
  all("[data-take]").forEach((opener) => mountRow(opener, page, keeper));
}

function mountRow(opener: HTMLElement, page: Page, keeper?: Keeper): void {
  const worksheet = opener.closest<HTMLElement>(".worksheet")!;
  const sheet = numberIn(worksheet, "data-sheet");
  const given = () => givens(worksheet, page.fields.filter((field) => field.sheet === sheet));
  const title = worksheet.querySelector("h2")!;
  const address = () => liveAddress() && liveAddress() + (keeper?.fragment() ?? "");
  const said = document.createElement("p");
  const spoken = worksheet.querySelector("[role=status]")!;
  /** Shows what was done, and has the worksheet's one spoken line say it. */
  const tell = (text: string): void => {
    said.textContent = spoken.textContent = text;
  };

  const asText = (): string => {
    const line = (named: Named) => `${named[0]}: ${named[1]} ${named[2]}`.trim();
    return [shownText(title), ...answers(worksheet).map(line),
      ...all(".words > p, .signals > *, .remarks > *", worksheet).filter((one) => !one.hidden).map(shownText),
      ...given().map(line), whose(page), address()].filter(Boolean).join("\n");
  };
  const asTable = (): string => {
    const [about, ...names] = word("about").split(", ");
    const facts = [shownText(document.querySelector("h1")), shownText(title), address(), keeper?.edition ?? "",
      document.querySelector<HTMLTimeElement>(".facts time")?.dateTime ?? "", word("point"), whose(page)];
    const rows = (selector: string, list: Named[]) => list.map(([name, , unit, [from, to = from]]) =>
      [shownText(worksheet.querySelector(selector + " h3")), name, `${from}`, `${to}`, unit]);
    return csv([
      word("columns").split(", "),
      ...rows(".given", given()),
      ...rows(".answer", answers(worksheet)),
      ...names.map((name, i) => [about!, name, facts[i]!, "", ""]),
    ]);
  };

  const actions: [name: string, action: () => void][] = [
    [word("copy-answer"), () => {
      if (isVoid(page.sheets[sheet]!)) {
        tell(word("no-answer"));
      } else {
        copy(asText()).then(() => "answer-copied" as const, () => "not-copied" as const).then((what) => tell(word(what)));
      }
    }],
    [word("save-table"), () => {
      const name = `${wayHere().split("/").slice(-2)[0]}-${worksheet.id.replace("worksheet-", "")}.csv`;
      save(name, asTable());
      tell(filled("table-saved", { name }));
    }],
  ];
  if (keeper && location.protocol !== "file:") {
    actions.unshift([word("link-numbers"), () => void keeper.link().then(tell)]);
  }
  const parts = [...actions.map(([name, action]) => button(name, action)), said];
  parts.forEach((part) => (part.hidden = true));
  opener.after(...parts);
  opener.setAttribute("aria-expanded", "false");
  opener.onclick = (event) => {
    event.stopPropagation(); // the address keeps the numbers that it has
    parts.forEach((part) => hide(part, !part.hidden));
    opener.setAttribute("aria-expanded", `${!said.hidden}`);
  };
}

function button(name: string, action: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = name;
  made.onclick = (event) => {
    event.stopPropagation();
    action();
  };
  return made;
}

/** Has the browser save a file. */
function save(name: string, text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1e4);
}
