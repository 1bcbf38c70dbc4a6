// Pictures that numbers draw: what a page draws for a reader's numbers is what the press draws for the same numbers, shape
// by shape. And where there is no answer, or no script to draw with, no old picture is left.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, describe, test } from 'node:test';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

const SETS = 10; // of random numbers, for each of the five pictures

const folder = mkdtempSync(join(tmpdir(), 'drawings-'));
after(() => rmSync(folder, { recursive: true }));

let seed = 20270415;
const next = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
const number = (low, high) => (
  String(Number((low + next() * (high - low)).toPrecision(1 + Math.floor(next() * 4)))));

// some is a number or, of every third, a range.
function some(low, high) {
  const [a, b] = [number(low, high), number(low, high)].sort((one, other) => one - other);
  return next() < 1 / 3 && a !== b ? `${a} to ${b}` : a;
}

const day = (from, days) => new Date(Date.parse(from) + Math.floor(next() * days) * 864e5).toISOString().slice(0, 10);
const one = (list) => list[Math.floor(next() * list.length)];
const grades = ['UAN-32', '46-0-0', '21-0-0-24S', '15.5-0-0-19Ca', 'CAN-17', '13-0-46'];

// By calculation: what each given is, as a text and a unit. A given without a text is left empty.
const kinds = {
  'season-budget': () => ({
    need: [some(0, 200), 'lb N/ac fed'], soil: [some(0, 60), 'lb N/ac'], reach: [some(0, 100), '%'],
    water: [some(0, 60), 'lb N/ac'], compost: [one(['', some(0, 40)]), 'lb N/ac'],
  }),
  'feed-schedule': () => ({
    nitrogen: [some(0, 90), 'lb N/ac fed'], trees: [some(60, 200), 'trees/ac'], leaf: ['2', ''],
    cap: [one(['', some(0.4, 3)]), 'oz N/tree fed'], first: [day('2027-02-20', 60), ''], last: [day('2027-05-01', 290), ''],
    material: ['46-0-0', ''],
  }),
  'root-share': () => ({
    wetted: [some(0.5, 12), 'ft'], root: [some(0.25, 9), 'ft'], offset: [some(0, 9), 'ft'], rate: ['1', 'oz N/tree fed'],
  }),
  'water-nitrogen': () => ({ nitrate: [some(0, 60), 'ppm NO3-N'], water: [some(0, 50), 'in'] }),
  'material-compare': () => ({
    nitrogen: [some(0, 90), 'lb N/ac fed'], first: [one(grades), ''], second: [one(grades), ''],
    third: [one([...grades, 'none']), ''],
  }),
};

const sets = Object.fromEntries(Object.entries(kinds).map(([name, draw]) => [name, Array.from({ length: SETS + 1 }, draw)]));

// The first numbers of each are the example of the page that is typed into.
const pageOf = (calculation, givens, order) => `---
title: The ${calculation} ${order}
summary: It is drawn.
order: ${order}
---

> **WARNING** Nitrate in drinking water can make babies very ill, and may harm pregnant women. Have the household well tested.
> Boiling makes it worse. Ask your county health office.

\`\`\`worksheet one
calculation: ${calculation}
${Object.entries(givens).filter(([, [text]]) => text).map(([name, [text, unit]]) => `${name}: ${text} ${unit}`.trim()).join('\n')}
\`\`\`

\`\`\`drawing
of: one
\`\`\`
`;

mkdirSync(join(folder, 'content/guides'), { recursive: true });
writeFileSync(join(folder, 'content/site.yaml'), 'office: Test Row\n');
writeFileSync(join(folder, 'content/home.md'), '---\ntitle: Test Row\nsummary: A test.\n---\n');
Object.entries(sets).forEach(([name, list], k) => list.forEach((givens, i) => {
  writeFileSync(join(folder, `content/guides/${name}-${i}.md`), pageOf(name, givens, 100 * k + i + 1));
}));
const site = join(folder, 'site');
execFileSync(settings.acreleaf, ['press', '--from', join(folder, 'content'), '--to', site], { stdio: 'pipe' });

const { browser, origin } = await start(site);

// shapes reads what is drawn, in a page: of each shape its element, its attributes and its text.
const shapes = (pictures) => [...pictures.querySelectorAll('[data-drawn] > *')].map((shape) => (
  shape.getAttribute('display') ? 'none' : [shape.localName, ...[...shape.attributes].map(({ name, value }) => `${name}=${value}`)
    .sort(), shape.textContent].join(' ')));

// printed reads the same from the file of a page.
function printed(name, i) {
  const html = readFileSync(join(site, `guides/${name}-${i}/index.html`), 'utf8');
  const [, inside] = html.match(/<g data-drawn[^>]*>\n([^]*?)<\/g>/);
  return inside.trim().split('\n').map((line) => {
    const [, tag, attributes, text = ''] = line.match(/^<(\w+)([^>]*?)\/?>(?:(.*)<\/\w+>)?$/);
    const list = [...attributes.matchAll(/ ([\w-]+)="([^"]*)"/g)].map(([, key, value]) => `${key}=${value}`).sort();
    return list.includes('display=none') ? 'none' : [tag, ...list, text.replace(/<[^>]*>/g, '')].join(' ');
  });
}

// enter puts a set of numbers into the fields of a page.
const enter = (givens) => {
  for (const [name, [text]] of Object.entries(givens)) {
    const field = document.getElementById(`one-${name}`);
    if (field.localName === 'select') {
      field.selectedIndex = [...field.options].findIndex((option) => text === 'none' ? /^none$/i.test(option.text)
        : option.text.includes(text));
    } else {
      field.value = text;
    }
  }
  document.querySelector('.worksheet [data-cell]').dispatchEvent(new Event('input', { bubbles: true }));
};

async function open(name, t) {
  const page = await browser.newPage();
  t.after(() => page.close());
  await page.goto(`${origin}/guides/${name}-0/`);
  await page.waitForFunction(() => document.body.matches('.live.after') && globalThis.findRanges && globalThis.drawPicture);
  return page;
}

// Units that no picture shows in metric units.
const ofUS = /\b(lb|ft|oz)\b|\d in\b|inches|per in\b/;

describe('pictures that numbers draw', { concurrency: 2 }, () => {
  for (const [name, list] of Object.entries(sets)) {
    test(name, async (t) => {
      const page = await open(name, t);
      const size = await page.locator('.drawing svg').boundingBox();
      // All sets in one turn of the page: it would paint itself after each.
      const all = await page.evaluate(`${JSON.stringify(list)}.map((givens) => {
        (${enter})(givens);
        return (${shapes})(document);
      })`);
      for (const [i, got] of all.entries()) {
        const givens = list[i];
        assert.deepEqual(got, printed(name, i), `set ${i}: ${JSON.stringify(givens)}`);
        assert.ok(got.some((shape) => shape !== 'none'), `nothing is drawn of ${JSON.stringify(givens)}`);
      }
      const { width, height } = await page.locator('.drawing svg').boundingBox();
      assert.deepEqual([width, height], [size.width, size.height], 'the picture has another size');
    });

    test(`${name}, without an answer`, async (t) => {
      const page = await open(name, t);
      const heard = () => page.locator('.drawing').ariaSnapshot();
      const said = (await page.locator('.drawing .unseen').ariaSnapshot()).match(/\S.*/g);
      assert.match(said.join(), /\d/, 'the description has no number');
      for (const sentence of said) {
        assert.equal((await heard()).split(sentence.replace(/^- /, '')).length, 2, `not heard once: ${sentence}`);
      }
      const given = Object.keys(list[0])[0];
      for (const text of ['', '-3', 'many']) {
        await page.locator(`#one-${given}`).fill(text);
        await page.locator(`#one-${given}`).dispatchEvent('input');
        assert.ok((await page.locator('.drawing').evaluate(shapes)).every((shape) => shape === 'none'), `“${text}” is drawn`);
        assert.ok(await page.locator('.drawing > .waiting').isVisible(), `nothing says why “${text}” is not drawn`);
        assert.doesNotMatch(await heard(), /\d/, `the description of “${text}” has numbers`);
      }
    });
  }

  for (const [name, list] of Object.entries(sets)) {
    test(`${name}, in metric units`, async (t) => {
      const page = await open(name, t);
      const choose = (value) => page.evaluate((system) => document.querySelector(`#units [value=${system}]`).click(), value);
      const written = () => page.locator('.drawing').evaluate((drawing) => drawing.textContent);
      assert.match(await written(), ofUS);
      await choose('metric');
      assert.doesNotMatch(await written(), ofUS);
      if (name === 'water-nitrogen') {
        // 7 ppm is 7 mg in a liter, and a millimeter is 10,000 liters on a hectare: 0.07 kg. 14 in are 355.6 mm.
        await page.evaluate(enter, { nitrate: ['7'], water: ['14'] });
        const texts = await page.locator('.drawing [data-drawn] text').allTextContents();
        assert.deepEqual(texts, ['0', '0', '250', '25', '500', '50']);
        const [x, y] = await page.locator('.drawing [data-drawn] circle').evaluate((dot) => [dot, dot].map((one, i) => (
          Number(one.getAttribute(['cx', 'cy'][i])))));
        assert.ok(Math.abs(x - (44 + 268 * 355.6 / 500)) < 0.1 && Math.abs(y - (184 - 102 * 24.892 / 50)) < 0.1, `${x}, ${y}`);
      }
      await page.evaluate(enter, list[1]);
      await choose('us');
      assert.deepEqual(await page.evaluate(`(${shapes})(document)`), printed(name, 1), 'back in US units it is another');
    });
  }

  // What is seen of a part of a page, as it is written.
  const seen = (element) => [...element.querySelectorAll('*')].filter((one) => !one.children.length && one.checkVisibility())
    .map((one) => one.textContent.trim()).filter(Boolean);

  test('a number that is not there has no unit', async (t) => {
    const left = sets['season-budget'].map(({ compost: [text] }) => text);
    const [without, given] = [left.indexOf(''), left.findIndex((text) => /^[1-9][^ ]*$/.test(text))];
    assert.ok(without >= 0 && given >= 0, 'the sets have no credit to leave out, or none to give');
    for (const script of [true, false]) {
      const context = await browser.newContext({ javaScriptEnabled: script });
      t.after(() => context.close());
      const page = await context.newPage();
      await page.goto(`${origin}/guides/season-budget-${without}/`);
      const label = page.locator('.drawing svg > text.end').nth(3);
      const said = page.locator('.drawing .unseen p').first();
      const [start, unit] = [/other credits no number\. Left/, /other credits [^,.]*lb of nitrogen an acre/];
      assert.deepEqual([await label.evaluate(seen), (await said.ariaSnapshot()).match(start)?.length], [['–'], 1]);
      if (!script) {
        continue;
      }
      await page.waitForFunction(() => document.body.matches('.live.after'));
      await page.evaluate(enter, { compost: ['12'] });
      assert.deepEqual(await label.evaluate(seen), ['12', 'lb N/ac fed']);
      assert.match(await said.ariaSnapshot(), unit);
      await page.evaluate(enter, { compost: [''] });
      assert.deepEqual(await label.evaluate(seen), ['–']);
      assert.match(await said.ariaSnapshot(), start);
      await page.evaluate(enter, { need: [''] });
      const all = (await page.locator('.drawing svg').evaluate(seen)).join(' ');
      assert.doesNotMatch(all, /lb|no number/, 'without an answer a unit is left');
    }
  });

  test('without the script that draws', async (t) => {
    const page = await browser.newPage();
    t.after(() => page.close());
    await page.route(/drawing\..*\.js/, (route) => route.abort());
    await page.goto(`${origin}/guides/water-nitrogen-0/`);
    await page.waitForFunction(() => document.body.matches('.live.after') && globalThis.findRanges);
    assert.ok(await page.locator('.drawing [data-drawn] .strong').first().isVisible());
    await page.evaluate(enter, sets['water-nitrogen'][1]);
    assert.ok(!await page.locator('.drawing [data-drawn] .strong').first().isVisible(), 'an old picture is left');
  });
});
