// Other ways to use a guide: without scripts, from a disk, on paper, by ear, after a reload.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { inspect } from './axe.mjs';
import { readGuide } from './content.mjs';
import { expectAnswers, expectNative } from './expect.mjs';
import { sideways } from './look.mjs';
import { work } from './native.mjs';
import { field, put, state, type } from './reader.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { opposite, ready, regulars, start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const again = regulars(browser);
const unscripted = regulars(browser, false);

// Two at a time: a page waits for the browser as often as the browser for a page.
describe('ways', { concurrency: 2 }, () => {
  for (const path of guides) {
    const guide = readGuide(path);
    if (guide.worksheets.size === 0) {
      continue; // there is nothing to type into
    }
    const [sheet, given, text] = firstNumber(guide);
    const [number] = text.match(/[\d.,]+/);
    const other = String(Number(number) * 1.25);
    const changed = { [sheet]: { [given]: text.replace(number, other) } };

    test(`/${path} without scripts`, async (t) => {
      const plain = await unscripted(`${origin}/${path}`);
      t.after(plain.close);
      expectNative(guide, await state(plain.page), work(guide.worksheets), new Set());
      const controls = await plain.page.evaluate(() => [...document.querySelectorAll('main button, #units')]
        .filter((control) => control.checkVisibility({ visibilityProperty: true })).map((control) => control.outerHTML));
      assert.deepEqual(controls, [], 'controls that only a script can work');
      assert.deepEqual(plain.complaints, []);
    });

    test(`/${path} from a disk`, async (t) => {
      const address = pathToFileURL(join(settings.site, path, 'index.html')).href;
      const { page, complaints, close } = await again(address);
      t.after(close);
      await type(field(page, sheet, given), other);
      expectAnswers(guide, await state(page), work(guide.worksheets, changed));
      assert.deepEqual(complaints, []);
    });

    test(`/${path} with a number of the reader's and one that is wrong`, async (t) => {
      const { page, complaints, close } = await again(`${origin}/${path}`, opposite[0]);
      t.after(close);
      await put(field(page, sheet, given), other);
      const last = page.locator('section.worksheet input:not([data-presence])').last();
      await type(last, '999999999');
      assert.equal(await last.getAttribute('aria-invalid'), 'true');
      for (const { width, scheme } of opposite) {
        await t.test(`at ${width} px, ${scheme}`, async () => {
          await page.setViewportSize({ width, height: page.viewportSize().height });
          await page.emulateMedia({ colorScheme: scheme });
          assert.deepEqual([...await inspect(page), ...await page.evaluate(sideways)], []);
        });
      }
      assert.deepEqual(complaints, []);
    });

    test(`/${path} after a reload and on the way back`, async (t) => {
      const { page, close } = await again(`${origin}/${path}`);
      t.after(close);
      await type(field(page, sheet, given), other);
      await page.reload();
      await ready(page);
      await expectPair(page, guide, { sheet, given, text, number });
      await type(field(page, sheet, given), other);
      await page.goto(`${origin}/`);
      await page.goBack();
      await ready(page);
      await expectPair(page, guide, { sheet, given, text, number });
    });

    // The clock that a page is spoken by stands still for good, so this is no page to come back to.
    test(`/${path} on paper and by ear`, async (t) => {
      const { page, close } = await visit(browser, `${origin}/${path}`, { width: 816 });
      t.after(close);
      await t.test('on paper', async () => {
        await page.emulateMedia({ media: 'print' });
        await expectPrinted(page).finally(() => page.emulateMedia({ media: null }));
      });
      await t.test('spoken', () => (
        expectSpoken(page, guide, { sheet, given, other, native: work(guide.worksheets, changed) })));
    });
  }
});

function firstNumber(guide) {
  for (const [sheet, { givens }] of guide.worksheets) {
    for (const [given, text] of Object.entries(givens)) {
      if (/^[1-9][\d.,]* (?!to )/.test(text)) { // one number, with a unit
        return [sheet, given, text];
      }
    }
  }
  throw new Error('a guide without a number to type');
}

// The number in the field and the answers must belong together, whether the browser kept the number or not.
async function expectPair(page, guide, { sheet, given, text, number }) {
  const kept = await field(page, sheet, given).inputValue();
  expectAnswers(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: text.replace(number, kept) } }));
}

// On paper nothing is left to press, and the givens and the answers are there.
async function expectPrinted(page) {
  const left = await page.evaluate(() => [...document.querySelectorAll('button, nav, details:not([open]), .self')]
    .filter((control) => control.checkVisibility()).map((control) => control.outerHTML.slice(0, 140)));
  assert.deepEqual(left, [], 'controls on paper');
  const seen = (all) => all.map((element) => element.checkVisibility());
  const answers = await page.locator('.answer :is(dl > :not([hidden]) dd, td > :not([hidden]))').evaluateAll(seen);
  assert.ok(answers.length > 0 && answers.every(Boolean), 'answers that are not printed');
  const inputs = await page.locator('.worksheet input').evaluateAll(seen);
  assert.ok(inputs.every(Boolean), 'givens that are not printed');
}

// One line speaks for a worksheet: nothing until the reader changes a number; then, between half a second and a second
// after the last key, the first answer as one sentence, and the
// gravest signal. The page's clock stands still but for what the test lets pass.
async function expectSpoken(page, guide, { sheet, given, other, native }) {
  const lines = page.locator('.worksheet [role=status]');
  assert.equal(await lines.count(), guide.worksheets.size, 'one spoken line for each worksheet');
  assert.ok((await lines.allTextContents()).every((line) => line.trim() === ''), 'something is spoken unasked');
  assert.equal(await page.locator('output, [aria-live], [role=status]:not(.worksheet *, #state)').count(), 0, 'something else would be spoken too');
  await page.clock.install({ time: 0 });
  await page.clock.pauseAt(60_000);
  await type(field(page, sheet, given), other);
  const line = page.locator(`#worksheet-${sheet} [role=status]`);
  await page.clock.runFor(500);
  assert.equal((await line.textContent()).trim(), '', 'spoken while the reader may still be typing');
  await page.clock.runFor(500);
  const said = await line.textContent();
  const answer = await page.evaluate((sheet) => {
    const row = document.querySelector(`#worksheet-${sheet} .answer dl > :not([hidden])`);
    return row?.querySelector('dd').innerText;
  }, sheet);
  if (answer === undefined) { // answers that are compared are spoken as the sentence about them
    const [words] = (await state(page)).worksheets[sheet].words;
    assert.ok(said.startsWith(words), `"${said}" does not say ${words}`);
    return;
  }
  assert.ok(answer.startsWith(said.match(/: (\S+?)\.?(?: |$)/)[1]), `"${said}" does not say ${answer}`);
  const units = Object.values(native.get(sheet).answers).map(({ unit = '' }) => unit.replace('$', ''));
  assert.ok(/^\d+$/.test(answer.trim()) || units.some((unit) => unit !== '' && said.includes(unit)), `no unit in "${said}"`);
  const signal = page.locator(`#worksheet-${sheet} .signals > :visible`).first();
  if (await signal.count() > 0) {
    const [word, ...sentence] = (await signal.innerText()).split('\n');
    assert.ok(said.includes(`${word.replace(/^[^\p{L}]+/u, '')}: ${sentence.join(' ').trim()}`),
      `"${said}" does not say ${word}: ${sentence.join(' ')}`);
  }
}
