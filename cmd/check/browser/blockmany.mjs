// Random blocks: the page about one block, its sheet on paper, a page that a link with its numbers opens, guides that show
// the block, and reckon with rows all give the numbers of the program.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { asked, changesOf, generator, guideAnswers, randomBlock, single, type } from './blockform.mjs';
import { readGuide } from './content.mjs';
import { numbers } from './expect.mjs';
import { value, work, written } from './native.mjs';
import { settings } from './settings.mjs';

const BLOCKS = Number(settings.blocks ?? 40);
const VISITS = Number(settings.visits ?? 10); // of so many blocks one is shown by guides: to load one takes longest

// Guides that take numbers of a block, and what they show at a glance.
const GUIDES = [
  ['guides/plan/', 'need.nitrogen', 'budget.apply', 'feeds.feeds', 'feeds.product'],
  ['guides/soil/', 'soil.nitrogen'], ['guides/water/', 'well.per-inch', 'well.nitrogen'],
  ['es/guides/plan-completo/', 'need.nitrogen', 'budget.apply', 'feeds.feeds', 'feeds.product'],
  ['guides/inject/', 'run.volume', 'run.rate', 'run.window'],
];

const { worksheets } = readGuide('block/');

// The answers of the sheet, in the order of the page.
const onSheet = ['budget.apply', 'feeds.feeds', 'feeds.each', 'whole.each', 'whole.each-volume', 'whole.all', 'whole.volume',
  'feeds.every', 'need.nitrogen', 'soil.nitrogen', 'budget.in-reach', 'well.nitrogen', 'trees.trees'];

// randomBlocks tries the site at origin; open opens the page about one block.
export function randomBlocks(origin, open) {
  describe(`${BLOCKS} random blocks`, () => {
    const random = generator(14);
    const blocks = Array.from({ length: BLOCKS }, () => randomBlock(random));
    const answered = blocks.map((block) => work(worksheets, changesOf(block)));
    const seen = { answers: 0, ranges: 0, none: 0 };

    test('the page, its sheet on paper and a link give the numbers of the program', async (t) => {
      const { page, context, faults } = await open(t);
      const linked = await context.newPage();
      await linked.goto(`${origin}/block/`);
      await linked.waitForSelector('.blocks:not([hidden])');
      let lines = 0;
      for (const [i, block] of blocks.entries()) {
        const shown = await page.evaluate(type, block);
        compare(shown, block, answered[i], seen);
        lines += compareSheet(await sheetOf(page), shown, answered[i]);
        const link = await page.evaluate(linkOf);
        assert.deepEqual(await linked.evaluate(openLink, link), shown, `the link ${link}`);
      }
      t.diagnostic(`${BLOCKS} blocks: ${seen.answers} answers are the program's, ${seen.ranges} ranges hold them, `
        + `${seen.none} have none and say why; ${lines} lines of the sheet and ${BLOCKS} links say the same`);
      assert.equal(seen.answers + seen.ranges + seen.none, BLOCKS * asked.length);
      assert.ok(seen.ranges > BLOCKS && seen.answers > BLOCKS && seen.none > BLOCKS / 10);
      assert.deepEqual(faults, []);
    });

    test('reckon with rows gives them too', (t) => {
      const folder = mkdtempSync(join(tmpdir(), 'blocks-'));
      t.after(() => rmSync(folder, { recursive: true }));
      let cells = 0;
      for (const [use, { calculation }] of worksheets) {
        const rows = answered.map((answers) => answers.get(use)).filter(({ error }) => !error);
        cells += compareRows(join(folder, `${use}.csv`), calculation, rows);
      }
      t.diagnostic(`${cells} answers of ${worksheets.size} runs of reckon --rows are those of reckon`);
      assert.ok(cells > BLOCKS * worksheets.size);
    });

    test('guides give them too', async (t) => {
      const { page, context, faults } = await open(t);
      await page.fill('#block-name', 'North 12');
      await page.click('.keep');
      const guide = await context.newPage();
      let visits = 0;
      for (const [i, ranged] of blocks.entries()) {
        const block = single(ranged);
        const answers = work(worksheets, changesOf(block));
        if (i % VISITS || answers.get('whole').error) {
          continue;
        }
        await page.evaluate(type, block);
        await page.evaluate(() => dispatchEvent(new Event('pagehide'))); // it is kept now, and not after a pause
        for (const [way, ...glance] of [GUIDES[0], GUIDES[1 + visits % (GUIDES.length - 1)]]) {
          const all = guideAnswers(readGuide(way.replace(/^es\//, '')), block, answers);
          await guide.evaluate(() => sessionStorage.clear()).catch(() => {}); // before the first visit there is none
          await guide.goto(`${origin}/${way}`);
          await guide.waitForFunction(() => /North 12/.test(document.getElementById('state').textContent));
          const told = await guide.$$eval('.glance [data-show]', (list) => list.map((one) => one.textContent));
          const wanted = glance.map((name) => {
            const [use, answer] = name.split('.');
            return all.get(use).error ? '–' : numbers(value(all.get(use), answer));
          });
          assert.deepEqual(told, wanted, `${way} of ${JSON.stringify(block)}`);
          visits++;
        }
      }
      t.diagnostic(`${visits} guides that show a block give the program's numbers`);
      assert.ok(visits >= BLOCKS / VISITS);
      assert.deepEqual(faults, []);
    });
  });
}

// compare wants what the page shows to be what the program answers.
function compare(shown, block, answers, seen) {
  const inside = [0, 0.5, 1].map((share) => work(worksheets, changesOf(block, share)));
  for (const [id, use, name] of asked) {
    const where = `${use}.${name} of ${JSON.stringify(block)}`;
    if (answers.get(use).error) {
      assert.equal(shown[id], '–', `${where}: ${answers.get(use).error}`);
      seen.none++;
      continue;
    }
    const wanted = numbers(value(answers.get(use), name));
    if (!wanted.includes(' to ')) {
      assert.equal(shown[id], wanted, where);
      seen.answers++;
      continue;
    }
    // The page works all worksheets as one, and the program one at a time, so the ends of a range may differ. The page's
    // holds what the program answers for single numbers in the ranges.
    const [low, high = low] = split(shown[id]);
    for (const one of inside) {
      const [number] = split(numbers(value(one.get(use), name)));
      assert.ok(low <= number && number <= high, `${where}: ${shown[id]} does not hold ${number}`);
    }
    seen.ranges++;
  }
}

const split = (text) => text.split(' to ').map((end) => Number(end.replaceAll(',', '')));

// sheetOf gives the answers and the feeds as they are on paper: what a reader of it sees.
async function sheetOf(page) {
  await page.emulateMedia({ media: 'print' });
  const text = await page.evaluate(() => {
    const texts = (selector) => [...document.querySelectorAll(selector)].filter((one) => one.checkVisibility())
      .map((one) => one.innerText.replace(/\s+/g, ' ').trim());
    return { answers: texts('.plan dl .total'), feeds: texts('.feeds li'), whys: texts('.plan .remarks > *') };
  });
  await page.emulateMedia({ media: null });
  return text;
}

// compareSheet wants the sheet to say what the program answers, or why there is no answer; it gives the lines that it read.
function compareSheet({ answers: told, feeds, whys }, shown, answers) {
  const wanted = onSheet.flatMap((name) => {
    const [use, answer] = name.split('.');
    const of = answers.get(use);
    if (of.error) {
      return use === 'whole' && answer.endsWith('volume') ? [] : ['–'];
    }
    const there = value(of, answer) ?? of.work.find((line) => line.startsWith(`${answer.replaceAll('-', ' ')} `));
    return there ? [there] : [];
  });
  const single = !JSON.stringify([...answers.values()].map((one) => one.answers)).includes('"low"');
  if (single && ![...answers.values()].some(({ error }) => error)) {
    const figures = told.map((one) => one.split(' ')[0]);
    assert.deepEqual(figures, wanted.map((one) => (
      typeof one === 'string' ? one.match(/= ([\d.,]+)[^=]*$/)[1] : numbers(one))));
    const days = Object.entries(answers.get('feeds').answers).filter(([name]) => /^date-\d$/.test(name));
    assert.deepEqual(feeds.map((line) => line.match(/^\w+ \d+, \d+/)[0]), days.map(([, day]) => numbers(day)));
    assert.ok(feeds.every((line) => line.includes(shown['feed-of-material'])), feeds.join('\n'));
  }
  const refused = [...answers.values()].filter(({ error }) => error && !/waits for/.test(error));
  for (const { error } of refused) {
    assert.ok(whys.some((why) => error.includes(why)), `the sheet does not say: ${error}`);
  }
  return told.length + feeds.length + refused.length;
}

// compareRows wants reckon --rows to answer for rows what reckon answered for each.
function compareRows(file, calculation, rows) {
  const names = [...new Set(rows.flatMap(({ given }) => Object.keys(given)))];
  const cell = (text) => `"${text.replaceAll('"', '""')}"`;
  const lines = rows.map(({ given }) => names.map((name) => cell(given[name] ? written(given[name]) : '')).join(','));
  writeFileSync(file, `${names.join(',')}\n${lines.join('\n')}\n`);
  const [header, ...table] = readRows(execFileSync(settings.acreleaf, ['reckon', calculation, '--rows', file],
    { encoding: 'utf8', maxBuffer: 1e8 }));
  assert.equal(table.length, rows.length);
  let cells = 0;
  const columns = header.slice(names.length).map((column) => column.replace(/ \(.*/, ''));
  for (const [i, row] of table.entries()) {
    for (const [name, quantity] of Object.entries(rows[i].answers)) {
      const at = columns.indexOf(name);
      assert.ok(at >= 0, `${calculation}: no column ${name} in ${header}`);
      const { unit, ...bare } = quantity;
      const [wanted] = written({ ...bare, unit: '' }).split('$');
      assert.equal(row[names.length + at], quantity.date ?? wanted, `${calculation}.${name} of ${lines[i]}`);
      cells++;
    }
  }
  return cells;
}

// readRows reads comma-separated values.
function readRows(text) {
  const rows = [[]];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\n)/g)) {
    rows.at(-1).push(quoted?.replaceAll('""', '"') ?? plain);
    if (end === '\n') {
      rows.push([]);
    }
  }
  return rows.slice(0, -1);
}

// linkOf gives the link with the numbers of the page that it runs in.
function linkOf() {
  document.querySelector('.blocks [data-link]').click();
  return location.hash;
}

// openLink opens a link in a page that is there, and reads the answers.
async function openLink(link) {
  const came = new Promise((resolve) => { addEventListener('hashchange', resolve, { once: true }); });
  location.hash = link;
  await came;
  const rows = [...document.querySelectorAll('[data-fact]:not(.field)')];
  return Object.fromEntries([
    ...rows.map((row) => [row.dataset.fact, row.querySelector('b').textContent]),
    ['all', document.querySelector('#worksheet-whole .answer b').textContent],
  ]);
}
