import { word } from "./data";
import { all, hide, mark, numberIn, put } from "./element";
import { DRAWING, load } from "./later";
import type { Block, Page } from "./page";
import { mountPart } from "./part";
import { isVoid, type Sheet } from "./sheets";

/** Mounts a worksheet. It is marked while its numbers are the reader's, and while there is no answer. */
export function mountWorksheet(element: Element, page: Page): Block {
  const part = mountPart(element, page);
  const { sheet } = part;
  const waits = makeWaits(element, sheet, false);
  return {
    ...part,
    update() {
      part.update();
      mark(element, "yours", sheet.changed);
      mark(element, "void", isVoid(sheet));
      mark(element, "behind", sheet.changed && !globalThis.comeAfter); // its work, which comes after
      waits();
    },
  };
}

/** Mounts a passage: a part of the text that says what holds for the reader's numbers. */
export function mountPassage(element: Element, page: Page): Block {
  const part = mountPart(element, page);
  const waits = makeWaits(element, part.sheet, true);
  return {
    ...part,
    update() {
      part.update();
      waits();
    },
  };
}

/** Mounts a picture, whose shapes are hidden until the script has come that draws them. */
export function mountDrawing(element: Element, page: Page): Block {
  const passage = mountPassage(element, page);
  const sheet = page.sheets[numberIn(element, "data-sheet")];
  // The press has drawn the example, in US units.
  const other = () => sheet.changed || !!element.querySelector("[data-by*='/']");
  const draw = () => {
    mark(element, "behind", other() && !globalThis.drawPicture);
    globalThis.drawPicture?.(element, isVoid(sheet), page.works.ends);
  };
  return {
    ...passage,
    update() {
      passage.update();
      draw();
      if (other()) {
        load(DRAWING).then(draw);
      }
    },
  };
}

/** Mounts a figure in the text, which is marked while it is the reader's. */
export function mountFigure(element: Element, page: Page): Block {
  const part = mountPart(element, page);
  const glance = element.matches(".glance *");
  return {
    ...part,
    update() {
      part.update();
      mark(element, "yours", glance && part.sheet.changed);
    },
  };
}

/** Gives the function that says what a block waits for. Where it is alone no refusal says why there is nothing. */
function makeWaits(element: Element, sheet: Sheet, alone: boolean): () => void {
  const waits = all("[data-void-for]", element);
  return () => {
    for (const wait of waits) {
      const waiting = alone ? isVoid(sheet) : sheet.waiting || sheet.endless;
      hide(wait, !waiting);
      if (waiting) {
        put(wait, alone ? word("passage-waiting") : sheet.endless ? word("narrow").replace(/:$/, ".") : word("waiting"));
      }
    }
  };
}
