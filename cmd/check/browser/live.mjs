// The guides with a reader's own numbers: everything that depends on a number follows it, and agrees with the
// native answer; a number that cannot be used leaves nothing that looks like an answer.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { dependents, readGuide } from './content.mjs';
import { expectNative } from './expect.mjs';
import { work } from './native.mjs';
import { field, state, type, whole } from './reader.mjs';
import { serve } from './server.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { launch, visit } from './visit.mjs';

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

test('there are guides to try', () => assert.ok(guides.length >= 4, `only ${guides.length} guides`));

for (const path of guides) {
  const guide = readGuide(path);
  for (const width of [320, 1280]) {
    test(`/${path} at ${width} px`, async (t) => {
      const { page, complaints, close } = await visit(browser, `${server.origin}/${path}`, { width });
      t.after(close);
      await t.test('the example agrees with the native answers', async () => {
        expectNative(guide, await state(page), work(guide.worksheets), new Set());
      });
      for (const [sheet, given, text] of numbers(guide)) {
        await t.test(`${sheet}.${given} is ${text}`, (t) => changeNumber(t, page, guide, { sheet, given, text }));
      }
      await t.test('no message, no violation, no request away', () => assert.deepEqual(complaints, []));
    });
  }
}

// numbers gives each given that a reader can type a number into: worksheet, given, text.
function numbers(guide) {
  return [...guide.worksheets].flatMap(([sheet, { givens }]) => Object.entries(givens)
    .filter(([, text]) => /^[$\d]/.test(text))
    .map(([given, text]) => [sheet, given, text]));
}

// changeNumber tries one field with another number, with three that cannot be used, and goes back to the example.
async function changeNumber(t, page, guide, { sheet, given, text }) {
  const [number] = text.match(/[\d.,]+/);
  const input = field(page, sheet, given);
  const example = await whole(page);
  const before = await state(page);
  const moved = dependents(guide.worksheets, sheet);
  const other = String(Number(number) * 1.25 || 7); // 15 for 12

  await t.test(`${other} for ${number}`, async () => {
    await type(input, other);
    const native = work(guide.worksheets, { [sheet]: { [given]: text.replace(number, other) } });
    const now = await state(page);
    expectNative(guide, now, native, moved);
    assert.notDeepEqual(now.worksheets[sheet].work, before.worksheets[sheet].work);
  });
  for (const wrong of ['', '1e9', '999999999', 'abc', '-']) {
    await t.test(`${wrong === '' ? 'emptied' : wrong}`, async () => {
      await type(input, wrong);
      await expectNothing(page, input, moved, await state(page));
    });
  }
  await t.test('back to the example', async () => {
    await page.locator(`section.worksheet:has([id="${sheet}-${given}"]) button[data-reset]`).click();
    await input.blur();
    assert.deepEqual(await whole(page), example);
  });
}

// expectNothing wants a sentence with the allowed range at the field, and no number on any worksheet that depends on it.
async function expectNothing(page, input, moved, now) {
  const fault = await input.evaluate((element) => {
    const sentence = document.getElementById(`${element.id}-fault`);
    return {
      seen: sentence.checkVisibility(), text: sentence.textContent, invalid: element.getAttribute('aria-invalid'),
      described: element.getAttribute('aria-describedby').split(' ').includes(sentence.id),
      limits: [...sentence.querySelectorAll('[data-limit]')].map((limit) => limit.textContent),
    };
  });
  assert.ok(fault.seen && fault.described, 'the sentence of the fault is not shown or not tied to the field');
  assert.equal(fault.invalid, 'true');
  assert.equal(fault.limits.length, 2);
  assert.ok(fault.limits.every((limit) => /\d/.test(limit)), `no range in ${fault.text}`);
  for (const name of moved) {
    assert.deepEqual(now.bound[name], [], `numbers of ${name} still stand`);
    assert.ok(now.worksheets[name].void && now.worksheets[name].waiting, `${name} does not say that it waits`);
  }
  for (const [name, { void: empty }] of Object.entries(now.worksheets)) {
    assert.equal(empty, moved.has(name), `${name} has nothing to do with the field`);
  }
}
