// The language of a first visit: the home page takes the browser's once, and never again against the reader's choice.
// And the index of words in each language (words.mjs).
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { settings } from './settings.mjs';
import { pages } from './site.mjs';
import { start } from './visit.mjs';
import { words } from './words.mjs';

const { browser, origin } = await start(settings.site);
const home = `${origin}/`;
const inSpanish = `${origin}/es/`;

// reader is somebody whose browser asks for a language, and who has not been here.
async function reader(t, locale, ways = {}) {
  const context = await browser.newContext({ locale, ...ways });
  t.after(() => context.close());
  return context.newPage();
}

// open goes to an address and waits until a page that goes on to another has done so.
async function open(page, address) {
  await page.goto(address, { waitUntil: 'load' });
  await settled(page);
}

async function settled(page) {
  await page.waitForTimeout(100);
  await page.waitForLoadState('load');
}

const toEnglish = '.languages a[hreflang=en]';

describe('the language of a first visit', () => {
  test('Spanish is taken once', async (t) => {
    const page = await reader(t, 'es-MX');
    await open(page, home);
    assert.equal(page.url(), inSpanish);
    await page.click(toEnglish);
    await settled(page);
    assert.equal(page.url(), home, 'what the reader chose does not stay');
    await page.reload();
    await settled(page);
    assert.equal(page.url(), home, 'what the reader chose does not stay after a reload');
    const again = await page.context().newPage();
    await open(again, home);
    assert.equal(again.url(), home, 'what the reader chose does not stay in another tab');
  });

  test('English stays, and so does a language that the site has not', async (t) => {
    for (const locale of ['en-US', 'fr-FR']) {
      const page = await reader(t, locale);
      await open(page, home);
      assert.equal(page.url(), home, locale);
    }
  });

  test('a page that was asked for is the one that is shown', async (t) => {
    const spanish = await reader(t, 'es-US');
    await open(spanish, `${home}guides/soil/`);
    assert.equal(spanish.url(), `${home}guides/soil/`);
    await open(spanish, home);
    assert.equal(spanish.url(), home, 'who read on in English is taken away');
    const english = await reader(t, 'en-US');
    await open(english, inSpanish);
    assert.equal(english.url(), inSpanish);
  });

  test('without a store, or without scripts, the page stays', async (t) => {
    const page = await reader(t, 'es-US');
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, 'localStorage', { get: () => { throw new Error('forbidden'); } });
    });
    await open(page, home);
    assert.equal(page.url(), home);
    const still = await reader(t, 'es-US', { javaScriptEnabled: false });
    await open(still, home);
    await still.click('.languages a[hreflang=es]');
    assert.equal(still.url(), inSpanish);
  });

  test('every page leads to its twin, or says that there is none', () => {
    const read = (path) => readFileSync(join(settings.site, path, path.endsWith('.html') ? '' : 'index.html'), 'utf8');
    const way = /<nav class="languages".*?(?:<span lang="[a-z]+">([^<]*) )?<a href="([^"]*)"(?: hreflang="([a-z]+)")?/;
    for (const path of pages.filter((one) => !/404|leader/.test(one))) {
      const [, lacks, href, language] = read(path).match(way) ?? [];
      const twin = new URL(href ?? 'nowhere', home + path).href.slice(home.length);
      assert.ok(pages.includes(twin), `${path} leads to ${twin}`);
      if (lacks) {
        assert.match(lacks, /todavía no está en español|not in English yet/, path);
      } else {
        assert.equal(language, path.startsWith('es/') ? 'en' : 'es', path);
        const [, , back] = read(twin).match(way);
        assert.equal(new URL(back, home + twin).href, home + path, `${twin} does not lead back`);
      }
    }
  });
});

describe('the index of words', () => words(origin, reader));
