// Makes a printed page live: the worksheets answer for the reader's own numbers.
//
// The page is complete before this runs, and stays as it was printed where it cannot run. It says nothing that is not
// already in the page, sends nothing anywhere and keeps nothing.

import { readData, type PageData } from "./data";
import { all, hide } from "./element";
import { findFields, type Field } from "./field";
import { instantiate, type Machine } from "./module";
import { makeNotes } from "./notes";
import { bindReset } from "./reset";
import { makeSheets, settle } from "./sheets";
import { makeShow } from "./show";
import { makeSpeak } from "./speak";
import { makeStanding } from "./standing";
import { makeTables } from "./tables";
import { leadToFiles } from "./ways";

async function start(data: PageData): Promise<void> {
  const fields = findFields();
  try {
    live(data, fields, await instantiate(data.m));
  } catch {
    // A browser may bring back what was typed on an earlier visit; beside the example's answers it would mislead.
    fields.forEach((field) => {
      field.reset();
      field.lock(true);
    });
  }
}

function live(data: PageData, fields: Field[], machine: Machine): void {
  const { cells } = machine;
  const sheets = makeSheets(data);
  const fill = (example: boolean) => fields.forEach((field) => field.write(cells, example));
  data.fixed?.forEach(([cell, value]) => (cells[cell] = value));
  fill(true);
  machine.run(); // so that each part can see the example's values
  const parts = [
    makeShow(sheets, cells),
    makeNotes(sheets, cells),
    makeStanding(sheets),
    makeTables(data, sheets, machine, fill),
  ];
  const speak = makeSpeak(sheets, fields);

  /** Takes in every field and brings the page up to date; gives the sheets whose fields have changed. */
  const update = (): Set<number> => {
    const changed = new Set(fields.filter((field) => field.read()).map((field) => field.sheet));
    if (changed.size) {
      fill(false);
      machine.run();
      settle(sheets, fields, cells);
      parts.forEach((part) => part());
    }
    return changed;
  };
  const answer = () => {
    const changed = update();
    if (changed.size) {
      speak(changed);
    }
  };

  update();
  fields.forEach((field) => field.lock(false));
  document.addEventListener("input", answer);
  document.addEventListener("change", answer);
  addEventListener("pageshow", update); // some browsers bring back what was typed only now
  bindReset(fields, answer);
  all("[data-live-only]").forEach((control) => hide(control, false));
  document.body.classList.add("live");
}

leadToFiles();
const data = readData();
if (data) {
  start(data);
}
