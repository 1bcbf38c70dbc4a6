// A pressed site without a network: the pages that were opened, the whole site once it is kept, and a new edition that
// waits. The network is really cut: the server ends its connections and takes no more.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, describe, test } from 'node:test';
import { readGuide } from './content.mjs';
import { expectAnswers } from './expect.mjs';
import { work } from './native.mjs';
import { host } from './offline-server.mjs';
import { field, put, state } from './reader.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { launch, ready, unfold } from './visit.mjs';

const folder = mkdtempSync(join(tmpdir(), 'offline-'));
after(() => rmSync(folder, { recursive: true }));
const browser = await launch({ workers: true });

// Two more editions of the site: every page says so at its foot, in the notice that it has.
const second = edition('Second', 'Segunda');
const third = edition('Third', 'Tercera');

function edition(notice, inSpanish) {
  const content = join(folder, `content-${notice}`);
  const to = join(folder, `site-${notice}`);
  cpSync(settings.content, content, { recursive: true });
  const file = join(content, 'site.yaml');
  writeFileSync(file, readFileSync(file, 'utf8').replace('    Sorrel Flat is', `    ${notice} edition. Sorrel Flat is`)
    .replace('    Sorrel Flat es', `    ${inSpanish} edición. Sorrel Flat es`));
  const picture = join(content, 'manual', 'rows.svg');
  writeFileSync(picture, readFileSync(picture, 'utf8').replace('</svg>', `<!-- ${notice} edition --></svg>`));
  execFileSync(settings.acreleaf, ['press', '--from', content, '--to', to]);
  return to;
}

// open serves a site to a new reader.
async function open(t, base, site = settings.site) {
  const served = await host(site, base);
  const context = await browser.newContext();
  t.after(async () => { await context.close(); await served.close(); });
  const left = [];
  context.on('request', (request) => request.url().startsWith(served.site) || left.push(request.url()));
  const faults = [];
  const tab = async () => {
    const page = await context.newPage();
    // That a page does not come a browser tells by itself.
    page.on('console', (message) => /ERR_CONNECTION|404/.test(message.text()) || faults.push(message.text()));
    page.on('pageerror', (error) => faults.push(error.message));
    await unfold(page);
    return page;
  };
  return { served, page: await tab(), left, faults, tab };
}

const foot = (page) => page.locator('.foot div', { has: page.locator('a[href$="offline/"]') });
const says = (page, text) => foot(page).getByText(text).waitFor({ timeout: 120_000 });

// visit opens a page, and waits until it says that it is kept.
async function visit(page, address) {
  await page.goto(address);
  await says(page, /is kept on this device/);
}

// until asks a page again and again: a promise is something to waitForFunction, whatever comes of it.
async function until(page, ask) {
  for (const end = Date.now() + 60_000; !await page.evaluate(ask); await page.waitForTimeout(50)) {
    assert.ok(Date.now() < end, `never: ${ask}`);
  }
}

const press = (page, name) => page.getByRole('button', { name }).click();

// changed types another number into the first worksheet of a guide that takes one, and expects what the program answers.
async function changed(page, path) {
  const guide = readGuide(path);
  for (const [sheet, { givens }] of guide.worksheets) {
    for (const [given, text] of Object.entries(givens)) {
      const [, number, unit] = text.match(/^([\d.]+)( .*)?$/) ?? [];
      const other = number && String(Number((number * 1.25).toPrecision(3)));
      const native = number && work(guide.worksheets, { [sheet]: { [given]: other + (unit ?? '') } });
      if (native && ![...native.values()].some(({ error }) => error)) {
        await ready(page);
        await put(field(page, sheet, given), other);
        expectAnswers(guide, await state(page), native);
        return true;
      }
    }
  }
  return false;
}

const notice = (page) => page.locator('.foot').textContent().then((text) => text.match(/(Second|Third) edition/)?.[1] ?? 'First');

const kept = (page) => page.evaluate(async () => {
  const names = await caches.keys();
  const lists = await Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)));
  return Object.fromEntries(names.map((name, i) => [name, lists[i]]));
});

const count = { guides: 0 };
const together = { concurrency: 3 }; // most of the time a page waits for what comes after it

describe('without a signal', together, () => {
  describe('after one visit', together, () => {
    for (const base of ['/', '/office/young trees/']) {
      test(`a guide works under ${base}`, async (t) => {
        const { served, page, left, faults } = await open(t, base);
        const soil = `${served.site}guides/soil/`;
        await visit(page, soil);
        await served.cut();
        for (const address of [soil, `${served.site}guides/soil`, `${soil}?acres=40`, `${soil}#worksheet-soil`, served.site]) {
          await page.goto(address);
          assert.match(await page.title(), /·|Office/);
          if (address !== served.site) {
            assert.ok(await changed(page, 'guides/soil/'));
          }
        }
        assert.deepEqual([left, faults], [[], []]);
        assert.deepEqual(served.requests.filter((url) => /\d\d\.\d|acres/.test(url)), [], 'a number left the device');
      });
    }

    test('a page that is not there says so, and offers those that are', async (t) => {
      const { served, page, faults } = await open(t, '/', third);
      await visit(page, `${served.site}guides/soil/`);
      await served.cut();
      for (const [address, language, text] of [
        ['guides/water/', 'en', /There is no signal here.*guides\/water\//],
        ['es/guides/agua/', 'es', /Aquí no hay señal.*es\/guides\/agua\//],
        ['<img src=x onerror=alert(1)>/', 'en', /There is no signal here.*%3Cimg/],
      ]) {
        await page.goto(served.site + address);
        await page.locator('main p:not(.summary)', { hasText: text }).waitFor();
        assert.equal(await page.locator('html').getAttribute('lang'), language);
        assert.equal(await page.locator('main img').count(), 0);
      }
      await page.goto(`${served.site}guides/water/`);
      const listed = page.locator('main ul a');
      await listed.first().waitFor();
      assert.deepEqual(await listed.evaluateAll((links) => links.map(({ pathname }) => pathname)), ['/', '/terms/', '/guides/soil/']);
      await listed.last().click();
      assert.ok(await changed(page, 'guides/soil/'));
      await page.locator('.foot input[type=search]').fill('soil report');
      await page.keyboard.press('Enter');
      await page.waitForURL(`${served.site}terms/#?soil%20report`);
      await page.getByText(/Words found: \d/).waitFor();
      assert.deepEqual(served.requests.filter((url) => /soil.*report/.test(url)), [], 'a word left the device');
      assert.deepEqual(faults, []);
    });
  });

  test('the whole site is kept with one press, and removed with one', async (t) => {
    const { served, page, tab, left: gone, faults } = await open(t, '/office/');
    await visit(page, `${served.site}guides/soil/`);
    const list = JSON.parse(await page.evaluate(async () => {
      const [cache] = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
      return (await cache.match('/office/?list')).text();
    }));
    const bytes = Object.values(list.files).reduce((sum, [, size]) => sum + size, 0);
    const size = `(${(bytes / 1e6).toFixed(1)} MB)`;
    t.diagnostic(`the whole site: ${Object.keys(list.files).length} files, ${bytes} bytes`);
    await press(page, `Keep the whole site on this device ${size}`);
    await says(page, `The whole site is kept on this device ${size} and works without a signal.`);
    const there = Object.values(await kept(page)).flat();
    assert.equal(there.filter((url) => !url.includes('?')).length, Object.keys(list.files).length);
    assert.ok(!there.some((url) => url.includes('/leader/')), 'the notes of a leader are on everyone\'s device');
    await served.cut();
    const left = [...guides];
    await Promise.all(Array.from({ length: 4 }, async () => {
      const one = await tab();
      for (let guide; (guide = left.pop());) {
        await one.goto(served.site + guide);
        if (await changed(one, guide)) {
        count.guides++;
      }
      }
      await one.close();
    }));
    await served.mend();
    await page.evaluate(() => caches.open('another site'));
    await page.goto(`${served.site}guides/soil/`);
    await press(page, 'Remove the site from this device');
    await says(page, /Nothing is kept now/);
    assert.deepEqual(Object.keys(await kept(page)), ['another site']);
    await visit(page, `${served.site}guides/water/`);
    assert.deepEqual([gone, faults], [[], []]);
  });

  describe('a new edition', together, () => {
    test('waits, is accepted, and never mixes with the old', async (t) => {
      const { served, page, tab, faults } = await open(t);
      const soil = `${served.site}guides/soil/`;
      const rows = `${served.site}manual/text/`; // it shows a picture whose name does not change with its bytes
      const picture = (from) => from.evaluate(async () => (await fetch('../rows.svg')).text());
      await visit(page, rows);
      await visit(page, soil);
      const other = await tab();
      await other.goto(soil);
      served.folder = second;
      await page.reload();
      await page.getByText('A new edition of this site is ready.').waitFor();
      for (const address of [soil, served.site, rows]) {
        await other.goto(address);
        assert.equal(await notice(other), 'First', `${address} before it is accepted`);
      }
      assert.doesNotMatch(await picture(other), /edition/);
      await put(field(page, 'soil', 'nitrate'), '15');
      await page.waitForTimeout(500);
      await press(page, 'Use it now');
      await page.waitForFunction(() => document.querySelector('.foot').textContent.includes('Second edition'));
      await other.waitForFunction(() => document.querySelector('.foot').textContent.includes('Second edition'));
      await ready(page);
      assert.equal(await field(page, 'soil', 'nitrate').inputValue(), '15', 'what was typed is lost');
      assert.equal(Object.keys(await kept(page)).length, 1, 'the old edition is still there');
      await served.cut();
      for (const address of [soil, served.site, rows]) {
        await page.goto(address);
        assert.equal(await notice(page), 'Second', `${address} after it was accepted`);
      }
      assert.match(await picture(page), /Second edition/);
      assert.ok(await page.goto(soil) && await changed(page, 'guides/soil/'));
      assert.deepEqual(faults, []);
    });

    test('waits though all tabs were closed, and through the next one', async (t) => {
      const { served, page, tab } = await open(t);
      const soil = `${served.site}guides/soil/`;
      await visit(page, soil);
      served.folder = second;
      await page.reload();
      await page.getByText('A new edition of this site is ready.').waitFor();
      await press(page, 'Later');
      await page.close();
      const later = await tab();
      await later.goto(soil);
      assert.equal(await notice(later), 'First');
      await later.getByText('A new edition of this site is ready.').waitFor();
      served.folder = third;
      await later.reload();
      assert.equal(await notice(later), 'First');
      await until(later, async () => (await navigator.serviceWorker.getRegistration()).waiting);
      await press(later, 'Use it now');
      await later.waitForFunction(() => document.querySelector('.foot').textContent.includes('Third edition'));
      assert.equal(Object.keys(await kept(later)).length, 1);
    });

    test('a page that is not kept comes whole from the server, and is not kept beside the old', async (t) => {
      const { served, page, faults } = await open(t);
      await visit(page, `${served.site}guides/soil/`);
      served.folder = second;
      await page.goto(`${served.site}guides/water/`);
      assert.equal(await notice(page), 'Second');
      await says(page, 'This page is not kept on this device.');
      assert.ok(await changed(page, 'guides/water/'));
      await page.goto(`${served.site}guides/soil/`);
      assert.equal(await notice(page), 'First');
      assert.deepEqual(faults, []);
    });

    test('a worker that comes by half, or a site that is half exchanged, leaves the old as it was', async (t) => {
      const { served, page } = await open(t);
      const soil = `${served.site}guides/soil/`;
      await visit(page, soil);
      for (const spoil of [
        (path, bytes) => (path === 'worker.js' ? bytes.subarray(0, bytes.length / 2) : bytes),
        (path, bytes) => (path === 'guides/soil/index.html' ? readFileSync(join(settings.site, path)) : bytes),
      ]) {
        Object.assign(served, { folder: second, spoil });
        await page.reload();
        await page.evaluate(() => navigator.serviceWorker.getRegistration().then((one) => one.update()).catch(() => {}));
        await until(page, async () => !(await navigator.serviceWorker.getRegistration()).installing);
        assert.equal(await notice(page), 'First');
        assert.equal(await page.getByText('A new edition').count(), 0);
      }
      await served.cut();
      await page.goto(soil);
      assert.ok(await changed(page, 'guides/soil/'));
    });

    test('a site that has no worker any more is let go of', async (t) => {
      const { served, page } = await open(t);
      await visit(page, `${served.site}guides/soil/`);
      served.folder = second;
      served.spoil = (path, bytes) => (path === 'worker.js' ? null : bytes);
      await page.reload();
      await until(page, async () => !(await navigator.serviceWorker.getRegistrations()).length
        && !(await caches.keys()).length);
      await page.reload();
      assert.equal(await notice(page), 'Second');
    });
  });

  describe('storage', together, () => {
    // Each is put before the worker, as it is served.
    for (const [name, [hurt, text]] of Object.entries({
      forbidden: ['caches.open = () => Promise.reject(new DOMException("no", "SecurityError"));', /keeps no pages of this site/],
      full: ['Cache.prototype.put = () => Promise.reject(new DOMException("no", "QuotaExceededError"));', /no room for more/],
      'full in the midst': ['const put = Cache.prototype.put; let left = 20; Cache.prototype.put = function (...own) '
        + '{ return left-- > 0 ? put.apply(this, own) : Promise.reject(new DOMException("no", "QuotaExceededError")); };',
      /no room for more/],
    })) {
      test(name, async (t) => {
        const { served, page, faults } = await open(t);
        served.spoil = (path, bytes) => (path === 'worker.js' ? Buffer.concat([Buffer.from(hurt), bytes]) : bytes);
        await page.goto(`${served.site}guides/soil/`);
        if (name === 'full in the midst') {
          await press(page, /Keep the whole site/);
        }
        await says(page, text);
        assert.ok(await changed(page, 'guides/soil/'));
        await page.goto(`${served.site}guides/water/`);
        assert.ok(await changed(page, 'guides/water/'));
        assert.deepEqual(faults, []);
      });
    }

    test('cleared while a page is open', async (t) => {
      const { served, page, faults } = await open(t);
      await visit(page, `${served.site}guides/soil/`);
      await page.evaluate(async () => { for (const name of await caches.keys()) { await caches.delete(name); } });
      await page.goto(`${served.site}guides/water/`);
      assert.ok(await changed(page, 'guides/water/'));
      assert.deepEqual(faults, []);
    });

    test('the signal is lost in the midst, and the next visit goes on', async (t) => {
      const { served, page } = await open(t);
      await visit(page, `${served.site}guides/soil/`);
      let left = 30;
      served.spoil = (path, bytes) => {
        if (left-- === 0) {
          served.cut();
        }
        return bytes;
      };
      await press(page, /Keep the whole site/);
      await says(page, /The signal was lost/);
      await page.getByRole('button', { name: /Keep the rest of the site/ }).waitFor();
      served.spoil = (path, bytes) => bytes;
      await served.mend();
      await page.goto(served.site);
      await says(page, /The whole site is kept/);
    });
  });

  test('without its own script, by half of it, or with a clock that is wrong by years, a page is live', async (t) => {
    for (const [spoil, hurt] of [
      [(path, bytes) => (/\/offline\./.test(path) ? null : bytes)],
      [(path, bytes) => (/\/offline\./.test(path) ? bytes.subarray(0, bytes.length / 2) : bytes)],
      [(path, bytes) => (path === 'worker.js' ? Buffer.concat([Buffer.from('Date.now = () => 4e12;'), bytes]) : bytes),
        () => { Date.now = () => 4e12; }],
    ]) {
      const { served, page } = await open(t);
      served.spoil = spoil;
      if (hurt) {
        await page.addInitScript(hurt);
        await visit(page, `${served.site}guides/soil/`);
        await served.cut();
      }
      await page.goto(`${served.site}guides/soil/`);
      assert.ok(await changed(page, 'guides/soil/'));
    }
  });

  test('a browser can install it', async (t) => {
    const { served, page } = await open(t, '/office/');
    await visit(page, served.site);
    const session = await page.context().newCDPSession(page);
    const { errors, data, url } = await session.send('Page.getAppManifest');
    assert.deepEqual([errors, url], [[], `${served.site}site.webmanifest`]);
    for (const { src, sizes } of JSON.parse(data).icons) {
      const size = await page.evaluate(async (address) => {
        const { width, height } = await createImageBitmap(await (await fetch(address)).blob());
        return `${width}x${height}`;
      }, new URL(src, url).href);
      assert.equal(size, sizes);
    }
  });

  test('the desk ends the worker of a site that was at its address', async (t) => {
    const { served, page } = await open(t);
    await visit(page, `${served.site}guides/soil/`);
    await served.cut();
    const desk = spawn(settings.acreleaf, ['desk', '--from', settings.content, '--port', String(served.port)]);
    t.after(() => desk.kill('SIGINT'));
    await new Promise((resolve) => desk.stdout.on('data', (text) => String(text).includes('Ctrl+C') && resolve()));
    await page.goto(`${served.site}guides/soil/`);
    await page.waitForFunction(() => document.querySelector('script[src^="/.desk/"]'));
    await until(page, async () => !(await navigator.serviceWorker.getRegistrations()).length);
    assert.deepEqual(await kept(page), {});
    await page.waitForTimeout(2000); // longer than a page waits before it starts a worker
    assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length), 0);
  });
});

test('enough guides were changed without a network', (t) => {
  t.diagnostic(`${count.guides} of ${guides.length} guides answered another number with the network cut`);
  assert.ok(count.guides >= 12);
});
