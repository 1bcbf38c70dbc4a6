// What a reader takes along. A printed side has a code that leads back to the numbers on it, read here from a picture of
// the paper; a worksheet goes into a file for spreadsheets, and its answer into the clipboard.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const run = (...command) => execFileSync(command[0], command.slice(1), { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });

test('codes are those of the program', async (t) => {
  const { codeOf } = await import(pathToFileURL(join(dirname(settings.numbers), 'qr.mjs')));
  const lines = readFileSync('cmd/acreleaf/internal/qrcode/testdata/codes.txt', 'utf8').trim().split('\n');
  for (const line of lines) {
    const [seed, length] = line.split(' ').map(Number);
    const { size, dark } = codeOf(sample(seed, length));
    const sum = createHash('sha256').update(dark.join('')).digest('hex').slice(0, 16);
    assert.equal(`${seed} ${length} ${size} ${sum}`, line);
  }
  assert.ok(codeOf('x'.repeat(666)) && !codeOf('x'.repeat(667)));
  t.diagnostic(`${lines.length} codes are the same`);
});

// sample is the text that the list has for a seed and a length: qrcode_test.go has the same.
function sample(seed, length) {
  const letters = [...'abcdefghijklmnopqrstuvwxyz0123456789-._~:/?#=&%*ABCDEFñéí🌳'];
  let [text, bytes] = ['', 0];
  for (let i = 0; bytes < length; i++) {
    const letter = letters[(seed * 7919 + i * i * 31 + i * seed) % letters.length];
    const fits = bytes + Buffer.byteLength(letter) <= length ? letter : 'x';
    text += fits;
    bytes += Buffer.byteLength(fits);
  }
  return text;
}

// open opens a page on a device of its own, where it is complete.
async function open(t, address, before) {
  const context = await browser.newContext({ permissions: ['clipboard-read', 'clipboard-write'], acceptDownloads: true });
  t.after(() => context.close());
  const page = await context.newPage();
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => faults.push(message.text()));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => console.error(event.violatedDirective));
  });
  await before?.(page);
  await page.goto(address);
  await page.waitForSelector('body.paper');
  return { page, faults };
}

const put = (page, id, text) => page.evaluate(([id, text]) => {
  const field = document.getElementById(id);
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
}, [id, text]);

// shown is all that a page has in its fields and its answers.
const shown = (page) => page.evaluate(() => [
  ...[...document.querySelectorAll('[data-cell], [data-unit-for]')].map((field) => field.value),
  ...[...document.querySelectorAll('.answer [data-show], .plan [data-show]')].map((number) => number.textContent)]);

// printed gives the text of a printed page and what its codes say.
async function printed(t, page, format) {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  t.after(() => rmSync(folder, { recursive: true }));
  const file = join(folder, 'page.pdf');
  await page.pdf({ format, path: file });
  const sides = +run('pdfinfo', file).match(/^Pages: +(\d+)/m)[1];
  run('pdftoppm', '-r', '200', '-gray', '-png', '-singlefile', '-f', sides, '-l', sides, file, join(folder, 'side'));
  let codes = '';
  try {
    codes = run('zbarimg', '--quiet', '--raw', join(folder, 'side.png'));
  } catch {
    // it fails where it finds no code
  }
  return { text: run('pdftotext', file, '-').replace(/\s+/g, ' '), codes: codes.trim().split('\n').filter(Boolean) };
}

// What is printed: the page, what is done there, whose numbers the paper says it has, and the name of their block.
const nothing = () => {};
const keepBlock = (page) => page.addInitScript(() => localStorage.setItem('blocks /', JSON.stringify({
  version: 1, current: 0, page: '/block/', blocks: [{
    name: 'North 12', facts: { leaf: ['1'], 'soil-nitrate': ['11', 'ppm NO3-N'] },
    worked: { 'trees-an-acre': ['100.83333333333333', 'trees/ac'], 'in-water': ['8 to 9.522222222222221', 'lb N/ac fed'] },
  }],
})));
const cases = [
  ['guides/soil/', 'Letter', nothing, nothing, /These are the example's numbers/],
  ['es/guides/suelo/', 'A4', nothing, (page) => put(page, 'soil-nitrate', '3 a 4'), /números propios del lector/],
  ['guides/season/', 'A4', nothing, (page) => put(page, 'soil-nitrate', '12.5'), /a reader's own numbers/],
  ['guides/plan/', 'Letter', keepBlock, nothing, /numbers of the block North 12/, 'North 12'],
  ['block/', 'Letter', nothing, async (page) => {
    await page.fill('#block-name', 'Río & "sur"');
    await page.click('.keep');
    await page.selectOption('#spacing-pattern', { index: 1 });
    await page.selectOption('[data-unit-for=spacing-row]', { index: 2 });
    await put(page, 'well-nitrate', '<5');
  }, /numbers of the block Río & "sur"/, 'Río & "sur"'],
];

describe('a printed page leads back to its numbers', () => {
  for (const [way, format, before, change, whose, name] of cases) {
    test(`${way} on ${format}`, async (t) => {
      const { page, faults } = await open(t, `${origin}/${way}`, before);
      await change(page);
      const { text, codes: [link, ...more] } = await printed(t, page, format);
      assert.match(text, whose);
      assert.deepEqual(more, []);
      assert.ok(link.startsWith(`${origin}/${way}`), link);
      assert.equal(link.includes('#numbers&'), change !== nothing || before !== nothing);
      const back = await open(t, link);
      assert.deepEqual(await shown(back.page), await shown(page));
      assert.equal(back.page.url(), link, 'the address has lost its numbers');
      const record = new URLSearchParams(new URL(link).hash);
      assert.equal(record.get('block'), name ?? null);
      if (name) {
        assert.ok((await back.page.textContent('#state')).endsWith(`came with the link. Check that they are the ones you want. `
          + `These are the numbers of the block ${name}.`), await back.page.textContent('#state'));
        const again = await printed(t, back.page, format);
        assert.match(again.text, whose);
        assert.deepEqual(again.codes, [link]);
      }
      assert.deepEqual([...faults, ...back.faults], []);
      t.diagnostic(`${way}: ${link.length} bytes`);
    });
  }

  test('the name of a block is text, without what turns it round, and only while its numbers are there', async (t) => {
    const { page } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-nitrate', '12');
    const { codes: [link] } = await printed(t, page, 'Letter');
    const { page: other, faults } = await open(t, `${link}&block=${encodeURIComponent(`<b>\u202e${'ñ'.repeat(60)}`)}`);
    assert.ok((await other.textContent('#state')).endsWith(`the block <b>${'ñ'.repeat(47)}.`));
    assert.equal(await other.locator('#state b').count(), 0);
    await put(other, 'soil-nitrate', '13');
    const changed = await printed(t, other, 'Letter');
    assert.match(changed.text, /a reader's own numbers/);
    assert.doesNotMatch(changed.codes[0], /block=/);
    const { page: wrong } = await open(t, `${link.replace(/edition=\w+/, 'edition=zz')}&block=North`);
    assert.doesNotMatch(await wrong.textContent('#state'), /North/);
    assert.match((await printed(t, wrong, 'Letter')).text, /the example's numbers/);
    assert.deepEqual(faults, []);
  });

  test('a link beside a block of this device says whose numbers it brought until the other block is asked for', async (t) => {
    const { page } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-nitrate', '12');
    const { codes: [link] } = await printed(t, page, 'Letter');
    const { page: other } = await open(t, `${link}&block=South`, keepBlock);
    const state = () => other.textContent('#state');
    await other.waitForSelector('#state button');
    await other.waitForFunction(() => /block South/.test(document.getElementById('state').textContent));
    assert.match(await state(), /Show block North 12/);
    await other.click('#state button >> text=North 12');
    assert.match(await state(), /^Shows block North 12/);
    await other.click('#state button');
    assert.equal(await state(), 'Show block North 12');
    assert.match((await printed(t, other, 'Letter')).text, /the example's numbers/);
  });

  test('a name that makes a code too long is left out of it', async (t) => {
    const { page } = await open(t, `${origin}/block/`);
    await page.fill('#block-name', '🌳'.repeat(25));
    await page.click('.keep');
    await page.evaluate(() => {
      const fields = [...document.querySelectorAll('.known input[data-cell]:not([type=date])')];
      fields.slice(0, 9).forEach((field) => { field.value = '1'.repeat(30); });
      fields[0].dispatchEvent(new Event('input', { bubbles: true }));
    });
    const { codes: [link] } = await printed(t, page, 'Letter');
    assert.match(link, /listed=/);
    assert.doesNotMatch(link, /block=/);
  });

  test('a page printed as soon as it is open has its code, and nothing moves when what makes it comes', async (t) => {
    const places = [];
    const where = (page) => page.evaluate(() => [...document.querySelectorAll('[data-print], .foot > *, .worksheet > *')]
      .filter((part) => part.checkVisibility()).map((part) => part.getBoundingClientRect().top + scrollY));
    const { page, faults } = await open(t, `${origin}/es/guides/suelo/`, async (page) => {
      await page.addInitScript(() => { // a timer never ends
        const { setTimeout } = window;
        window.setTimeout = (then, delay) => delay > 0 ? 0 : setTimeout(then);
      });
      await page.route('**/paper.*.js', async (route) => {
        await page.waitForSelector('body.after');
        places.push(await where(page));
        await route.continue();
      });
    });
    places.push(await where(page));
    assert.equal(places[0].join(), places[1].join());
    assert.equal(await page.locator('[data-print]').isVisible(), true);
    assert.deepEqual((await printed(t, page, 'Letter')).codes, [`${origin}/es/guides/suelo/`]);
    assert.deepEqual(faults, []);
  });

  test('the address of the site comes before that of the page', async (t) => {
    const address = 'https://sorrelflat.example.org/guides/soil/';
    const { page } = await open(t, `${origin}/guides/soil/`, (page) => page.route('**/guides/soil/', async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: (await response.text()).replace(/(<footer class="foot">[^]*?<\/cite>)/, `$1 <span class="address">${address}</span>`) });
    }));
    await put(page, 'soil-nitrate', '12');
    const { codes: [link] } = await printed(t, page, 'Letter');
    assert.match(link, /^https:\/\/sorrelflat\.example\.org\/guides\/soil\/#numbers&edition=\w+&listed=12/);
  });

  test('numbers that no code holds, and a page from a file, have a sentence', async (t) => {
    const { page } = await open(t, `${origin}/block/`);
    await page.evaluate(() => {
      document.querySelectorAll('input[data-cell]:not([type=date])').forEach((field) => { field.value = '1'.repeat(60); });
      document.querySelector('input[data-cell]').dispatchEvent(new Event('input', { bubbles: true }));
    });
    const long = await printed(t, page, 'Letter');
    assert.deepEqual(long.codes, []);
    assert.match(long.text, /too long for a code\. Open http/);
    const { page: stick } = await open(t, pathToFileURL(join(settings.site, 'guides/soil/index.html')).href);
    const from = await printed(t, stick, 'Letter');
    assert.deepEqual(from.codes, []);
    assert.match(from.text, /no code, because this page was opened from a file/);
  });

  test('a link that is cut off or absurd loses nothing in silence', async (t) => {
    const { page } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-nitrate', '12');
    const { codes: [link] } = await printed(t, page, 'Letter');
    const { page: other, faults } = await open(t, link);
    assert.match(await other.textContent('#state'), /came with the link/);
    for (const listed of ['12*0', '12*0_', '12*0_*99_', '12_14*0_', '12*0___', '*-1_*x_*']) {
      const said = await other.evaluate(async (hash) => {
        document.getElementById('state').textContent = '';
        location.hash = hash;
        await new Promise((resolve) => { addEventListener('hashchange', () => setTimeout(resolve), { once: true }); });
        return document.getElementById('state').textContent;
      }, new URL(link).hash.replace(/listed=.*/, `listed=${listed}`));
      assert.match(said, /left out/, listed);
    }
    const { page: bad } = await open(t, link.replace(/listed=.*/, `listed=${'%3Cb%3E'.repeat(900)}*0__`));
    assert.equal(await bad.inputValue('#soil-nitrate'), '<b>'.repeat(20));
    assert.equal(await bad.getAttribute('#soil-nitrate', 'aria-invalid'), 'true');
    assert.deepEqual(faults, []);
  });
});

describe('a worksheet goes along', () => {
  const press = async (page, text) => {
    const foot = page.locator('#worksheet-soil > footer');
    if (await foot.locator('[data-take]').getAttribute('aria-expanded') === 'false') {
      await foot.locator('[data-take]').click();
    }
    await foot.getByText(text).click();
    return foot.locator('p');
  };
  // table reads a file of a worksheet, as RFC 4180 has it.
  const table = async (page, text) => {
    const [saved] = await Promise.all([page.waitForEvent('download'), press(page, text)]);
    const file = readFileSync(await saved.path(), 'utf8');
    assert.match(file, /^\ufeff/);
    assert.ok(file.endsWith('\r\n') && !/[^\r]\n/.test(file));
    const rows = file.slice(1).trimEnd().split('\r\n').map((row) =>
      [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain));
    assert.ok(rows.every((row) => row.length === 5), file);
    return { rows, name: saved.suggestedFilename() };
  };

  test('as a file for spreadsheets', async (t) => {
    const { page, faults } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-nitrate', '12.5');
    await put(page, 'soil-depth', '24');
    const { rows, name } = await table(page, 'Save as CSV');
    assert.equal(name, 'soil-soil.csv');
    assert.deepEqual(rows.slice(0, 5), [
      ['part', 'name', 'from', 'to', 'unit'],
      ['Given', 'Nitrate on the report', '12.5', '12.5', 'ppm NO3-N'], ['Given', 'Depth of the sample', '24', '24', 'in'],
      ['Given', 'Bulk density, if you have it', '', '', 'g/cm3'], ['Answer', 'Nitrogen in this layer', '100', '100', 'lb N/ac present'],
    ]);
    const facts = Object.fromEntries(rows.slice(5).map(([, name, value]) => [name, value]));
    assert.match(facts.address, new RegExp(`^${origin}/guides/soil/#numbers&.*soil-nitrate=12\\.5`));
    assert.ok(facts.address.includes(`edition=${facts['edition of its numbers']}`));
    assert.equal(facts['decimal mark'], 'point');
    assert.match(facts['last review'], /^\d{4}-\d\d-\d\d$/);
    assert.deepEqual(faults, []);
  });

  test('with both ends of a range, however it is typed', async (t) => {
    const { page } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-depth', '12');
    const { page: spanish } = await open(t, `${origin}/es/guides/suelo/`);
    await put(spanish, 'soil-depth', '12');
    for (const [typed, from, to, low, high] of [['0 to 10', '0', '10', '0', '40'], ['3–4', '3', '4', '12', '16'], ['2 1/2-3', '2.5', '3', '10', '12'],
      ['3 ppm to 4 ppm', '3', '4', '12', '16'], ['<5', '0', '5', '0', '20'], ['190 to 200', '190', '200', '760', '800'], ['9', '9', '9', '36', '36']]) {
      for (const [one, save] of [[page, 'Save as CSV'], [spanish, 'Guardar como CSV']]) {
        await put(one, 'soil-nitrate', typed);
        await one.waitForFunction(() => !document.getElementById('soil-nitrate').hasAttribute('aria-invalid'));
        const { rows } = await table(one, save);
        assert.deepEqual([rows[1].slice(2, 4), rows[4].slice(2, 4)], [[from, to], [low, high]], typed);
      }
    }
  });

  test('in Spanish, and with nothing that a spreadsheet runs', async (t) => {
    const { page } = await open(t, `${origin}/es/guides/suelo/`);
    for (const [typed, cell] of [['=HYPERLINK("a,b")', `'=HYPERLINK("a,b")`], ['+1', `'+1`], ['@x', `'@x`], [' -2+3', `'-2+3`], ['-2', '-2']]) {
      await put(page, 'soil-nitrate', typed);
      const { rows } = await table(page, 'Guardar como CSV');
      assert.equal(rows[1][2], cell);
      assert.deepEqual(rows[0], ['parte', 'nombre', 'desde', 'hasta', 'unidad']);
      assert.equal(rows[4][2], typed === '+1' ? rows[4][2] : '', 'an answer beside a number that cannot be used');
      assert.ok(rows.some(([, name, value]) => name === 'signo decimal' && value === 'punto'));
    }
  });

  test('as a text, with its sentence and its signals, where there is an answer', async (t) => {
    const { page } = await open(t, `${origin}/guides/soil/`);
    await put(page, 'soil-nitrate', '90');
    assert.match(await (await press(page, 'Copy the answer')).textContent(), /^$|copied/);
    await page.waitForFunction(() => /is copied/.test(document.querySelector('#worksheet-soil footer p').textContent));
    const text = await page.evaluate(() => navigator.clipboard.readText());
    for (const part of [/Nitrogen in this layer: 420 lb N\/ac present/, /This layer of 14 in holds 420 lb/, /NOTICE 420 lb N\/ac is a great deal/,
      /Nitrate on the report: 90 ppm NO3-N/, /reader's own numbers/, /guides\/soil\/#numbers&/]) {
      assert.match(text, part);
    }
    assert.doesNotMatch(text, /Your bulk density was used/);
    await put(page, 'soil-nitrate', 'x');
    assert.match(await (await press(page, 'Copy the answer')).textContent(), /no answer to copy/);
  });
});
