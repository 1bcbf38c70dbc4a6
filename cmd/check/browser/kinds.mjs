// Pages with ranges, days, two kinds of quantity, and answers that may be left out: what is typed is worked as the
// program works it, and what is left out leaves nothing behind. The switch between US and metric units is tried here.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { inspectBoth } from './axe.mjs';
import { readGuide } from './content.mjs';
import { expectAnswers, expectNative, expectResults, expectVoid } from './expect.mjs';
import { sideways } from './look.mjs';
import { work } from './native.mjs';
import { field, put, reset, restore, state, type, whole } from './reader.mjs';
import { settings } from './settings.mjs';
import { opposite, start, visit } from './visit.mjs';

const pages = ['guides/kinds/', 'guides/days/'];
const { browser, origin } = await start(settings.site);
const open = (path, how) => visit(browser, `${origin}/${path}`, how);

// What is typed into a field, and how the program reads it.
const typed = [
  ['need', 'rate', '2.5 to 3.5', '2.5 to 3.5 oz N/tree'],
  ['need', 'rate', '2.5–3.5', '2.5 to 3.5 oz N/tree'],
  ['need', 'rate', '2-3', '2 to 3 oz N/tree'],
  ['need', 'rate', ' 2  to  3 ', '2 to 3 oz N/tree'],
  ['need', 'rate', '3', '3 oz N/tree'],
  ['need', 'trees', '100 to 120', '100 to 120 trees/ac'],
  ['well', 'nitrate', '<8', '<8 ppm NO3-N'],
  ['well', 'nitrate', '< 8', '<8 ppm NO3-N'],
  ['well', 'nitrate', '4', '4 ppm NO3-N'],
  ['well', 'water', '0 to 12', '0 to 12 in'],
  // What is pasted brings its unit, which the list beside the field then shows.
  ['well', 'nitrate', '<8 mg/L Nitrate-N', '<8 mg/L NO3-N'],
  ['well', 'nitrate', '4 ppm', '4 ppm NO3-N'],
  ['well', 'nitrate', '4 mg/L', '4 mg/L NO3-N'],
  ['well', 'nitrate', '4 mg/L nitrate', '4 mg/L NO3'],
  ['well', 'water', '6½"', '6.5 in'],
  ['well', 'water', '1 1/2', '1.5 in'],
  ['need', 'rate', '3—4 oz N per tree', '3 to 4 oz N/tree'],
  ['feeds', 'nitrogen', '13', '13 lb N/ac'], // two feeds: two of the days are left out
  ['feeds', 'nitrogen', '6 to 40', '6 to 40 lb N/ac'],
  ['feeds', 'first', '2027-05-01', '2027-05-01'],
  ['feeds', 'leaf', '1 to 2', '1 to 2'],
];

for (const [i, path] of pages.entries()) {
  const width = i % 2 ? 1280 : 320; // the arithmetic does not know the width
  test(`/${path} at ${width} px`, async (t) => {
    const { page, complaints, close } = await open(path, { width });
    t.after(close);
    const guide = readGuide(path);
    expectNative(guide, await state(page), work(guide.worksheets), new Set());
    const example = await whole(page);
    for (const [sheet, given, text, native] of typed.filter(([name]) => guide.worksheets.has(name))) {
      await t.test(`${sheet}.${given} is ${text}`, async () => {
        await put(field(page, sheet, given), text);
        expectAnswers(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: native } }));
        await restore(page, sheet);
        assert.deepEqual(await whole(page), example);
      });
    }
    assert.deepEqual(complaints, []);
  });
}

// What cannot be used, and a word of the sentence that says why.
const refused = [
  ['need', 'rate', '4 to 3', 'lower one goes first'],
  ['need', 'rate', '3 to', 'Type a number'],
  ['need', 'rate', '<5', '<5 is not a number that fits here.'],
  ['need', 'rate', '3.1.2', '3.1.2 is not a number that fits here.'],
  ['well', 'nitrate', '12,5', 'For a decimal, write a point: 12.5.'],
  ['well', 'nitrate', '>40', 'more than it measured'],
  ['well', 'nitrate', '12 ppm NH4-N', 'ppm NH4-N is not a unit of this field'],
  ['well', 'nitrate', 'trace', 'trace is not a number that fits here.'],
  ['need', 'rate', '1 to 2 to 3', 'Type a number'],
  ['need', 'rate', '3 to 4000', 'Type a number'],
  ['well', 'nitrate', 'ND', 'type it with <'],
  ['well', 'nitrate', 'n.d.', 'type it with <'],
  ['well', 'nitrate', '<5 to 6', 'Type a number'],
  ['well', 'nitrate', '<5000', 'Type a number'],
  ['feeds', 'first', '', 'Choose a day from Jan 1, 2000 to Dec 31, 2099'],
  ['feeds', 'first', '1999-12-31', 'Choose a day'],
];

for (const path of pages) {
  test(`/${path} with what cannot be used`, async (t) => {
    const { page, close } = await open(path);
    t.after(close);
    const { worksheets } = readGuide(path);
    const example = await whole(page);
    for (const [sheet, given, text, why] of refused.filter(([name]) => worksheets.has(name))) {
      await t.test(`${sheet}.${given} is ${text || 'empty'}`, async () => {
        const input = field(page, sheet, given);
        await put(input, text);
        const now = await state(page);
        expectVoid(sheet, now);
        const faults = now.worksheets[sheet].faults.join();
        assert.ok(faults.includes(why), `"${faults}" lacks "${why}"`);
        assert.equal(await input.getAttribute('aria-invalid'), 'true');
        assert.equal(await page.locator(`#worksheet-${sheet} .below:visible`).count(), 0, 'a number is said to be taken');
        await restore(page, sheet);
        assert.deepEqual(await whole(page), example);
      });
    }
  });
}

test('a unit that is pasted is chosen, and said', async (t) => {
  const { page, close } = await open('guides/kinds/');
  t.after(close);
  const unit = page.locator('select[data-unit-for="well-nitrate"]');
  await put(field(page, 'well', 'nitrate'), '12 ppm NO3');
  assert.equal(await unit.evaluate((list) => list.selectedOptions[0].text), 'ppm NO3');
  assert.match(await page.locator('#worksheet-well .below').textContent(), /Read as ppm NO3\./);
  // The reader's own choice takes the typed unit out.
  await unit.selectOption({ label: 'mg/L NO3-N' });
  assert.equal((await field(page, 'well', 'nitrate').inputValue()).trim(), '12');
  assert.equal(await unit.evaluate((list) => list.selectedOptions[0].text), 'mg/L NO3-N');
});

// A unit is chosen in the list, and its field says so from then on.
test('a unit of the list is read, with what it leaves unsaid', async (t) => {
  const { page, close } = await open('guides/kinds/');
  t.after(close);
  const guide = readGuide('guides/kinds/');
  for (const [sheet, given, text, means] of [
    ['well', 'water', `1' 6"`, '1.5 ft'], ['need', 'rate', '0.2 lb N/tree', '0.2 lb N/tree fed'],
    ['need', 'rate', '0.2 lb/tree', '0.2 lb N/tree fed'],
  ]) {
    await put(field(page, sheet, given), text);
    expectAnswers(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: means } }));
    await restore(page, sheet);
  }
});

test('a laboratory\'s "<" is explained at its field', async (t) => {
  const { page, close } = await open('guides/kinds/');
  t.after(close);
  const said = page.locator('#worksheet-well .below');
  assert.match(await said.textContent(), /anything from 0 to 5\./);
  await type(field(page, 'well', 'nitrate'), '<8');
  assert.ok(await said.isVisible());
  assert.match(await said.textContent(), /anything from 0 to 8\./);
  await type(field(page, 'well', 'nitrate'), '8');
  assert.ok(!await said.isVisible());
  await page.fill('#need-rate', '<3'); // no laboratory measures a rate
  assert.match(await page.locator('#worksheet-need .fault:visible').textContent(), /<3 is not a number that fits here\./);
});

test('an answer that is left out leaves nothing behind', async (t) => {
  const { page, close } = await open('guides/days/');
  t.after(close);
  await page.clock.install();
  await type(field(page, 'feeds', 'nitrogen'), '13');
  await page.clock.runFor(1000);
  const glance = await page.locator('.glance li').allTextContents();
  assert.ok(glance.some((line) => line.startsWith('– ')), `no dash for the fourth day among ${glance}`);
  const spoken = await page.locator('#worksheet-feeds [role=status]').textContent();
  assert.match(spoken, /^Feeds: 2\./);
  assert.doesNotMatch(spoken, /Feed \d:/);
  const labels = await page.locator('#worksheet-feeds .answer dt:visible').allTextContents();
  assert.ok(labels.includes('Feed 2') && !labels.includes('Feed 3'), labels.join());
});

test('every number of ten worksheets a range', async (t) => {
  const { page, complaints, close } = await open('guides/ten/');
  t.after(close);
  const guide = readGuide('guides/ten/');
  const changes = {};
  const inputs = await page.locator('.worksheet input:not([data-presence])').all();
  for (const input of inputs) {
    const [sheet, given] = (await input.getAttribute('id')).split(/-(.*)/);
    const [number, unit] = guide.worksheets.get(sheet).givens[given].split(/ (.*)/);
    const typed = `${Number(number) * 0.99} to ${number}`;
    await input.fill(typed);
    changes[sheet] = { ...changes[sheet], [given]: `${typed} ${unit ?? ''}`.trim() };
  }
  assert.ok(inputs.length > 10, `only ${inputs.length} fields`);
  const now = await state(page);
  // A worksheet that takes numbers from others knows how those belong together, which the program is not told here.
  const alone = new Map([...guide.worksheets].filter(([, { givens }]) => (
    !Object.values(givens).some((text) => text.startsWith('from ')))));
  assert.ok(alone.size >= 5, `only ${alone.size} worksheets take no number from another`);
  for (const [name, answered] of work(alone, changes)) {
    expectResults(name, now.worksheets[name].answers, answered);
  }
  assert.ok(Object.values(now.worksheets).every((sheet) => !sheet.void && sheet.yours), 'a worksheet without answers');
  assert.deepEqual(complaints, []);
});

test('US and metric units', async (t) => {
  const { page, complaints, close } = await open('guides/kinds/');
  t.after(close);
  const example = await whole(page);
  const before = await state(page);
  const first = () => page.locator('#worksheet-need .answer dd').first().innerText();
  assert.match((await first()).replaceAll(/\s+/g, ' '), /^20.6 to 27.5 lb N\/ac fed 23.1 to 30.8 kg N\/ha fed$/);
  await page.getByRole('radio', { name: 'Metric units' }).check();
  assert.match((await first()).replaceAll(/\s+/g, ' '), /^23.1 to 30.8 kg N\/ha fed 20.6 to 27.5 lb N\/ac fed$/);
  assert.match(await page.locator('.glance li').first().textContent(), /^23.1 to 30.8 kg N\/ha/);
  assert.deepEqual((await state(page)).passages.map(({ figures }) => figures),
    before.passages.map(({ figures }) => figures), 'the text follows the switch');
  await page.clock.install();
  await type(field(page, 'need', 'rate'), '2');
  await page.clock.runFor(1000);
  assert.match(await page.locator('#worksheet-need [role=status]').textContent(), new RegExp(
    '^Nitrogen for an acre: 15.4 kg N/ha fed\\. NOTICE: If 2 oz of nitrogen a tree is .* '
      + 'The text is written for the example\\. Your numbers are beside it\\.$'));
  await reset(page, 'need');
  await page.getByRole('group', { name: 'Show answers in' }).getByRole('radio', { name: 'US units' }).check();
  await page.evaluate(() => document.activeElement.blur());
  assert.deepEqual(await whole(page), example);
  assert.deepEqual(complaints, []);
});

test('the switch needs a script, and is not printed', async (t) => {
  const plain = await open('guides/kinds/', { script: false });
  t.after(plain.close);
  assert.equal(await plain.page.locator('#units').isVisible(), false);
  const live = await open('guides/kinds/');
  t.after(live.close);
  assert.equal(await live.page.locator('#units').isVisible(), true);
  await live.page.emulateMedia({ media: 'print' });
  assert.equal(await live.page.locator('#units').isVisible(), false);
});

for (const { width, scheme } of opposite) {
  test(`every kind of number at ${width} px, light and dark`, async (t) => {
    const kinds = await open('guides/kinds/', { width, scheme });
    t.after(kinds.close);
    await kinds.page.check('#units [value=metric]');
    await kinds.page.fill('#need-rate', '1.25 to 3.75');
    await kinds.page.fill('#well-nitrate', 'ND');
    await kinds.page.selectOption('[data-unit-for="spread-amount"]', { label: 'gal/ac' });
    const days = await open('guides/days/', { width, scheme });
    t.after(days.close);
    await days.page.fill('#feeds-nitrogen', '20 to 130');
    for (const { page } of [kinds, days]) {
      assert.deepEqual([...await page.evaluate(sideways), ...await inspectBoth(page)], []);
    }
  });
}
