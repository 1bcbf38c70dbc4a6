// The learner's record, on the page of the course: for paper, with its code, and as a file.

import { UNFINISHED, writeCode } from "./code";
import { filled, word } from "./data";
import { wayHere } from "./key";
import { join, readProgress, VERSION } from "./progress";
import type { Store } from "./store";
import { dayText, done, score, type Sum } from "./sum";
import type { Syllabus, Word } from "./wire";

const MOST = 1e6; // bytes of a file
const ID = 4; // letters of a course; those of its edition follow

/** A record as a file has it. */
interface RecordFile {
  version: number;
  course: string; // its address, for people
  code: string;
  lessons: unknown;
}

/** Mounts the record. Then is called once it was loaded or cleared. Gives the function that shows it. */
export function mountRecord(course: Syllabus, titles: string[], store: Store, then: () => void): (sums: Sum[]) => void {
  const section = document.querySelector<HTMLElement>(".record")!;
  const one = <E extends HTMLElement = HTMLElement>(selector: string) => section.querySelector<E>(selector)!;
  const said = one("[role=status]");
  const picker = one<HTMLInputElement>("[type=file]");
  section.hidden = false;

  one(".print").onclick = () => {
    const root = document.documentElement.classList;
    root.add("record-alone");
    addEventListener("afterprint", () => root.remove("record-alone"), { once: true });
    print();
  };

  one(".save").onclick = () => {
    const why = store.why();
    if (why) {
      said.textContent = word(why);
      return;
    }
    const link = document.createElement("a");
    const { version, lessons } = store.read();
    const file: RecordFile = { version, course: location.href.split("#")[0]!, code: course.code, lessons };
    link.href = URL.createObjectURL(new Blob([JSON.stringify(file, null, 1) + "\n"], { type: "application/json" }));
    link.download = `${wayHere().split("/").slice(-2)[0] || "course"}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1e4);
    said.textContent = filled("saved", { name: link.download });
  };

  one(".load").onclick = () => picker.click();
  picker.onchange = () => {
    const [file] = picker.files!;
    if (file) {
      read(file).then((found) => {
        said.textContent = filled(found, { name: file.name });
        picker.value = "";
        then();
      });
    }
  };

  const read = async (file: Blob): Promise<Word> => {
    if (file.size > MOST) {
      return "file-large";
    }
    let found: Partial<RecordFile> | null = null;
    try {
      found = JSON.parse(await file.text()) as Partial<RecordFile> | null;
    } catch {
      // it is no JSON, or cannot be read
    }
    const { code } = course;
    const theirs = found?.code;
    if (typeof found?.version !== "number" || typeof theirs !== "string") {
      return "file-damaged";
    }
    if (found.version > VERSION) {
      return "file-newer";
    }
    if (theirs !== code) {
      return theirs.slice(0, ID) === code.slice(0, ID) ? "file-edition" : "file-other";
    }
    const progress = readProgress(found);
    if (!progress) {
      return "file-damaged";
    }
    return store.change((own) => join(own, progress)) ? "loaded" : (store.why() ?? "not-kept");
  };

  one(".clear").onclick = () => {
    const before = store.text();
    if (before === null && said.querySelector("button")) {
      return; // a second tap must not take the way back
    }
    if (!store.clear()) {
      said.textContent = word("not-kept");
      return;
    }
    const back = document.createElement("button");
    back.type = "button";
    back.textContent = word("put-back");
    back.onclick = () => {
      const since = store.read();
      store.put(before);
      store.change((own) => join(own, since)); // another tab may have gone on
      said.textContent = word("is-back");
      then();
    };
    said.replaceChildren(word("record-cleared"), " ", back);
    then();
    back.focus();
  };

  return (sums) => {
    const [finished, right, asked] = [
      sums.filter(({ day }) => day !== UNFINISHED).length,
      sums.reduce((all, sum) => all + sum.right, 0),
      sums.reduce((all, sum) => all + sum.asked, 0),
    ];
    const why = store.why();
    one(".where").textContent = word(why ?? "where-kept");
    one("tbody").replaceChildren(...sums.map((sum, i) => rowOf(titles[i]!, sum)));
    one(".sum").textContent =
      `${filled("lessons-finished", { count: "" + finished, all: "" + sums.length })} ${score(right, asked)}`.trim();
    one(".letters").textContent = writeCode(course.code, sums.map(done));
  };
}

/** A lesson in the table. */
function rowOf(title: string, { day, right, asked }: Sum): HTMLElement {
  const row = document.createElement("tr");
  const head = document.createElement("th");
  head.scope = "row";
  head.textContent = title;
  const cells = [day === UNFINISHED ? word("unfinished") : dayText(day), asked ? filled("right-of", { right: "" + right, all: "" + asked }) : "–"];
  row.append(
    head,
    ...cells.map((text) => {
      const cell = document.createElement("td");
      cell.textContent = text;
      return cell;
    }),
  );
  return row;
}
