// The answer comes first: on a phone it is within one screen of what is given, on a wide screen beside it; nothing on a
// page moves while it loads; on paper a worksheet is whole. The figures are printed.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { settings } from './settings.mjs';
import { guides, pages } from './site.mjs';
import { start, visit } from './visit.mjs';

const phone = { width: 390, height: 780, folded: true };
const wide = { width: 1280, height: 800, folded: true };
const few = 3; // givens that fit on one screen with their answer
const paper = { letter: { width: 7.3 * 96, height: 10 * 96 }, A4: { width: 7.07 * 96, height: 10.69 * 96 } };

const together = { concurrency: 3 }; // most of the time a page waits for the script that comes after it

const { browser, origin } = await start(settings.site);

describe('the answer first', together, () => {
  for (const path of guides) {
    test(`/${path} on a phone`, async (t) => {
      const { page, close } = await visit(browser, `${origin}/${path}`, phone);
      t.after(close);
      const { sheets, screens } = await page.evaluate(measure);
      t.diagnostic(`/${path} ${screens.toFixed(1)} screens; ${sheets.map(({ name, givens, whole, gap }) => (
        `${name}: ${givens} givens, ${whole} px with the answer, ${gap} px between`)).join('; ')}`);
      for (const { name, givens, whole, gap } of sheets) {
        assert.ok(gap <= phone.height, `${name}: the first answer is ${gap} px below the last given`);
        assert.ok(givens > few || whole <= phone.height, `${name}: ${givens} givens and the answer take ${whole} px`);
      }
      assert.deepEqual(await page.evaluate(hiddenInFolds), [], 'a caution, or a given with a number, is in a closed fold');
    });

    test(`/${path} on a wide screen and on paper`, async (t) => {
      const { page, close } = await visit(browser, `${origin}/${path}`, wide);
      t.after(close);
      const { sheets } = await page.evaluate(measure);
      for (const { name, below } of sheets) {
        assert.ok(below <= wide.height, `${name}: the answer ends ${below} px below the top of its worksheet`);
      }
      await page.emulateMedia({ media: 'print' });
      for (const side of Object.values(paper)) {
        await page.setViewportSize({ width: Math.floor(side.width), height: Math.floor(side.height) });
        for (const { name, height, keeps } of await page.evaluate(printed)) {
          assert.ok(keeps && height <= side.height, `${name} is ${height} px long, and may part from its answer`);
        }
      }
    });
  }
});

test('a printed worksheet shows its numbers, in the style of each page', async (t) => {
  const { page, close } = await visit(browser, origin, { folded: true });
  t.after(close);
  await page.emulateMedia({ media: 'print' });
  const styles = worksheetsByStyle();
  for (const path of styles.values()) {
    await page.goto(`${origin}/${path}`);
    const { shown, hidden } = await page.evaluate(numbersOnPaper);
    assert.ok(shown > 0, `/${path} shows no number`);
    assert.deepEqual(hidden, [], `/${path}`);
  }
  t.diagnostic([...styles.values()].join(' '));
});

// worksheetsByStyle gives one page with a worksheet for each set of style sheets that such pages load.
function worksheetsByStyle() {
  const found = new Map();
  for (const path of pages) {
    const html = readFileSync(join(settings.site, path.replace(/(^|\/)$/, '$1index.html')), 'utf8');
    const styles = html.match(/\/assets\/[^"]+\.css/g)?.join(' ');
    if (html.includes('<section class="worksheet') && !found.has(styles)) {
      found.set(styles, path);
    }
  }
  return found;
}

// Each guide, and one page of each other form in each language.
const form = (path) => [path.startsWith('es/'), path.replace(/^es\//, '').split('/')[0], path.split('/').length,
  path.endsWith('/leader/')].join();
const oneOfEach = pages.filter((path, at) => guides.includes(path)
  || pages.findIndex((one) => form(one) === form(path)) === at);

describe('nothing moves while a page loads', together, () => {
  oneOfEach.forEach((path, i) => {
    test(`/${path}`, async (t) => {
      const both = ['', 'block/'].includes(path); // the others take turns, for the time it takes
      for (const screen of both ? [phone, wide] : [[phone, wide][i % 2]]) {
        const context = await browser.newContext({ viewport: screen });
        t.after(() => context.close());
        const page = await context.newPage();
        await page.addInitScript(watchShifts);
        const found = await page.goto(`${origin}/${path}`, { waitUntil: 'networkidle' });
        assert.equal(found.status(), 200);
        await page.waitForFunction(() => !document.getElementById('module') || document.body.matches('.live.after'));
        assert.deepEqual(await page.evaluate(() => window.shifts), [], `at ${screen.width} px`);
      }
    });
  });
});

test('a guide of one worksheet takes two sides', async (t) => {
  const { page, close } = await visit(browser, `${origin}/guides/soil/`, { folded: true });
  t.after(close);
  for (const format of Object.keys(paper)) {
    const sides = (await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g).length;
    t.diagnostic(`/guides/soil/ on ${format}: ${sides} sides`);
    assert.ok(sides <= 2, `${sides} sides of ${format}`);
  }
});

// measure gives by worksheet, in px: from the top of the first given to the end of the first answer, its sentence and its
// gravest signal; from the last given to the answer; from the top of the worksheet to that end.
function measure() {
  const box = (element) => element.getBoundingClientRect();
  const seen = (selector, within) => [...within.querySelectorAll(selector)].filter((element) => element.checkVisibility());
  const sheets = seen('section.worksheet', document).map((section) => {
    const givens = seen('.given .field', section);
    const answer = seen('.answer dl > *, .answer table', section)[0];
    const parts = [answer, ...seen('.words', section), ...seen('.signals > *', section).slice(0, 1)];
    const [top, end] = [box(givens[0]).top, Math.max(...parts.map((part) => box(part).bottom))];
    return {
      name: section.id.replace('worksheet-', ''), givens: givens.length, whole: Math.round(end - top),
      gap: Math.round(Math.min(...parts.map((part) => box(part).top)) - box(givens.at(-1)).bottom),
      below: Math.round(end - box(section).top),
    };
  });
  return { sheets, screens: document.documentElement.scrollHeight / innerHeight };
}

// What must be seen and is in a fold that is closed.
function hiddenInFolds() {
  const found = document.querySelectorAll('details:not([open]) :is(.signal, .remark, .words, .waiting, [data-refusal])');
  const filled = [...document.querySelectorAll('details:not([open]) input')].filter((input) => input.value !== '');
  return [...found, ...filled].map((element) => element.outerHTML.slice(0, 120));
}

function watchShifts() {
  window.shifts = [];
  new PerformanceObserver((list) => {
    for (const { value, sources } of list.getEntries()) {
      window.shifts.push(`${value.toFixed(4)}: ${sources.map(({ node }) => node?.outerHTML?.slice(0, 80))}`);
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

// printed gives by worksheet how long it is on paper, and whether its style keeps it on one side.
function printed() {
  return [...document.querySelectorAll('section.worksheet')].map((section) => ({
    name: section.id, height: Math.round(section.getBoundingClientRect().height),
    keeps: getComputedStyle(section).breakInside === 'avoid',
  }));
}

// numbersOnPaper counts the givens that have a number, and names those whose number is hidden on paper.
function numbersOnPaper() {
  document.querySelectorAll('details').forEach((fold) => { fold.open = true; });
  const seen = (element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  const filled = [...document.querySelectorAll('section.worksheet .field :is(input, select)')]
    .filter((field) => field.value !== '' && field.closest('.field').checkVisibility());
  return { shown: filled.length, hidden: filled.filter((field) => !seen(field)).map((field) => field.id) };
}
