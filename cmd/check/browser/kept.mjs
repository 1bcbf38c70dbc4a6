// What a reader typed is there again after a reload, by the way back and by a link; and nothing that storage, a link or
// a missing script does can hurt the page.
import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { readGuide } from './content.mjs';
import { expectAnswers, expectNative } from './expect.mjs';
import { work } from './native.mjs';
import { choose, field, put, state } from './reader.mjs';
import { settings } from './settings.mjs';
import { ready, start, unfold } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const path = 'guides/soil/';
const address = `${origin}/${path}`;
const guide = readGuide(path);
const answers = (reported) => work(guide.worksheets, { soil: { nitrate: `${reported} ppm NO3-N` } });
const reported = (page) => field(page, 'soil', 'nitrate');
const line = (page) => page.locator('#state').textContent();

const together = { concurrency: 3 }; // most of the time a page waits for the script that comes after it

// open opens a page in a tab of its own, and keeps what goes wrong in it.
async function open(t, to = address, before = async () => {}) {
  const context = await browser.newContext();
  const page = await context.newPage();
  t.after(() => context.close());
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => faults.push(message.text()));
  await unfold(page);
  await before(page);
  await page.goto(to);
  return { page, faults };
}

async function openReady(t, to, before) {
  const opened = await open(t, to, before);
  await ready(opened.page);
  return opened;
}

// expectShown expects the answers for one number of the report, and that number in its field.
async function expectShown(page, number) {
  assert.equal(await reported(page).inputValue(), number);
  expectAnswers(guide, await state(page), answers(number));
}

const isExample = (page) => expectShown(page, '9');

const kept = (page) => page.evaluate(() => Object.values(sessionStorage));

describe('typed numbers', together, () => {
  test('a reload brings them back', async (t) => {
    const { page, faults } = await openReady(t);
    await put(reported(page), '15');
    await page.reload();
    await ready(page);
    await expectShown(page, '15');
    assert.match(await line(page), /back, as you left them/);
    await put(reported(page), '12 to 15');
    await page.waitForTimeout(500);
    await page.reload();
    await ready(page);
    await expectShown(page, '12 to 15');
    assert.deepEqual(faults, []);
  });

  test('a unit and a choice come back with them', async (t) => {
    const { page, faults } = await openReady(t, `${origin}/guides/feeds/`);
    const list = page.locator('.worksheet .field > select').first();
    const unit = page.locator('.worksheet select[data-unit-for]').first();
    const entry = page.locator(`[id="${await unit.getAttribute('data-unit-for')}"]`);
    await choose(list, 1);
    await put(entry, '1.5');
    await choose(unit, 1);
    const own = () => page.evaluate(() => [...document.querySelectorAll('.field input, .field select')]
      .map((one) => one.value));
    const before = [await own(), (await state(page)).worksheets];
    await page.reload();
    await ready(page);
    assert.deepEqual([await own(), (await state(page)).worksheets], before);
    assert.deepEqual(faults, []);
  });

  test('the units that a reader chose are those of other pages, and a link keeps its numbers beside them', async (t) => {
    const { page, faults } = await openReady(t);
    const units = () => page.locator('.answer .total').first().innerText();
    for (const [system, unit] of [['metric', /kg N\/ha/], ['us', /lb N\/ac/]]) {
      await page.goto(`${origin}/guides/soil/`);
      await ready(page);
      await page.locator('#units label').nth(system === 'us' ? 0 : 1).click();
      assert.match(await units(), unit);
      for (const other of ['guides/water/#numbers&well-nitrate=9', 'es/guides/agua/']) {
        await page.goto(`${origin}/${other}`);
        await ready(page);
        assert.match(await units(), unit, other);
        assert.ok(page.url().endsWith(other));
      }
    }
    assert.deepEqual(faults, []);
  });

  test('to another guide and back, and forward again', async (t) => {
    const { page, faults } = await openReady(t);
    await put(reported(page), '15');
    await page.goto(`${origin}/guides/water/`);
    await ready(page);
    assert.equal(await page.locator('.yours').count(), 0, 'numbers of another guide');
    const [first] = await page.locator('.worksheet input[inputmode]').all();
    await put(first, '9');
    await page.goBack();
    await ready(page);
    await expectShown(page, '15');
    await page.goForward();
    await ready(page);
    assert.equal(await page.locator('.worksheet input[inputmode]').first().inputValue(), '9');
    await page.goto(address);
    await ready(page);
    await expectShown(page, '15');
    assert.deepEqual(faults, []);
  });

  test('what is typed at once is kept', async (t) => {
    const { page } = await open(t);
    await page.waitForSelector('body.live');
    await put(reported(page), '15');
    await page.waitForSelector('body.after');
    await page.reload();
    await ready(page);
    await expectShown(page, '15');
  });

  test('a number that cannot be used comes back as it was, with its sentence', async (t) => {
    const { page } = await openReady(t);
    await put(reported(page), 'abc');
    await page.reload();
    await ready(page);
    assert.equal(await reported(page).inputValue(), 'abc');
    assert.equal(await reported(page).getAttribute('aria-invalid'), 'true');
    assert.equal((await state(page)).worksheets.soil.void, true);
  });

  test('another tab knows nothing of them, and the example leaves nothing', async (t) => {
    const { page } = await openReady(t);
    await put(reported(page), '15');
    await page.waitForTimeout(500);
    assert.equal((await kept(page)).length, 1);
    await isExample((await openReady(t)).page);
    await page.locator('#worksheet-soil [data-reset]').click();
    await page.waitForTimeout(500);
    assert.deepEqual(await kept(page), []);
  });
});

test('back to the example can be undone', async (t) => {
  const { page, faults } = await openReady(t);
  const button = page.locator('#worksheet-soil [data-reset]');
  const printed = await button.textContent();
  await button.click();
  assert.equal(await button.textContent(), printed, 'there is nothing to undo');
  await put(reported(page), '15');
  await button.click();
  await isExample(page);
  assert.notEqual(await button.textContent(), printed);
  await button.click();
  await expectShown(page, '15');
  assert.equal(await button.textContent(), printed);
  await button.click();
  await put(reported(page), '20');
  assert.equal(await button.textContent(), printed, 'what is typed since would be lost');
  assert.deepEqual(faults, []);
});

test('undone, each option has its own number again', async (t) => {
  const { page } = await openReady(t, `${origin}/guides/feeds/`);
  const belonging = page.locator('input[data-for]').first();
  const [cell] = (await belonging.getAttribute('data-for')).split(' ');
  const list = page.locator(`select[data-cell="${cell}"]`);
  const sheet = await belonging.evaluate((input) => input.closest('.worksheet').id);
  await choose(list, 1);
  await put(belonging, '9.75');
  const button = page.locator(`#${sheet} [data-reset]`);
  await button.click();
  await button.click();
  assert.equal(await list.evaluate(({ selectedIndex }) => selectedIndex), 1);
  assert.equal(await belonging.inputValue(), '9.75');
});

describe('a link with numbers', together, () => {
  // linkOf gives the address that the button makes for a number of the report.
  async function linkOf(t, number) {
    const { page } = await openReady(t);
    await put(reported(page), number);
    await page.locator('#worksheet-soil [data-take]').click();
    await page.locator('#worksheet-soil footer').getByText('Link with these numbers').click();
    await page.waitForFunction(() => /address/.test(document.querySelector('#worksheet-soil footer p').textContent));
    return page.url();
  }

  test('shows them, and keeps them through a reload', async (t) => {
    const { page, faults } = await openReady(t, await linkOf(t, '15'));
    await expectShown(page, '15');
    assert.match(await line(page), /came with the link/);
    await page.reload();
    await ready(page);
    await expectShown(page, '15');
    await put(reported(page), '20');
    assert.equal(page.url(), address, 'the address has numbers that are no longer those of the page');
    await page.reload();
    await ready(page);
    await expectShown(page, '20');
    assert.deepEqual(faults, []);
  });

  test('from the page itself, and back to what was typed', async (t) => {
    const link = await linkOf(t, '15');
    const { page } = await openReady(t);
    await put(reported(page), '20');
    await page.evaluate((to) => { location.href = to; }, link);
    await page.waitForFunction(() => /came with the link/.test(document.getElementById('state').textContent));
    await expectShown(page, '15');
    await page.locator('#state button').click();
    await expectShown(page, '20');
    await page.reload();
    await ready(page);
    await expectShown(page, '20');
  });

  test('an anchor is an anchor', async (t) => {
    const { page } = await openReady(t, `${address}#worksheet-soil`);
    await isExample(page);
    assert.ok(await page.evaluate(() => scrollY) > 100);
    await put(reported(page), '15');
    assert.equal(page.url(), `${address}#worksheet-soil`);
  });

  test('from a disk', async (t) => {
    const file = pathToFileURL(join(settings.site, path, 'index.html')).href;
    const link = (await linkOf(t, '15')).split('#')[1];
    const { page, faults } = await openReady(t, `${file}#${link}`);
    await expectShown(page, '15');
    assert.deepEqual(faults, []);
  });

  const edition = async (t) => new URLSearchParams((await linkOf(t, '15')).split('#')[1]).get('edition');

  for (const [name, make, says, number] of [
    ['of another edition', () => 'edition=abc&soil-nitrate=15', /another edition/, '9'],
    ['without an edition', () => 'soil-nitrate=15', /another edition/, '9'],
    ['of nothing', () => '', /cut off, or for another edition/, '9'],
    ['with a name that is unknown', (mark) => `edition=${mark}&soil-nitrate=15&soil-nothing=3`, /left out/, '15'],
    ['with a unit that is unknown', (mark) => `edition=${mark}&soil-nitrate=15&soil-nitrate*=bushel`, /left out/, '9'],
    ['with a broken escape', (mark) => `edition=${mark}&soil-nitrate=%E0%A4%A&x=%`, /left out/, null],
    ['with markup', (mark) => `edition=${mark}&soil-nitrate=${encodeURIComponent('<img src=x onerror=alert(1)>')}`,
      /came with the link/, null],
    ['with the absurd', (mark) => `edition=${mark}&soil-nitrate=1e999`, /came with the link/, null],
    ['without an end', (mark) => `edition=${mark}&soil-nitrate=${'9'.repeat(100_000)}`, /came with the link/, null],
    ['with names of the language', (mark) => `edition=${mark}&__proto__=1&constructor=2&toString*=3`, /left out/, '9'],
  ]) {
    test(name, async (t) => {
      const { page, faults } = await openReady(t, `${address}#numbers&${make(await edition(t))}`);
      assert.match(await line(page), says);
      if (number) {
        await expectShown(page, number);
      } else { // it is as if it had been typed
        assert.equal(await reported(page).getAttribute('aria-invalid'), 'true');
        assert.equal((await state(page)).worksheets.soil.void, true);
        assert.ok((await reported(page).inputValue()).length <= 60);
      }
      assert.equal(await page.locator('#text img, main [onerror]').count(), 0);
      await put(reported(page), '20');
      await expectShown(page, '20');
      assert.deepEqual(faults, []);
    });
  }
});

describe('storage', together, () => {
  // Each is run in the page before its own script.
  for (const [name, hurt] of Object.entries({
    forbidden: () => Object.defineProperty(globalThis, 'sessionStorage', {
      get() { throw new DOMException('no', 'SecurityError'); },
    }),
    full: () => { Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); }; },
    missing: () => Object.defineProperty(globalThis, 'sessionStorage', { value: undefined }),
    'with something else in it': () => sessionStorage.setItem(location.pathname, '{"a": [1,'),
    'of another edition': () => sessionStorage.setItem(location.pathname, 'edition=old&soil-nitrate=15'),
  })) {
    test(`${name}`, async (t) => {
      const { page, faults } = await openReady(t, address, (opened) => opened.addInitScript(hurt));
      await isExample(page);
      if (/else|edition/.test(name)) {
        assert.match(await line(page), /another edition/);
      }
      await put(reported(page), '15');
      await page.waitForTimeout(500);
      await expectShown(page, '15');
      assert.equal(/keeps nothing here/.test(await line(page)), /forbidden|full|missing/.test(name));
      await page.locator('#worksheet-soil [data-reset]').click();
      await isExample(page);
      assert.deepEqual(faults, []);
    });
  }
});

describe('without', together, () => {
  // expectPlain expects the page as it was printed, which says so and whose boxes do not look alive.
  async function expectPlain(page) {
    expectNative(guide, await state(page), work(guide.worksheets), new Set());
    const look = await page.evaluate(() => {
      const seen = (one) => one.checkVisibility({ visibilityProperty: true });
      const style = (selector) => getComputedStyle(document.querySelector(selector));
      return {
        locked: [...document.querySelectorAll('.field input')].every((input) => input.readOnly)
          && [...document.querySelectorAll('.field select')].every((list) => list.disabled),
        buttons: [...document.querySelectorAll('.worksheet button')].filter(seen).length,
        says: seen(document.querySelector('.state > :first-child')) && !seen(document.getElementById('state')),
        frame: style('.entry').borderTopColor, box: style('.field input').backgroundColor,
      };
    });
    const clear = 'rgba(0, 0, 0, 0)';
    assert.deepEqual(look, { locked: true, buttons: 0, says: true, frame: clear, box: clear });
  }

  const spoiled = (from, to) => async (page) => page.route(address, async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: (await answer.text()).replace(from, to) });
  });
  for (const [name, before] of Object.entries({
    'the script': (page) => page.route('**/page.*.js', (route) => route.abort()),
    'WebAssembly': (page) => page.addInitScript(() => { delete globalThis.WebAssembly; }),
    'a module that works': spoiled('"m":"0061736d', '"m":"0061736e'),
    'data that can be read': spoiled('{"m":"', '{"m":'),
  })) {
    test(name, async (t) => {
      const { page } = await open(t, address, before);
      await page.waitForLoadState('networkidle');
      await expectPlain(page);
    });
  }

  test('the script for what comes after', async (t) => {
    const { page } = await open(t, address, (opened) => opened.route('**/after.*.js', (route) => route.abort()));
    await page.waitForSelector('body.live');
    await page.waitForFunction(() => globalThis.findRanges);
    await put(reported(page), '15');
    const own = (await state((await openReady(t)).page)).worksheets.soil.answers;
    const { answers: shown, yours } = (await state(page)).worksheets.soil;
    assert.ok(yours && shown.join() !== own.join(), 'the answers are still those of the example');
    const seen = await page.evaluate(() => [...document.querySelectorAll('#worksheet-soil .work p + p, [data-take]')]
      .filter((one) => one.checkVisibility({ visibilityProperty: true })).length);
    assert.equal(seen, 0, 'work of the example beside the answers of other numbers, or a button that does nothing');
    await page.locator('#worksheet-soil [data-reset]').click();
    expectAnswers(guide, await state(page), work(guide.worksheets));
  });

  test('nothing moves when the page becomes live', async (t) => {
    for (const width of [320, 1280]) {
      const { page } = await open(t, 'about:blank');
      await page.setViewportSize({ width, height: 800 });
      await page.route('**/page.*.js', (route) => route.abort());
      const boxes = () => page.evaluate(() => [...document.querySelectorAll('main *:not(math *, option)')]
        .filter((one) => one.checkVisibility()).map((one) => {
          const { x, y, width: wide, height } = one.getBoundingClientRect();
          return `${one.tagName} ${[x, y, wide, height].map((n) => n.toFixed(1)).join(' ')}`;
        }));
      await page.goto(address, { waitUntil: 'networkidle' });
      const plain = await boxes();
      await page.unroute('**/page.*.js');
      await page.goto(address);
      await ready(page);
      const live = await boxes();
      assert.deepEqual(live.filter((box) => !plain.includes(box) && !/ 0\.0 [\d.]+$/.test(box)).slice(0, 5), []);
    }
  });
});

test('work that is out of sight follows by itself', async (t) => {
  const { page } = await openReady(t);
  const shown = () => page.locator('#worksheet-soil .work li').allTextContents();
  await page.setViewportSize({ width: 320, height: 400 });
  await page.evaluate(() => scrollTo(0, 0));
  const before = await shown();
  await reported(page).evaluate((input) => {
    input.value = '15';
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await page.waitForFunction((old) => document.querySelector('#worksheet-soil .work li').textContent !== old, before[0]);
  const after = await shown();
  await state(page); // asks for it
  assert.deepEqual(await shown(), after);
  assert.notDeepEqual(after, before);
});
