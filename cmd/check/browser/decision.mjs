// The decision on one page follows one number from the well to the ounces a tree; and each danger has a sentence, in
// the page as at the terminal.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readGuide } from './content.mjs';
import { expectAnswers } from './expect.mjs';
import { value, work } from './native.mjs';
import { field, state } from './reader.mjs';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);

test('the nitrate of the well, down to the ounces a tree', async (t) => {
  const path = 'guides/season/';
  const { page, complaints, close } = await visit(browser, `${origin}/${path}`, {});
  t.after(close);
  const guide = readGuide(path);
  const seen = [];
  for (const nitrate of [0, 5, 9, 12, 40]) {
    await field(page, 'well', 'nitrate').fill(String(nitrate));
    const native = work(guide.worksheets, { well: { nitrate: `${nitrate} ppm NO3-N` } });
    const now = await state(page);
    expectAnswers(guide, now, native);
    const number = (sheet, name) => value(native.get(sheet), name).value;
    const said = ['well', 'budget', 'feed'].flatMap((sheet) => now.worksheets[sheet].remarks);
    seen.push({
      nitrate, need: number('need', 'nitrogen'), credits: number('budget', 'credits'), apply: number('budget', 'apply'),
      ounces: number('feed', 'rate'), said,
    });
    console.log(`${nitrate} ppm:`, ...['need', 'credits', 'apply', 'ounces'].map((name) => (
      `${name} ${seen.at(-1)[name].toFixed(2)}`)), `${said.length} remarks`);
  }
  const falls = (name) => seen.every((one, i) => i === 0 || one[name] <= seen[i - 1][name]) && seen.at(-1)[name] < seen[0][name];
  assert.ok(falls('apply') && falls('ounces'), 'more nitrate in the well does not leave less to feed');
  assert.ok(seen[0].credits < seen[1].credits);
  const has = (i, part) => seen[i].said.some((sentence) => sentence.includes(part));
  assert.ok(!has(0, 'limit for drinking water') && has(3, 'limit for drinking water'), 'the well is not warned of');
  assert.ok(!has(0, 'no nitrogen need be bought') && has(4, 'no nitrogen need be bought'), 'nothing to buy is not said');
  assert.deepEqual(complaints, []);
});

// What each worksheet of the page must say, and the given that makes it go away; with what is set aside then, since it
// belongs to the old choice.
const dangers = [
  ['feed', 'NOTICE: Each feed of 2 oz of nitrogen a tree is over 1 oz', { cap: ['1', '1 oz N/tree'] }],
  ['feed', 'NOTICE: Liquid UAN and CAN-17 burned many first-leaf trees', { leaf: ['2', '2'] }],
  ['surplus', 'no nitrogen need be bought now', { need: ['60', '60 lb N/ac fed'] }],
  ['surplus', 'NOTICE: 30 lb N/ac more is there than the trees need', { need: ['60', '60 lb N/ac fed'] }],
  ['run', 'NOTICE: The flush is too short: 15 min', { flush: ['45', '45 min'] }],
  ['run', 'WARNING: Feed must never run back', undefined],
  ['pair', 'NOTICE: Calcium and sulfate form gypsum', {
    second: ['Urea, 46-0-0', '46-0-0', { 'second-price': null }],
  }],
  ['acid', 'DANGER: Strong acid burns skin and eyes', { material: ['Urea, 46-0-0', '46-0-0'] }],
];

test('each danger has a sentence', async (t) => {
  const path = 'guides/cautions/';
  const { page, close } = await visit(browser, `${origin}/${path}`, {});
  t.after(close);
  const guide = readGuide(path);
  const native = work(guide.worksheets);
  expectAnswers(guide, await state(page), native);
  for (const [sheet, words, mend] of dangers) {
    await t.test(words, async () => {
      const includes = (list) => list.some((sentence) => sentence.includes(words));
      const { notes, cautions } = native.get(sheet);
      assert.ok(includes([...notes, ...cautions]), 'not at the terminal');
      assert.ok(includes((await state(page)).worksheets[sheet].remarks), 'not in the page');
      for (const [given, [typed, text, aside]] of Object.entries(mend ?? {})) {
        const input = field(page, sheet, given);
        const list = await input.evaluate((element) => element.tagName === 'SELECT');
        const before = await input.inputValue();
        await (list ? input.selectOption({ label: typed }) : input.fill(typed));
        const now = await state(page);
        assert.ok(!includes(now.worksheets[sheet].remarks), `still said with ${given} ${typed}`);
        expectAnswers(guide, now, work(guide.worksheets, { [sheet]: { [given]: text, ...aside } }));
        await (list ? input.selectOption(before) : input.fill(before));
      }
    });
  }
});
