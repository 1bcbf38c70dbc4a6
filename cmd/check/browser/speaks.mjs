// What a page says to a reader whose numbers are not the example's: the text, which stays the example's and is marked so;
// the margin, passages, cautions and the spoken line, which are the reader's. Each trial is one at which a sentence that
// followed the numbers without its words once turned false.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { describe, test } from 'node:test';
import { choose, field, put } from './reader.mjs';
import { settings } from './settings.mjs';
import { regulars, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);

// A trial: the page, what is typed or chosen, what its passages then say, and what they must not.
const trials = [
  { page: 'feeds', sets: { 'plan.nitrogen': '35' } },
  { page: 'feeds', sets: { 'plan.nitrogen': '20' } },
  { page: 'feeds', sets: { 'plan.nitrogen': '20 to 40' } },
  { page: 'feeds', sets: { 'plan.nitrogen': '2' } },
  { page: 'feeds', sets: { 'plan.material': 'CAN-17' } },
  { page: 'feeds', sets: { 'plan.material': '20-0-0' } },
  { page: 'feeds', sets: { 'plan.material': 'AN-20' } },
  { page: 'feeds', sets: { 'plan.material': '46-0-0' } },
  { page: 'inject', sets: { 'run.flush': '0.2' } },
  { page: 'compare', sets: { 'compare.second': '15.5-0-0-19Ca', 'compare.third': '21-0-0-24S' } },
  { page: 'materials', sets: { 'tank.material': 'CAN-17' } },
  { page: 'materials', sets: { 'tank.material': '10-34-0' } },
  { page: 'materials', sets: { 'tank.material': '46-0-0' } },
  { page: 'balance', sets: { 'year.applied': '100' }, says: /More nitrogen left/, never: /stayed behind/ },
  { page: 'roots', sets: { 'share.offset': '0' } },
  { page: 'roots', sets: { 'share.offset': '0', 'share.wetted': '3' }, says: /All of it/, never: /miss/ },
  { page: 'leaf', sets: { 'almond.value': '2.4' }, says: /not outside the range/, never: /below|above/ },
  { page: 'leaf', sets: { 'almond.value': '2.9' }, says: /above the range/, never: /below|within/ },
  { page: 'leaf', sets: { 'almond.value': '2.0' }, says: /below the range/, never: /above|within/ },
  { page: 'leaf', sets: { 'almond.value': '' }, says: /no answer yet/, never: /range/ },
];

// read gives what is on a page, as a reader finds it.
const read = (page) => page.evaluate(() => {
  const shown = (element) => {
    const copy = element.cloneNode(true);
    copy.querySelectorAll('[hidden]').forEach((hidden) => hidden.remove());
    return copy.textContent.replaceAll(/\s+/g, ' ').trim();
  };
  const all = (selector) => [...document.querySelectorAll(selector)];
  const seen = (selector) => all(selector).filter((element) => element.checkVisibility()).map(shown);
  // A part of the text that is tied to a worksheet with the reader's numbers, and has no note that says so.
  const unmarked = all('article a.worked').filter((figure) => !figure.closest('.passage')).filter((figure) => {
    const sheet = document.querySelector(figure.getAttribute('href'));
    const part = figure.closest('p, li, dd, dt, .heading, .scroll');
    const note = part.matches('p, li, dd') ? part.querySelector('.margin.own')
      : [...document.querySelectorAll('.margin.own')].find((one) => (
        part.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING));
    return sheet.classList.contains('yours') && !note?.checkVisibility();
  }).map((figure) => figure.textContent);
  // A figure of a passage or of the margin that is not what its worksheet answers. The work has digits of its own.
  const strays = all('.passage [data-show], .margin.own [data-show]').filter((number) => {
    const { show, by = '' } = number.dataset;
    const same = all(`.answer :is(dl, td) [data-show="${show}"]`).filter((one) => (one.dataset.by ?? '') === by);
    return number.checkVisibility() && same.length > 0 && !same.some((one) => one.textContent === number.textContent);
  }).map((number) => number.textContent);
  const article = document.querySelector('article').cloneNode(true);
  article.querySelectorAll('.worksheet, .reckoner, .margin, .passage, .drawing').forEach((part) => part.remove());
  return {
    text: article.textContent.replaceAll(/\s+/g, ' '), unmarked, strays,
    marked: all('.margin.own').filter((note) => note.checkVisibility()).length,
    margin: seen('.margin.own'), passages: seen('.passage'), cautions: seen('.worksheet .signal, .worksheet [data-refusal]'),
    spoken: all('.worksheet [role=status]').map(shown).filter(Boolean).join(' '),
  };
});

const rows = []; // the table of what was found
let wrong = 0;

describe('what a page says to its reader', () => {
  for (const { page: name, sets, says, never } of trials) {
    const set = Object.entries(sets).map(([given, value]) => `${given}=${value || 'empty'}`).join(' ');
    test(`${name}: ${set}`, async (t) => {
      const { page, complaints, close } = await visit(`${origin}/guides/${name}/`);
      t.after(close);
      await page.clock.install({ time: 0 });
      const example = await read(page);
      for (const [given, value] of Object.entries(sets)) {
        const input = field(page, ...given.split('.'));
        if (await input.evaluate((element) => element.matches('select'))) {
          await choose(input, await input.evaluate((list, wanted) => (
            [...list.options].findIndex(({ text }) => text.split(/[ ,(]+/).includes(wanted))), value));
        } else {
          await put(input, value);
        }
      }
      await page.clock.runFor(1000);
      const now = await read(page);
      wrong += 1;
      rows.push(
        `${name} ${set}`,
        `| text: ${now.text === example.text ? 'as written' : 'CHANGED'}, ${now.marked} notes`,
        `| margin: ${now.margin.join(' / ') || 'nothing'}`,
        `| passage: ${now.passages.join(' / ') || 'none'}`,
        `| cautions: ${now.cautions.join(' / ') || 'none'}`,
        `| spoken: ${now.spoken}`,
      );
      assert.equal(now.text, example.text, 'a sentence of the example changed');
      assert.deepEqual(now.unmarked, [], 'a text of the example is not marked as such');
      assert.deepEqual(now.strays, [], 'a number beside the text is not that of its worksheet');
      for (const said of [...now.margin, ...now.passages, now.spoken]) {
        assert.doesNotMatch(said, /–(?!\d)|NaN|undefined/, 'a blank is said');
      }
      for (const said of now.passages) {
        assert.doesNotMatch(said, /[ $]-\d/, 'a passage says an amount below nothing');
      }
      if (says) {
        assert.match(now.passages.join(' '), says);
      }
      if (never) {
        assert.doesNotMatch(now.passages.join(' '), never);
      }
      assert.notEqual(now.spoken, '', 'nothing is spoken');
      assert.deepEqual(complaints, []);
      wrong -= 1;
    });
  }
});

// What a calculation refuses with its numbers in the sentence: the page, and what is typed. The sentence prints them, and
// nothing that is not there; so do the givens that come from another worksheet.
const refusals = [
  { page: 'plan', sets: { 'feeds.first': '2027-11-15' }, says: 'The last feed, Jul 20, 2027, is before the first, Nov 15, 2027.' },
  { page: 'plan', sets: { 'feeds.last': '2029-07-20' }, says: 'From Apr 26, 2027 to Jul 20, 2029 is more than a year.' },
  { page: 'plan', sets: { 'feeds.last': '2027-04-27', 'feeds.cap': '0.1' }, says: 'between Apr 26, 2027 and Apr 27, 2027' },
  { page: 'feeds', sets: { 'plan.first': '2027-11-15' }, says: 'The last feed, Jul 20, 2027, is before the first, Nov 15, 2027.' },
  { page: 'feeds', sets: { 'plan.last': '2029-07-20' }, says: 'From Apr 26, 2027 to Jul 20, 2029 is more than a year.' },
  { page: 'feeds', sets: { 'plan.last': '2027-04-27', 'plan.cap': '0.1' }, says: 'between Apr 26, 2027 and Apr 27, 2027' },
  { page: 'inject', sets: { 'run.run': '3' }, says: '120 min of clean water and 90 min of flush leave less than 5 minutes of 3 h' },
  { page: 'leaf', sets: { 'almond.from': '3', 'almond.to': '2' }, says: 'starts at 3 % and ends at 2 %' },
];

describe('a refusal prints its numbers', () => {
  for (const { page: name, sets, says } of refusals) {
    test(`${name}: ${says}`, async (t) => {
      const { page, close } = await visit(`${origin}/guides/${name}/`);
      t.after(close);
      for (const [given, value] of Object.entries(sets)) {
        await put(field(page, ...given.split('.')), value);
      }
      // A worksheet that waits for the refused one has no number to show.
      const seen = await page.evaluate(() => [...document.querySelectorAll('.linked, .remarks > *, .signals > *, .fault')]
        .filter((one) => one.checkVisibility() && !one.closest('.worksheet').querySelector('.waiting').checkVisibility())
        .map((one) => one.textContent.replaceAll(/\s+/g, ' ')));
      assert.ok(seen.some((text) => text.includes(says)), `not among: ${seen.join(' / ')}`);
      assert.deepEqual(seen.filter((text) => /–(?!\d)/.test(text)), [], 'a blank in a sentence');
    });
  }

  // A refusal of a page that prints a number is in the list.
  test('each is tried', async (t) => {
    for (const name of readdirSync(`${settings.site}/guides`)) {
      const { page, close } = await visit(`${origin}/guides/${name}/`);
      t.after(close);
      const kinds = await page.evaluate(() => new Set([...document.querySelectorAll('.remark[data-refusal]:has([data-show])')]
        .map((one) => [...one.childNodes].filter((node) => !node.dataset).map((node) => node.data).join())).size);
      assert.equal(refusals.filter((one) => one.page === name).length, kinds, name);
    }
  });
});

test('what is set aside is named with its unit once, and said once', async (t) => {
  const { page, close } = await visit(`${origin}/guides/compare/`);
  t.after(close);
  await page.clock.install({ time: 0 });
  const second = field(page, 'compare', 'second');
  const choice = (name) => second.evaluate((list, wanted) => (
    [...list.options].findIndex(({ text }) => text.startsWith(wanted))), name);
  await choose(second, await choice('Urea-sulfuric acid'));
  await put(field(page, 'compare', 'second-price'), '2.1 $/gal');
  await choose(second, await choice('UAN-32'));
  await page.clock.runFor(1000);
  const says = /(^| )2\.1 \$\/gal was for Urea-sulfuric acid/;
  assert.match((await read(page)).spoken, says);
  await put(field(page, 'compare', 'nitrogen'), '31');
  await page.clock.runFor(1000);
  const now = await read(page);
  assert.notEqual(now.spoken, '');
  assert.doesNotMatch(now.spoken, says);
  assert.match(await page.locator('.aside').filter({ visible: true }).textContent(), says, 'it is there to be read');
});

test('no sentence is false', (t) => {
  rows.forEach((row) => t.diagnostic(row));
  t.diagnostic(`${trials.length} trials, ${wrong} with a false sentence`);
  assert.equal(wrong, 0);
});
