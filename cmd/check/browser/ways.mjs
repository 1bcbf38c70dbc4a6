// Other ways to use a guide: without scripts, from a disk, on paper, by ear, in another unit, after a reload.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { readGuide } from './content.mjs';
import { expectNative } from './expect.mjs';
import { work } from './native.mjs';
import { field, state, type, whole } from './reader.mjs';
import { serve } from './server.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { launch, ready, visit } from './visit.mjs';

let browser;
let server;
before(async () => {
  browser = await launch();
  server = await serve(settings.site);
});
after(async () => {
  await browser?.close();
  await server?.close();
});

for (const path of guides) {
  const guide = readGuide(path);
  const [sheet, given, text] = firstNumber(guide);
  const [number] = text.match(/[\d.,]+/);
  const other = String(Number(number) * 1.25);
  const changed = { [sheet]: { [given]: text.replace(number, other) } };

  test(`/${path} without scripts`, async (t) => {
    const plain = await visit(browser, `${server.origin}/${path}`, { script: false });
    t.after(plain.close);
    expectNative(guide, await state(plain.page), work(guide.worksheets), new Set());
    const controls = await plain.page.evaluate(() => [...document.querySelectorAll('[data-live-only]')]
      .filter((control) => control.checkVisibility()).map((control) => control.outerHTML));
    assert.deepEqual(controls, [], 'controls that only a script can work');
    assert.deepEqual(plain.complaints, []);
  });

  test(`/${path} from a disk`, async (t) => {
    const address = pathToFileURL(join(settings.site, path, 'index.html')).href;
    const { page, complaints, close } = await visit(browser, address);
    t.after(close);
    await type(field(page, sheet, given), other);
    expectAnswersOf(guide, await state(page), work(guide.worksheets, changed));
    assert.deepEqual(complaints, []);
  });

  test(`/${path} after a reload and on the way back`, async (t) => {
    const { page, close } = await visit(browser, `${server.origin}/${path}`);
    t.after(close);
    await type(field(page, sheet, given), other);
    await page.reload();
    await ready(page);
    await expectPair(page, guide, { sheet, given, text, number });
    await type(field(page, sheet, given), other);
    await page.goto(`${server.origin}/`);
    await page.goBack();
    await ready(page);
    await expectPair(page, guide, { sheet, given, text, number });
  });

  test(`/${path} spoken`, async (t) => {
    const { page, close } = await visit(browser, `${server.origin}/${path}`);
    t.after(close);
    await expectSpoken(page, guide, { sheet, given, other, native: work(guide.worksheets, changed) });
  });

  test(`/${path} on paper`, async (t) => {
    const { page, close } = await visit(browser, `${server.origin}/${path}`, { width: 816 });
    t.after(close);
    await page.emulateMedia({ media: 'print' });
    const left = await page.evaluate(() => [...document.querySelectorAll('button, select[data-unit-for], nav, summary')]
      .filter((control) => control.checkVisibility()).map((control) => control.outerHTML.slice(0, 140)));
    assert.deepEqual(left, [], 'controls on paper');
    const answers = await page.locator('.answer dd').evaluateAll((all) => all.map((dd) => dd.checkVisibility()));
    assert.ok(answers.length > 0 && answers.every(Boolean), 'answers that are not printed');
    const inputs = await page.locator('input').evaluateAll((all) => all.map((input) => input.checkVisibility()));
    assert.ok(inputs.every(Boolean), 'givens that are not printed');
  });

  test(`/${path} in other units`, (t) => otherUnits(t, guide, path));
}

function firstNumber(guide) {
  for (const [sheet, { givens }] of guide.worksheets) {
    for (const [given, text] of Object.entries(givens)) {
      if (/^[1-9]/.test(text)) {
        return [sheet, given, text];
      }
    }
  }
  throw new Error('a guide without a number to type');
}

function expectAnswersOf(guide, now, native) {
  const moved = new Set(Object.keys(now.worksheets).filter((name) => now.worksheets[name].yours));
  expectNative(guide, now, native, moved);
}

// The number in the field and the answers must belong together, whether the browser kept the number or not.
async function expectPair(page, guide, { sheet, given, text, number }) {
  const kept = await field(page, sheet, given).inputValue();
  expectAnswersOf(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: text.replace(number, kept) } }));
}

// One line speaks for a worksheet: nothing until the reader changes a number, then the answer as one sentence.
async function expectSpoken(page, guide, { sheet, given, other, native }) {
  const lines = page.locator('[role=status]');
  assert.equal(await lines.count(), guide.worksheets.size, 'one spoken line for each worksheet, and no other');
  assert.ok((await lines.allTextContents()).every((line) => line.trim() === ''), 'something is spoken unasked');
  assert.equal(await page.locator('output, [aria-live]').count(), 0, 'something else would be spoken too');
  await type(field(page, sheet, given), other);
  const line = page.locator(`section.worksheet:has([id="${sheet}-${given}"]) [role=status]`);
  assert.equal((await line.textContent()).trim(), '', 'spoken while the reader still types');
  await page.waitForFunction((element) => element.textContent.trim() !== '', await line.elementHandle());
  const said = await line.textContent();
  const answer = (await state(page)).worksheets[sheet].answers[0];
  assert.ok(answer.startsWith(said.match(/: (\S+)/)[1]), `"${said}" does not say ${answer}`);
  assert.ok(Object.values(native.get(sheet).answers).every(({ unit }) => said.includes(unit)), `no unit in "${said}"`);
}

// Every unit that a field offers: the number typed stays, and is worked in that unit; the range in the sentence
// of a fault follows.
async function otherUnits(t, guide, path) {
  const { page, complaints, close } = await visit(browser, `${server.origin}/${path}`);
  t.after(close);
  const example = await whole(page);
  for (const [sheet, { givens }] of guide.worksheets) {
    for (const [given, text] of Object.entries(givens)) {
      const select = page.locator(`[data-unit-for="${sheet}-${given}"]`);
      if (await select.count() === 0) {
        continue;
      }
      const units = await select.locator('option').allTextContents();
      await t.test(`${sheet}.${given} in ${units.join(', ')}`, async () => {
        for (const unit of units) {
          await select.selectOption(unit);
          await expectUnit(page, guide, { sheet, given, unit, number: text.match(/[\d.,]+/)[0] });
        }
        await page.locator(`section.worksheet:has([id="${sheet}-${given}"]) button[data-reset]`).click();
        assert.deepEqual(await whole(page), example, 'the example does not come back');
      });
    }
  }
  assert.deepEqual(complaints, []);
}

async function expectUnit(page, guide, { sheet, given, unit, number }) {
  const input = field(page, sheet, given);
  assert.equal(await input.inputValue(), number, 'the number in the field changed with the unit');
  const low = Number(await input.getAttribute('data-low'));
  const high = Number(await input.getAttribute('data-high'));
  const [multiply, divide] = (await input.evaluate((element) => (
    document.querySelector(`[data-unit-for="${element.id}"]`).value))).split('/').map(Number);
  const canonical = Number(number) * multiply / divide;
  if (canonical < low || canonical > high) {
    assert.equal(await input.getAttribute('aria-invalid'), 'true', `${number} ${unit} is outside and passes`);
    return;
  }
  expectAnswersOf(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: `${number} ${unit}` } }));
}
