// What a reader does on a guide's page, and what then is there.
import { complete } from './visit.mjs';

// A name for the input of a given: worksheet "soil", given "nitrate".
export const field = (page, sheet, given) => page.locator(`[id="${sheet}-${given}"]`);

// type puts a text into a field as a reader would, key by key.
export async function type(input, text) {
  await input.fill('');
  await input.pressSequentially(text);
}

// put gives a field the same values one after another as typing does, without the keyboard: for the many trials of what
// comes of a number, where it is not the question how it is typed.
export function put(input, text) {
  return input.evaluate((element, typed) => {
    // A field for a day takes no part of one.
    for (let keys = element.type === 'date' ? typed.length : 0; keys <= typed.length; keys++) {
      element.value = typed.slice(0, keys);
      element.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }
    element.dispatchEvent(new Event('change', { bubbles: true }));
  }, text);
}

// choose takes the option of a list that is at index, without the pointer.
export function choose(select, index) {
  return select.evaluate((element, at) => {
    element.selectedIndex = at;
    element.dispatchEvent(new InputEvent('input', { bubbles: true }));
    element.dispatchEvent(new Event('change', { bubbles: true }));
  }, index);
}

// reset goes back to the example of a worksheet by its button.
export async function reset(page, sheet) {
  await page.locator(`#worksheet-${sheet} button[data-reset]`).click();
  await page.evaluate(() => document.activeElement.blur());
}

// restore is reset without the pointer; a button that is not there to be pressed is a fault.
export function restore(page, sheet) {
  return page.locator(`#worksheet-${sheet} button[data-reset]`).evaluate((button) => {
    if (!button.checkVisibility() || button.disabled) {
      throw new Error('the button that brings the example back is not there');
    }
    if (/example|ejemplo/i.test(button.textContent)) { // after that it would bring the reader's numbers back
      button.click();
    }
    document.activeElement.blur();
  });
}

// state gives all that a guide shows, by worksheet name, part of the text and table cell.
export function state(page) {
  return page.evaluate(() => {
    dispatchEvent(new Event('beforeprint')); // work that is out of sight is written in a pause, or for paper
    const names = Object.fromEntries([...document.querySelectorAll('section.worksheet')]
      .map((section) => [section.dataset.sheet, section.id.replace(/^worksheet-/, '')]));
    const seen = (element) => element.checkVisibility();
    const text = (element) => element.textContent.replaceAll(/\s+/g, ' ').trim();
    // A remark without what is hidden in it; its signal word is followed by a colon, as in the program's answer.
    const said = (element) => {
      const copy = element.cloneNode(true);
      copy.querySelectorAll('[hidden]').forEach((hidden) => hidden.remove());
      copy.querySelector('strong')?.append(':');
      return text(copy);
    };
    const all = (selector, root = document) => [...root.querySelectorAll(selector)];
    const name = (element) => names[element.closest('[data-sheet]')?.dataset.sheet];
    // A number of a note in the margin; of a given of two kinds of quantity, the one that is seen.
    const shown = (own) => {
      const parts = all('[data-show]', own);
      return parts.length > 1 ? parts.find((number) => !number.closest('[data-kind][hidden]')) : parts[0];
    };
    const own = (entry) => ({
      label: text(entry.querySelector('b')), number: text(shown(entry)), by: shown(entry).dataset.by ?? '1/1',
      sheet: name(entry), seen: seen(entry), says: text(entry.lastElementChild),
    });
    // The parts of the text that share a note: their figures, and what the note gives for them.
    const passages = [];
    let figures = [];
    for (const found of all('article a.worked, article .margin.own')) {
      if (found.matches('.passage *')) {
        continue;
      }
      if (found.matches('a')) {
        figures.push(text(found));
      } else {
        passages.push({ figures, owns: all('[data-sheet]', found).map(own) });
        figures = [];
      }
    }
    const worksheets = {};
    for (const section of all('section.worksheet')) {
      worksheets[name(section)] = {
        answers: all('.answer :is(dd, td > span)', section).filter(seen).map(text),
        remarks: all(':is(.remarks, .signals) > :not([data-refusal])', section).filter(seen).map(said),
        words: all('.words > *', section).filter(seen).map(said),
        work: all('.work li', section).filter(seen).map((line) => all('math [data-show]', line).filter(seen).map(text)),
        void: section.classList.contains('void'),
        yours: section.classList.contains('yours'),
        waiting: all('[data-void-for]', section).some(seen),
        refusals: all('[data-refusal]', section).filter(seen).map(text),
        faults: all('.fault', section).filter(seen).map(text),
        units: Object.fromEntries(all('select[data-unit-for]', section).map((list) => [
          list.dataset.unitFor.slice(section.id.length - 'worksheet-'.length + 1),
          Object.fromEntries([...list.options].map((option) => [option.text, option.value])),
        ])),
      };
    }
    return {
      worksheets,
      passages,
      tables: all('figure:not(.reference, .drawing) table').map((table) => all('tbody tr', table).map((row) => all('td', row).map((cell) => ({
        text: text(cell.firstChild), marked: cell.classList.contains('marked'),
        near: cell.classList.contains('near'),
        notes: all('.mark-note, .near-note', cell).filter(seen).map((note) => note.className),
      })))),
      // Everything bound to a worksheet, wherever it stands, but for work that is out of sight, and for the givens, which
      // stay when answers are refused: the texts with a digit.
      bound: Object.fromEntries(Object.entries(names).map(([i, sheet]) => [sheet,
        all(`[data-sheet="${i}"] [data-show]`).filter((one) => (
          !one.closest('.linked, [data-refusal]') && (seen(one) || !one.closest('.work')))).map(text)
          .filter((shows) => /\d/.test(shows))])),
    };
  });
}

// whole gives everything that makes up the page's look, to compare two moments to the letter: but for the spoken
// lines and the button that goes back, which tell of a change and so differ from what was there before any.
export async function whole(page) {
  await complete(page);
  return page.evaluate(() => {
    dispatchEvent(new Event('beforeprint'));
    const texts = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { parentElement: around, data } = walker.currentNode;
      if (data.trim() !== '' && around.checkVisibility() && !around.closest('[role=status], [data-reset]')) {
        texts.push(data);
      }
    }
    return {
      texts,
      fields: [...document.querySelectorAll('input, select')].map((input) => input.value),
      // The classes of the body tell how far the script is, not what a reader sees.
      marks: [...document.querySelectorAll('body :is([class], [aria-invalid], [hidden])')].map((element) => (
        `${element.tagName} ${element.id} ${[...element.classList].sort().join(' ')} `
        + `${element.getAttribute('aria-invalid') ?? ''} ${element.hidden}`)),
    };
  });
}
