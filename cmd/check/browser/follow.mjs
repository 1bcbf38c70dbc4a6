// Sentences that were written for the example: each that shows other numbers says so, none moves while the reader
// types, and one press brings the whole page back. And the numbers of sources, which lead to the list and back.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { field, type, whole } from './reader.mjs';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const address = `${origin}/guides/follow/`;

// What each note says, with the beginning of the passage that it belongs to.
const notes = (page) => page.evaluate(() => [...document.querySelectorAll('.follows')].map((note) => ({
  of: (note.parentElement.matches('article') ? note.nextElementSibling : note.parentElement).textContent
    .replaceAll(/\s+/g, ' ').trim().slice(0, 12),
  says: note.firstChild.textContent, seen: note.checkVisibility(),
})));

const everywhere = ['Before the w', 'The top 12 i', 'An item with', 'Layer Nitrog'];

// Several at a time: a page waits for the browser as often as the browser for a page.
describe('sentences and sources', { concurrency: 3 }, () => {
  for (const width of [320, 1280]) {
    test(`the sentences at ${width} px`, async (t) => {
      const { page, complaints, close } = await visit(browser, address, { width });
      t.after(close);
      const example = await whole(page);
      assert.deepEqual(await notes(page), [], 'something is said of the example');
      const nitrate = field(page, 'soil', 'nitrate');
      await nitrate.fill(''); // the field comes into view
      await nitrate.fill('12');
      const places = () => page.evaluate(() => [...document.querySelectorAll('article > :not(small)')]
        .map((part) => Math.round(part.getBoundingClientRect().top + scrollY)));
      const top = () => nitrate.evaluate((input) => Math.round(input.getBoundingClientRect().top));
      const before = [await top(), await places()];
      await type(nitrate, '15');
      const now = await notes(page);
      assert.deepEqual(now.map(({ of }) => of), everywhere);
      assert.ok(now.every(({ seen }) => seen));
      assert.deepEqual(now.map(({ says }) => says.match(/for (.*)\.$/)[1]),
        ['48 lb/ac', '12 ppm, 48 lb/ac', '48 lb/ac', '48 lb/ac']);
      assert.equal(await top(), before[0], 'the field moved while the reader typed');
      if (width === 1280) {
        assert.deepEqual(await places(), before[1], 'the text moved');
      }
      assert.equal(await page.locator('li > .follows + ul').count(), 1, 'the note does not stand with its own item');

      await type(nitrate, '12.0');
      assert.deepEqual(await whole(page).then(({ marks }) => marks), example.marks, 'the same number is no other');
      await type(nitrate, '');
      assert.equal((await notes(page)).length, everywhere.length + 1, 'a depth stands without its nitrate');
      await nitrate.fill('12');

      await type(field(page, 'well', 'nitrate'), '6');
      assert.deepEqual((await notes(page)).map(({ of }) => of), ['The well has']);
      await type(nitrate, '15');
      await page.locator('#units [value=metric]').check();
      await page.locator('.follows button').first().click();
      assert.deepEqual(await notes(page), []);
      assert.equal(await page.locator('#units [value=metric]').isChecked(), true, 'the units were changed as well');
      assert.equal(await page.evaluate(() => document.activeElement.textContent), '48 lb/ac', 'the focus is lost');
      await page.locator('#units [value=us]').check();
      assert.deepEqual(await whole(page), example);
      assert.deepEqual(complaints, []);
    });
  }

  test('a reader is told once by ear', async (t) => {
    const { page, close } = await visit(browser, address);
    t.after(close);
    await page.clock.install({ time: 0 });
    await page.clock.pauseAt(60_000);
    const told = async () => {
      await page.clock.runFor(1000);
      return (await page.locator('[role=status]').allTextContents()).join(' ');
    };
    const nitrate = field(page, 'soil', 'nitrate');
    await type(nitrate, '1');
    assert.match(await told(), /This page shows your numbers\./);
    await type(nitrate, '15');
    assert.doesNotMatch(await told(), /This page/);
    await page.locator('.follows button').last().press('Enter');
    assert.match(await told(), /The whole page shows the example again\./);
    await type(nitrate, '15');
    assert.match(await told(), /This page shows your numbers\./);
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
      assert.equal((await notes(page)).filter(({ seen }) => seen).length, shown ? everywhere.length : 0);
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
    assert.equal(await page.evaluate(() => document.querySelector(':target').textContent.slice(-1)), ']');
  });
});
