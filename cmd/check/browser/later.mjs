// The script that works ranges comes after the page is live. Until then single numbers are answered, and a range is not.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { readGuide } from './content.mjs';
import { expectAnswers, expectNative } from './expect.mjs';
import { work } from './native.mjs';
import { field, put, state } from './reader.mjs';
import { settings } from './settings.mjs';
import { start, unfold, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const path = 'guides/soil/'; // its example has no range
const guide = readGuide(path);
const answers = (reported) => work(guide.worksheets, { soil: { nitrate: `${reported} ppm NO3-N` } });

// open opens a page whose script for ranges does as asked, and notes when the page was live and when that was fetched.
async function open(t, address, ranges) {
  const page = await browser.newPage();
  t.after(() => page.close());
  await unfold(page);
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => faults.push(message.text()));
  await page.addInitScript(() => {
    new MutationObserver(() => { globalThis.liveAt ??= document.body?.matches('.live') ? performance.now() : undefined; })
      .observe(document, { subtree: true, childList: true, attributes: true });
    document.addEventListener('securitypolicyviolation', (event) => console.error(event.violatedDirective));
  });
  await page.route('**/ranges.*.js', ranges);
  await page.goto(address, { waitUntil: 'domcontentloaded' }); // a script that is held back may hold back the rest
  return { page, faults };
}

// The script for what comes after is not held back.
const isLive = (page) => page.waitForSelector('body.live.after');
const reported = (page) => field(page, 'soil', 'nitrate');

// expectNone holds the page to its sentence for a range that comes too early, and to no answer.
async function expectNone(page) {
  assert.equal(await reported(page).getAttribute('aria-invalid'), 'true');
  assert.match(await page.locator('.fault:visible').first().textContent(), /a part of this page that has not loaded yet/);
  const shown = await page.locator('#worksheet-soil .answer .total:visible').allTextContents();
  assert.ok(shown.every((line) => !/^[$\d]/.test(line.trim())), `an answer: ${shown}`);
}

test('a page of single numbers is live before', async (t) => {
  let release;
  const held = new Promise((resolve) => { release = resolve; });
  const { page, faults } = await open(t, `${origin}/${path}`, (route) => held.then(() => route.continue()));
  await isLive(page);
  await put(reported(page), '15');
  expectAnswers(guide, await state(page), answers('15'));
  await put(reported(page), '10 to 15');
  await expectNone(page);
  release();
  await page.waitForFunction(() => globalThis.findRanges);
  expectAnswers(guide, await state(page), answers('10 to 15'));
  const { live, fetched } = await page.evaluate(() => ({
    live: globalThis.liveAt,
    fetched: performance.getEntriesByType('resource').find(({ name }) => name.includes('/ranges.')).startTime,
  }));
  assert.ok(live <= fetched, `live after ${live} ms, and the script was fetched after ${fetched} ms`);
  assert.deepEqual(faults, []);
});

test('a range has no answer where the script does not come', async (t) => {
  const { page } = await open(t, `${origin}/${path}`, (route) => route.abort());
  await isLive(page);
  await put(reported(page), '10 to 15');
  await expectNone(page);
  await put(reported(page), '15');
  expectAnswers(guide, await state(page), answers('15'));
});

test('a page whose example has a range waits for the script, or stays as printed', async (t) => {
  const ranged = readGuide('guides/ounces/');
  const { page } = await open(t, `${origin}/guides/ounces/`, (route) => route.abort());
  await page.waitForFunction(() => document.querySelector('.worksheet input').readOnly);
  assert.equal(await page.locator('body.live').count(), 0);
  expectNative(ranged, await state(page), work(ranged.worksheets), new Set());
  const again = await open(t, `${origin}/guides/ounces/`, (route) => route.continue());
  await isLive(again.page);
  assert.equal(await again.page.evaluate(() => typeof globalThis.findRanges), 'function');
  assert.deepEqual(again.faults, []);
});

test('from a disk', async (t) => {
  const address = pathToFileURL(join(settings.site, path, 'index.html')).href;
  const { page, complaints, close } = await visit(browser, address);
  t.after(close);
  await put(reported(page), '10 to 15');
  expectAnswers(guide, await state(page), answers('10 to 15'));
  assert.deepEqual(complaints, []);
});
