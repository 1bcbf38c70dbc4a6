// The guides with a reader's own numbers: everything that depends on a number follows it, and agrees with the
// native answer; a number that cannot be used leaves nothing that looks like an answer.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { dependents, readGuide } from './content.mjs';
import { expectNative, expectVoid } from './expect.mjs';
import { work } from './native.mjs';
import { field, put, reset, restore, state, type, whole } from './reader.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { regulars, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);

test('there are guides to try', () => assert.ok(guides.length >= 4, `only ${guides.length} guides`));

// What another nitrate of a report changes, over all guides.
const changes = { answers: 0, work: 0, margins: 0, linked: 0, cells: 0 };

// Two at a time: a page waits for the browser as often as the browser for a page.
describe('numbers', { concurrency: 2 }, () => {
  guides.forEach((path, i) => {
    const guide = readGuide(path);
    const width = i % 2 ? 1280 : 320; // the arithmetic does not know the width
    test(`/${path} at ${width} px`, async (t) => {
      const { page, complaints, close } = await visit(`${origin}/${path}`, { width });
      t.after(close);
      await t.test('the example agrees with the native answers', async () => {
        expectNative(guide, await state(page), work(guide.worksheets), new Set());
      });
      for (const [n, [sheet, given, text]] of numbers(guide).entries()) {
        const hands = n === 0 ? byHand : atOnce;
        await t.test(`${sheet}.${given} is ${text}`, (t) => changeNumber(t, page, guide, { sheet, given, text, hands }));
      }
      await t.test('no message, no violation, no request away', () => assert.deepEqual(complaints, []));
    });
  });
});

test('another nitrate changes all that depends on it', (t) => {
  t.diagnostic(`another nitrate changed ${Object.entries(changes).map(([what, n]) => `${n} ${what}`).join(', ')}`);
  assert.ok(Object.values(changes).every((n) => n > 0));
});

// countChanges counts the parts of a page that differ between two moments. A linked answer is one of another worksheet
// than the one that was typed into.
function countChanges(sheet, before, now) {
  const differ = (a, b) => (JSON.stringify(a) === JSON.stringify(b) ? 0 : 1);
  for (const [name, was] of Object.entries(before.worksheets)) {
    changes[name === sheet ? 'answers' : 'linked'] += differ(was.answers, now.worksheets[name].answers);
    changes.work += differ(was.work, now.worksheets[name].work);
  }
  const margins = ({ passages }) => passages.flatMap(({ owns }) => owns);
  margins(before).forEach((was, i) => { changes.margins += differ(was.number, margins(now)[i].number); });
  before.tables.flat(2).forEach((was, i) => { changes.cells += differ(was, now.tables.flat(2)[i]); });
}

// numbers gives each given that a reader can type a number into: worksheet, given, text.
function numbers(guide) {
  return [...guide.worksheets].flatMap(([sheet, { givens }]) => Object.entries(givens)
    .filter(([, text]) => /^\$?[\d.,]+(\/| (?!to )|$)/.test(text)) // one number
    .map(([given, text]) => [sheet, given, text]));
}

// The first number of each guide is changed with the keyboard and the pointer; what comes of the others is the same
// question without them.
const byHand = { type, reset };
const atOnce = { type: put, reset: restore };

// changeNumber tries one field with another number, with texts that are no number it can use, and goes back to the
// example.
async function changeNumber(t, page, guide, { sheet, given, text, hands }) {
  const [number] = text.match(/[\d.,]+/);
  const input = field(page, sheet, given);
  const optional = await input.getAttribute('data-presence') !== null;
  const example = await whole(page);
  const before = await state(page);
  const moved = dependents(guide.worksheets, sheet);
  const other = String(Number(number) * 1.25 || 7); // 15 for 12

  await t.test(`${other} for ${number}`, async () => {
    await hands.type(input, other);
    const now = await state(page);
    expectNative(guide, now, work(guide.worksheets, { [sheet]: { [given]: text.replace(number, other) } }), moved);
    assert.notDeepEqual(now.worksheets[sheet].work, before.worksheets[sheet].work);
    if (given === 'nitrate') {
      countChanges(sheet, before, now);
    }
  });
  await t.test('emptied', async () => {
    await hands.type(input, '');
    if (!optional) {
      await expectNothing(page, input, moved);
      return;
    }
    const native = work(guide.worksheets, { [sheet]: { [given]: null } });
    const now = await state(page);
    expectNative(guide, now, native, moved);
    const { error } = native.get(sheet);
    assert.deepEqual(now.worksheets[sheet].refusals, error ? [error] : []);
  });
  for (const wrong of ['1e9', '999999999', 'abc', '-']) {
    await t.test(wrong, async () => {
      await hands.type(input, wrong);
      await expectNothing(page, input, moved);
    });
  }
  await t.test('back to the example', async () => {
    await hands.reset(page, sheet);
    assert.deepEqual(await whole(page), example);
  });
}

// expectNothing wants a sentence with the allowed range at the field, and no number on any worksheet that depends on
// it; the others go on.
async function expectNothing(page, input, moved) {
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
  const now = await state(page);
  for (const [name, { void: empty }] of Object.entries(now.worksheets)) {
    if (moved.has(name)) {
      expectVoid(name, now);
    }
    assert.equal(empty, moved.has(name), `${name} has nothing to do with the field`);
  }
}
