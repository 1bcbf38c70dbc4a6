// Makes a printed page live: the worksheets answer for the reader's own numbers.
//
// The page is complete before this runs, and stays as it was printed where it cannot run. It says nothing that is not
// already in the page, sends nothing anywhere, and keeps what a reader types on the device, until the tab is closed.

import { makeAsides } from "./aside";
import { readData } from "./data";
import { all, inPlace, mark } from "./element";
import type { Field } from "./field";
import { findFields } from "./fields";
import { isKept } from "./kept";
import { AFTER, DRAWING, load, PRACTICE, RANGES } from "./later";
import { makeMargin } from "./margin";
import { instantiate, type Machine } from "./module";
import type { Block, Page } from "./page";
import { mountReckoner } from "./reckoner";
import { bindReset } from "./reset";
import { makeSheets, settle } from "./sheets";
import { makeSpeak } from "./speak";
import { makeTurns } from "./turns";
import { makeUnits } from "./units";
import { leadToFiles } from "./ways";
import type { Whole } from "./data";
import { mountDrawing, mountFigure, mountPassage, mountWorksheet } from "./worksheet";
import { makeWorks, readBy } from "./works";

/** What is mounted on which elements, in the order in which they are brought up to date. Exercises mount their own. */
const MOUNTS: [selector: string, mount: (element: Element, page: Page) => Block][] = [
  [".worksheet", mountWorksheet],
  [".passage", mountPassage],
  [".drawing", mountDrawing],
  ["[data-sheet]:not(.worksheet, .passage, .drawing, [data-exercise] *)", mountFigure],
  ['[data-row="0"][data-col="0"]', (cell, page) => mountReckoner(cell.closest("table")!, page)],
];

async function start(): Promise<void> {
  const turn = makeTurns();
  const fields = findFields();
  try {
    const data = readData();
    if (!data) {
      return;
    }
    const ranged = document.querySelector("[data-start-high]") || data.fixed.some((one) => one.length > 2);
    // The desk puts back itself what was typed.
    const kept = isKept() && !all<HTMLInputElement>(".field input").some((input) => input.value !== input.defaultValue);
    // Without the first the ranges fail, as where there is no WebAssembly. The second brings back what was typed.
    await Promise.all([(ranged || kept) && load(RANGES), kept && load(AFTER)]);
    const machine = await instantiate(data.m);
    await turn();
    const page = await live(data, fields, machine, turn);
    if (data.exercises.length) {
      load(PRACTICE).then(() => globalThis.comePractice?.(page));
    }
    const more = document.querySelector(".drawing") ? [DRAWING] : [];
    setTimeout(() => [RANGES, AFTER, ...more].forEach(load)); // not before the page has been drawn
  } catch {
    // A browser may bring back what was typed on an earlier visit; beside the example's answers it would mislead.
    fields.forEach((field) => {
      field.reset();
      field.lock(true);
    });
  }
}

async function live(data: Whole, fields: Field[], machine: Machine, turn: () => Promise<void>): Promise<Page> {
  const sheets = makeSheets(data);
  const works = makeWorks(data, fields, machine);
  const read = readBy(data, works);
  works.fill(true);
  works.work(read); // it fails where a range of the example cannot be worked
  const page = { data, fields, sheets, works, machine };
  const blocks: Block[] = [];
  for (const [selector, mount] of MOUNTS) {
    for (const element of all(selector)) {
      await turn();
      blocks.push(mount(element, page));
    }
  }
  await turn();
  const margin = makeMargin(sheets);
  const speak = makeSpeak(sheets, margin.news);
  const switchUnits = makeUnits();
  const setAside = makeAsides(() => answer());
  let after: (() => void) | undefined; // brings the work up to date

  /** Takes in every field and brings the page up to date; gives the sheets whose fields have changed. */
  const update = (): Set<number> => {
    const come = !after && globalThis.comeAfter;
    after ??= globalThis.comeAfter?.(page, () => answer());
    const news = fields.filter((field) => field.read());
    if (setAside()) {
      news.push(...fields.filter((field) => field.read()));
    }
    const switched = switchUnits();
    if (switched || news.length) {
      works.fill(false);
      works.work(read);
      settle(sheets, fields, switched ? [] : news, works.ends);
      inPlace(() => {
        blocks.filter((block) => block.fresh()).forEach((block) => block.update());
        margin.update(); // it reads what the others have written
      });
    }
    if (come) {
      all(".behind").forEach((worksheet) => mark(worksheet, "behind", false));
    }
    if (switched || news.length || come) {
      after?.();
    }
    return new Set(news.map((field) => field.sheet));
  };
  const answer = () => {
    const changed = update();
    if (changed.size) {
      speak(changed);
      load(AFTER); // it keeps what was typed
    }
  };

  update();
  fields.forEach((field) => field.lock(false));
  document.addEventListener("input", answer);
  document.addEventListener("change", answer);
  // What a browser brings back on a later visit would be the lists alone, beside the example's numbers.
  all<HTMLSelectElement>("select").forEach((list) => (list.autocomplete = "off"));
  bindReset(fields, answer);
  document.body.classList.add("live");
  return page;
}

leadToFiles();
start();
