// The page about one block: what is kept on the device is never lost, and never trusted.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { type } from './blockform.mjs';
import { hardTimes } from './blockhard.mjs';
import { randomBlocks } from './blockmany.mjs';
import { ordinaryUse } from './blockuse.mjs';
import { settings } from './settings.mjs';
import { ready, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const address = `${origin}/block/`;

describe('the page about one block', () => {
  test('what nobody knows counts as a range, and says so', async (t) => {
    const { page } = await open(t);
    await page.click('[data-fact=soil-nitrate] > button');
    assert.equal(await page.inputValue('#soil-nitrate'), '0 to 10');
    assert.match(await page.innerText('[data-fact=soil-nitrate] .lacking'), /No soil report: counted as 0 to 10 ppm NO3-N\..*0 to 46\.7 lb/);
    await page.fill('#well-nitrate', '');
    await page.locator('#well-nitrate').blur();
    assert.equal(await page.inputValue('#well-nitrate'), '0 to 10');
  });

  test('the block sheet is one side, with seven feeds and six signals', async (t) => {
    for (const way of ['block/', 'es/bloque/']) {
      const { page } = await open(t, null, null, way);
      await page.evaluate(type, { 'spacing-tree': ['12'], 'soil-nitrate': ['0'], 'well-nitrate': ['10'], 'need-rate': ['7.9'], 'emitters-known': ['6'],
        'feeds-last': ['2027-10-20'], 'feeds-material': ['UAN-32'] });
      assert.equal(await page.locator('.feeds li:visible').count(), 7);
      assert.equal(await page.locator('.cautions .signal:visible').count(), 6);
      await page.waitForSelector('body.paper'); // which adds a code
      for (const format of ['Letter', 'A4']) {
        const sides = (await page.pdf({ format })).toString('latin1').match(/\/Type\s*\/Page\b/g);
        assert.equal(sides.length, 1, `${way} on ${format}`);
      }
    }
  });

  test('a plan for a first-leaf block takes at most 20 taps and swipes from the home page, on a telephone', async (t) => {
    const context = await browser.newContext({ viewport: { width: 390, height: 780 }, hasTouch: true });
    t.after(() => context.close());
    const page = await context.newPage();
    await page.goto(`${origin}/`);
    let moves = 0;
    const see = async (selector) => {
      for (;;) {
        const [top, bottom] = await page.locator(selector).first().evaluate((element) => {
          const box = element.getBoundingClientRect();
          return [box.top, box.bottom];
        });
        if (top >= 0 && bottom <= 780) {
          return;
        }
        await page.evaluate((by) => scrollBy(0, by), Math.min(600, top - 100));
        moves++;
        assert.ok(moves < 40, `${selector} does not come into view`);
      }
    };
    const tap = async (selector) => {
      await see(selector);
      await page.locator(selector).first().tap();
      moves++;
    };
    await tap('a[href="block/"]');
    await page.waitForSelector('.blocks:not([hidden])');
    for (const [id, text] of [['spacing-tree', '18'], ['spacing-row', '24'], ['trees-acres', '22'], ['soil-nitrate', '11'],
      ['soil-depth', '12'], ['well-nitrate', '6'], ['emitters-known', '7']]) {
      await tap(`#${id}`);
      await page.fill(`#${id}`, text);
    }
    for (const answer of ['.plan dl > div', '.feeds li', '.feeds + h3 + dl > div:last-of-type',
      '.cautions .signal:not([hidden])']) {
      await see(answer);
    }
    t.diagnostic(`${moves} taps and swipes`);
    assert.ok(moves <= 20, `${moves} taps and swipes`);
  });

  test('blocks are copied, renamed, removed and brought back', async (t) => {
    const { page, faults } = await open(t);
    await page.fill('#soil-nitrate', '21');
    await page.fill('#block-name', 'North');
    await page.click('.keep');
    await page.click('.copy');
    assert.deepEqual(await names(page), ['North', 'North 2']);
    await page.fill('#block-name', 'South');
    await page.click('.rename');
    assert.deepEqual(await names(page), ['North', 'South']);
    await page.fill('#soil-nitrate', '5');
    await kept(page);
    await page.click('.remove');
    assert.deepEqual(await names(page), ['North']);
    await page.click('.blocks [role=status] button');
    assert.deepEqual(await names(page), ['North', 'South']);
    assert.equal(await page.inputValue('#soil-nitrate'), '5');
    await page.selectOption('#block-chosen', 'North');
    assert.equal(await page.inputValue('#soil-nitrate'), '21');
    assert.deepEqual(faults, []);
  });

  test('a file brings blocks to another device, and loses none', async (t) => {
    const { page } = await open(t);
    await page.fill('#soil-nitrate', '21');
    await page.fill('#block-name', 'North');
    await page.click('.keep');
    const [saved] = await Promise.all([page.waitForEvent('download'), page.click('.save')]);
    const text = readFileSync(await saved.path(), 'utf8');
    const other = (await open(t)).page;
    await other.fill('#block-name', 'North');
    await other.click('.keep');
    await load(other, text);
    assert.deepEqual(await names(other), ['North', 'North 2']);
    await other.selectOption('#block-chosen', 'North 2');
    assert.equal(await other.inputValue('#soil-nitrate'), '21');
    for (const [bad, sentence] of [
      [text.slice(0, 90), /damaged/], ['[]', /no file of blocks/], [text.replace('"version": 1', '"version": 2'), /newer/],
      [text.replace('"blocks": [', '"blocks": [3,'), /damaged/], ['x'.repeat(1_100_000), /too large/],
      ['{"course":"soil","version":1}', /no file of blocks/],
    ]) {
      await load(other, bad);
      assert.match(await said(other), sentence);
      assert.deepEqual(await names(other), ['North', 'North 2']);
    }
  });

  test('what was kept by a newer page, or is damaged, is left as it is', async (t) => {
    for (const before of ['{"version":9,"blocks":[]}', '{', '{"version":1,"blocks":[null]}']) {
      const { page } = await open(t, (text) => localStorage.setItem('blocks /', text), before);
      assert.match(await said(page), /cannot be read/);
      await page.fill('#block-name', 'North');
      await page.click('.keep');
      assert.match(await said(page), /cannot be read/);
      assert.equal(await page.evaluate(() => localStorage.getItem('blocks /')), before);
    }
  });

  test('where storage is forbidden or full the page works, and says that nothing is kept', async (t) => {
    const { page, faults } = await open(t, () => {
      Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
    });
    await page.fill('#block-name', 'North');
    await page.click('.keep');
    assert.match(await said(page), /keeps nothing/);
    await page.fill('#soil-nitrate', '20');
    assert.match(await page.innerText('.plan'), /93\.3 lb N\/ac present/);
    assert.deepEqual(faults, []);
  });

  test('another tab says that the blocks were changed', async (t) => {
    const { page, context } = await open(t);
    await page.fill('#block-name', 'North');
    await page.click('.keep');
    const other = await context.newPage();
    await other.goto(address);
    await other.waitForSelector('.blocks:not([hidden])');
    await other.fill('#soil-nitrate', '33');
    await kept(other, '33');
    await page.waitForFunction(() => /another tab/.test(document.querySelector('.blocks [role=status]').textContent));
    await page.click('.blocks [role=status] button');
    assert.equal(await page.inputValue('#soil-nitrate'), '33');
  });

  test('a link with hostile or absurd numbers shows them as text, or the example', async (t) => {
    const { page, context, faults } = await open(t);
    await page.fill('#soil-nitrate', '9.5');
    await page.click('.blocks [data-link]');
    const mark = new URL(page.url()).hash.match(/edition=\w+/)[0];
    const other = await context.newPage();
    for (const bad of ['<img src=x onerror=alert(1)>', '1e999', '-5', 'x'.repeat(5000), '9 to', '\0', 'javascript:1']) {
      await other.goto(`${address}#numbers&${mark}&soil-nitrate=${encodeURIComponent(bad)}`);
      await other.waitForFunction((bad) => {
        const input = document.getElementById('soil-nitrate');
        return input.getAttribute('aria-invalid') && input.value === bad.slice(0, 60);
      }, bad);
      assert.match(await other.innerText('.plan'), /–/);
    }
    assert.deepEqual(faults, []);
  });
});

const said = (page) => page.textContent('.blocks [role=status]');
const names = (page) => page.$$eval('#block-chosen option', (options) => options.slice(1).map((option) => option.text));

// kept waits until the numbers of the form are on the device.
const kept = (page, nitrate) => page.waitForFunction((nitrate) => {
  const { blocks, current } = JSON.parse(localStorage.getItem('blocks /'));
  const [text] = blocks[current].facts['soil-nitrate'];
  return text === document.getElementById('soil-nitrate').value && (!nitrate || text === nitrate);
}, nitrate);

const load = async (page, text) => {
  await page.evaluate(() => document.querySelector('.blocks [role=status]').replaceChildren());
  await page.setInputFiles('.blocks [type=file]', { name: 'blocks.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.waitForFunction(() => document.querySelector('.blocks [role=status]').textContent);
};

// open opens the page on a device of its own, and gives what it should not do.
async function open(t, before, text, way = 'block/') {
  const context = await browser.newContext({ acceptDownloads: true });
  t.after(() => context.close());
  const faults = [];
  context.on('weberror', (error) => faults.push(error.error().message));
  context.on('console', (message) => faults.push(message.text()));
  const page = await context.newPage();
  if (before) {
    await page.addInitScript(before, text);
  }
  await page.goto(`${origin}/${way}`);
  await ready(page);
  await page.waitForSelector('.blocks:not([hidden])');
  return { context, page, faults };
}

randomBlocks(origin, open);
hardTimes(origin, open, { said, names, kept });
ordinaryUse(origin, open, { said, kept });
