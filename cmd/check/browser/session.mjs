// Records every request of a reading session, those of workers too: the browser's only proxy is a server of this test,
// which keeps each request with its headers and its body, whatever its host. The test has a browser of its own, so that
// it takes no processor time from pages that wait for a worker.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { host } from './offline-server.mjs';
import { field, put } from './reader.mjs';
import { settings } from './settings.mjs';
import { launch, ready } from './visit.mjs';

// Numbers and a name that are nowhere in the site.
const typed = ['7.3219', '9.3217', '13.4717', '17.6413', '6.1973', 'Rincon77'];

// Chromium itself asks this host about the fields of forms. A page can neither cause nor stop that.
const ofBrowser = 'content-autofill.googleapis.com:443';

const browser = await launch({ workers: true });

// A reader goes through the site: only files of the site are requested, and no request has what the reader typed.
test('a reading session tells nobody a number', async (t) => {
  t.diagnostic(`${await readAlong(t)} requests, each for a file of the site, with no number and no body`);
});

async function readAlong(t) {
  const served = await host(settings.site);
  const site = 'http://localhost/'; // the proxy answers in its place
  const worker = `${site}worker.js`;
  const context = await browser.newContext({ proxy: { server: served.site, bypass: '<-loopback>' } });
  t.after(async () => { await context.close(); await served.close(); });
  const page = await context.newPage();
  const go = async (path) => { await page.goto(site + path); await ready(page); };
  const type = (sheet, given, text) => put(field(page, sheet, given), text);

  await go('');
  await go('block/');
  await page.fill('#block-name', typed[5]);
  await page.click('.keep');
  await put(page.locator('#soil-nitrate'), typed[0]);
  await page.click('.blocks [data-link]');
  assert.ok(page.url().includes(typed[0]), 'the address has no number, so nothing could be told');
  await page.reload(); // with the numbers in its address
  await ready(page);
  await page.locator('main a[href$="guides/soil/"]').first().click(); // by a link, from an address with numbers
  await page.waitForURL(`${site}guides/soil/`);
  await ready(page);
  await type('soil', 'nitrate', typed[1]);
  await go('guides/water/');
  await type('well', 'nitrate', typed[2]);
  await go('guides/plan/');
  await type('need', 'rate', typed[4]);
  await page.click('nav.languages a');
  await page.waitForURL(/\/es\//);
  await ready(page);
  await go('workshops/report/');
  await answer(page, typed[3]);
  await go('es/courses/feeding/suelo/');
  await type('soil', 'nitrate', typed[3]);
  await page.getByRole('button', { name: /Guardar todo el sitio/ }).click();
  await page.getByText(/Todo el sitio está guardado/).waitFor({ timeout: 120_000 });

  const away = served.seen.map(({ url }) => url).filter((url) => !url.startsWith(site) && url !== ofBrowser);
  assert.deepEqual(away, [], 'a request left the site');
  for (const one of served.seen) {
    assert.equal(one.body, '', `${one.method} ${one.url} has a body`);
    const told = decodeURIComponent(`${one.method} ${one.url} ${Object.values(one.headers).join(' ')}`);
    assert.ok(!typed.some((text) => told.includes(text)), `a reader's number left the device: ${told}`);
    // The worker's own requests come from its file; those of a page tell nothing of its address.
    const from = one.headers.referer ?? worker;
    assert.equal(from, worker, `${one.url} is told where the reader came from`);
  }
  return served.seen.filter(({ url }) => url !== ofBrowser).length;
}

async function answer(page, text) {
  await page.locator('.exercise .entry input').first().fill(text);
  await page.locator('.exercise button', { hasText: /Check|Comprobar/ }).first().click();
}
