// Text that was written for the example: it stays as it is, each part of it with other numbers after it has them beside
// it, by name, and none moves while the reader types. And the numbers of sources, which lead to the list and back.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { field, type, whole } from './reader.mjs';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const address = `${origin}/guides/margin/`;

// The notes that are seen, as they read.
const notes = (page) => page.evaluate(() => [...document.querySelectorAll('.margin.own')]
  .filter((note) => note.checkVisibility()).map((note) => {
    const copy = note.cloneNode(true);
    copy.querySelectorAll('[hidden]').forEach((hidden) => hidden.remove());
    return copy.textContent.replaceAll(/\s+/g, ' ').trim();
  }));

// The text without its notes: what the author wrote.
const text = (page) => page.evaluate(() => {
  const copy = document.querySelector('article').cloneNode(true);
  copy.querySelectorAll('.worksheet, .margin, .passage, .drawing').forEach((part) => part.remove());
  return copy.textContent.replaceAll(/\s+/g, ' ');
});

const told = (...numbers) => `Written for the example. Yours: ${numbers.join(' ')}`;
const nitrogen = (number) => `Nitrogen in this layer: ${number} lb N/ac present`;
const depth = 'Depth of the sample: 12 in';
const report = (number) => `Nitrate on the report: ${number} ppm NO3-N`;
const ofSoil = (n, ofLayer) => [
  told(nitrogen(n)), told(depth, report(ofLayer), nitrogen(n)), told(depth), told(nitrogen(n)), told(depth, nitrogen(n)),
  told(depth, nitrogen(n)), told(nitrogen(n)), told(depth, nitrogen(n)),
];

// Several at a time: a page waits for the browser as often as the browser for a page.
describe('text, margin and sources', { concurrency: 3 }, () => {
  for (const width of [320, 1280]) {
    test(`the margin at ${width} px`, async (t) => {
      const { page, complaints, close } = await visit(browser, address, { width });
      t.after(close);
      const [example, written] = [await whole(page), await text(page)];
      assert.deepEqual(await notes(page), [], 'something is said of the example');
      const nitrate = field(page, 'soil', 'nitrate');
      await nitrate.fill(''); // the field comes into view
      await nitrate.fill('12');
      // Where notes stand close above it, the next worksheet makes room for them; what is before it stays.
      const places = () => page.evaluate(() => [...document.querySelectorAll('article > :not(small, #worksheet-well, '
        + '#worksheet-well ~ *)')].map((part) => Math.round(part.getBoundingClientRect().top + scrollY)));
      const top = () => nitrate.evaluate((input) => Math.round(input.getBoundingClientRect().top));
      const before = [await top(), await places()];
      await type(nitrate, '15');
      assert.deepEqual(await notes(page), ofSoil('60', '15'));
      assert.equal(await text(page), written, 'the text changed under the reader');
      // A page scrolls by whole pixels, and text has parts of one.
      assert.ok(Math.abs(await top() - before[0]) <= 1, 'the field moved while the reader typed');
      if (width === 1280) {
        assert.deepEqual(await places(), before[1], 'the text moved');
      }
      assert.equal(await page.locator('li > .own + ul').count(), 1, 'the note does not stand with its own item');

      await type(nitrate, '12.0');
      assert.deepEqual(await whole(page).then(({ marks }) => marks), example.marks, 'the same number is no other');
      await type(nitrate, '10 to 15');
      assert.deepEqual(await notes(page), ofSoil('40 to 60', '10 to 15'));
      await type(nitrate, '');
      const now = await notes(page);
      assert.equal(now[0], told('Nitrogen in this layer: no answer yet'));
      assert.ok(now.every((note) => !note.includes('–')), 'a blank is in the margin');
      await nitrate.fill('12');

      await type(field(page, 'well', 'nitrate'), '6');
      assert.deepEqual(await notes(page), [told('Nitrate in the water: 6 ppm NO3-N')]);
      await page.locator('#worksheet-well [data-reset]').click();
      await page.evaluate(() => document.activeElement.blur());
      assert.deepEqual(await whole(page), example);
      assert.deepEqual(complaints, []);
    });
  }

  test('a passage says the case of the reader', async (t) => {
    const { page, complaints, close } = await visit(browser, address);
    t.after(close);
    const says = () => page.evaluate(() => {
      const copy = document.querySelector('.passage').cloneNode(true);
      copy.querySelectorAll('[hidden]').forEach((hidden) => hidden.remove());
      return copy.textContent.replaceAll(/\s+/g, ' ').trim();
    });
    const [nitrate, water] = [field(page, 'soil', 'nitrate'), field(page, 'well', 'nitrate')];
    const waiting = 'This depends on a worksheet that has no answer yet.';
    const partly = 'For some of these numbers:';
    for (const [input, typed, said] of [
      [nitrate, '12', 'Some, 48 lb/ac of it.'],
      [nitrate, '3', 'Little, only 12 lb/ac.'],
      [nitrate, '25', 'Much, with 100 lb/ac from the soil and 5 ppm in the water.'],
      [water, '1', 'Some, 100 lb/ac of it.'],
      [water, '', waiting],
      // Each case is filled from that part of the range in which it holds.
      [water, '1 to 3', `${partly} Much, with 100 lb/ac from the soil and 2 to 3 ppm in the water. `
        + `${partly} Some, 100 lb/ac of it.`],
      [nitrate, '4 to 14', `${partly} Little, only 16 to 20 lb/ac. ${partly} Some, 20 to 56 lb/ac of it.`],
      [nitrate, 'abc', waiting],
      [nitrate, '12', 'Some, 48 lb/ac of it.'],
    ]) {
      await type(input, typed);
      assert.equal(await says(), said, `with ${typed}`);
      await page.emulateMedia({ media: 'print' });
      assert.ok(await page.locator('.passage').isVisible());
      await page.emulateMedia({ media: 'screen' });
    }
    assert.deepEqual(complaints, []);
  });

  test('without a script a passage says the case of the example, and nothing else', async (t) => {
    const { page, close } = await visit(browser, address, { script: false });
    t.after(close);
    assert.deepEqual(await page.locator('.passage > :visible').allTextContents(), ['Some, 48 lb/ac of it.']);
    assert.equal(await page.locator('.passage > *').count(), 4);
    assert.equal(await page.locator('.margin.own:visible').count(), 0);
  });

  test('a reader is told once by ear', async (t) => {
    const { page, close } = await visit(browser, address);
    t.after(close);
    await page.clock.install({ time: 0 });
    await page.clock.pauseAt(60_000);
    const heard = async () => {
      await page.clock.runFor(1000);
      return (await page.locator('[role=status]').allTextContents()).join(' ');
    };
    const nitrate = field(page, 'soil', 'nitrate');
    const beside = /The text is written for the example\. Your numbers are beside it\./;
    await type(nitrate, '1');
    assert.match(await heard(), beside);
    await type(nitrate, '15');
    assert.doesNotMatch(await heard(), beside);
    await type(nitrate, '12');
    assert.doesNotMatch(await heard(), beside);
    await type(nitrate, '15');
    assert.match(await heard(), beside);
    const notes = page.locator('.margin.own:visible');
    assert.equal(await notes.first().getAttribute('role'), 'note');
    assert.equal(await page.locator('.margin.own [aria-live], .margin.own[aria-live], article [role=status] .own').count(),
      0, 'a note is announced by itself');
  });

  test('no name that is read out has a number that the reader changed', async (t) => {
    const { page, close } = await visit(browser, address);
    t.after(close);
    const names = await page.evaluate(() => [...document.querySelectorAll('article [aria-label], article [title]')]
      .filter((named) => !named.closest('.worksheet'))
      .map((named) => `${named.getAttribute('aria-label')} ${named.getAttribute('title')}`));
    assert.ok(names.length > 0);
    assert.deepEqual(names.filter((name) => /\d/.test(name.replace(/^(Source \d+|.*, \d+$)/, ''))), []);
  });

  test('paper says whose numbers are on it', async (t) => {
    const { page, close } = await visit(browser, address);
    t.after(close);
    const printed = page.locator('.printed');
    for (const [number, shown] of [['12', false], ['15', true], ['12', false]]) {
      await type(field(page, 'soil', 'nitrate'), number);
      assert.equal(await printed.isVisible(), false, 'it is for paper');
      await page.emulateMedia({ media: 'print' });
      assert.equal(await printed.isVisible(), shown, `printed with ${number}`);
      assert.deepEqual(await notes(page), shown ? ofSoil('60', '15') : []);
      await page.emulateMedia({ media: 'screen' });
    }
  });

  test('the number of a source leads to it and back by keyboard', async (t) => {
    const { page, close } = await visit(browser, address);
    t.after(close);
    await page.locator('p a[role=doc-biblioref]').press('Enter');
    assert.match(await page.locator('p a[role=doc-biblioref]').getAttribute('aria-label'), /^Source \d: Montana State/);
    const entry = page.locator('[role=doc-bibliography] li:target');
    assert.match(await entry.textContent(), /Soil Scoop: questions to ask about soil tests/);
    await page.keyboard.press('Tab');
    const focused = () => page.evaluate(() => document.activeElement.textContent);
    assert.equal(await focused(), 'Soil Scoop: questions to ask about soil tests', 'the focus does not go on there');
    await entry.locator('a[role=doc-backlink]', { hasText: '6 in' }).press('Enter');
    assert.match(await page.evaluate(() => document.querySelector(':target').textContent), /†\d+$/);
  });
});
