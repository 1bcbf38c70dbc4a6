// Makes a printed page live: the worksheets answer for the reader's own numbers.
//
// The page is complete before this runs, and stays as it was printed where it cannot run. It says nothing that is not
// already in the page, sends nothing anywhere and keeps nothing.

import { makeAsides } from "./aside";
import { readData } from "./data";
import { all, hide, inPlace } from "./element";
import type { Field } from "./field";
import { findFields } from "./fields";
import { makeKeys } from "./keys";
import { loadRanges } from "./later";
import { makeLines } from "./lines";
import { makeMargin } from "./margin";
import { instantiate, type Machine } from "./module";
import { makeNotes } from "./notes";
import { bindReset } from "./reset";
import { makeSheets, settle } from "./sheets";
import { makeShow } from "./show";
import { makeSpeak } from "./speak";
import { makeStanding } from "./standing";
import { makeTables } from "./tables";
import { makeUnits } from "./units";
import { leadToFiles } from "./ways";
import type { Data } from "./wire";
import { makeWorks, readBy } from "./works";

async function start(data: Data): Promise<void> {
  const fields = findFields();
  try {
    if (document.querySelector("[data-start-high]") || data.fixed.some((one) => one.length > 2)) {
      await loadRanges(); // without it the ranges fail, as where there is no WebAssembly
    }
    live(data, fields, await instantiate(data.m));
    setTimeout(loadRanges, 500); // not before the page has been drawn
  } catch {
    // A browser may bring back what was typed on an earlier visit; beside the example's answers it would mislead.
    fields.forEach((field) => {
      field.reset();
      field.lock(true);
    });
  }
}

function live(data: Data, fields: Field[], machine: Machine): void {
  const sheets = makeSheets(data);
  const works = makeWorks(data, fields, machine);
  const { ends } = works;
  const read = readBy(data, works);
  works.fill(true);
  works.work(read); // it fails where a range of the example cannot be worked
  const margin = makeMargin(sheets);
  const parts = [
    makeShow(sheets, fields, works),
    makeLines(sheets, fields, ends),
    makeNotes(sheets, ends),
    makeStanding(sheets),
    makeTables(data, sheets, works),
    margin.update, // it reads what the others have written
  ];
  const speak = makeSpeak(sheets, margin.news);
  const switchUnits = makeUnits();
  const setAside = makeAsides(() => answer());

  /** Takes in every field and brings the page up to date; gives the sheets whose fields have changed. */
  const update = (): Set<number> => {
    const news = fields.filter((field) => field.read());
    if (setAside()) {
      news.push(...fields.filter((field) => field.read()));
    }
    const switched = switchUnits();
    if (switched || news.length) {
      works.fill(false);
      works.work(read);
      settle(sheets, fields, switched ? [] : news, ends);
      inPlace(() => parts.forEach((part) => part()));
    }
    return new Set(news.map((field) => field.sheet));
  };
  const answer = () => {
    const changed = update();
    if (changed.size) {
      speak(changed);
    }
  };

  update();
  fields.forEach((field) => field.lock(false));
  makeKeys();
  document.addEventListener("input", answer);
  document.addEventListener("change", answer);
  // What a browser brings back on a later visit would be the lists alone, beside the example's numbers.
  all<HTMLSelectElement>("select").forEach((list) => (list.autocomplete = "off"));
  bindReset(fields, answer);
  all("[data-live-only]").forEach((control) => hide(control, false));
  document.body.classList.add("live");
}

leadToFiles();
const data = readData();
if (data) {
  start(data);
}
