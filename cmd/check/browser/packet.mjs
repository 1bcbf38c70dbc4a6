// Packets, opened from the disk with the network cut: guides, a lesson, and the site in one file. Each takes a number and
// answers as the program does, and nothing is asked of a network or forbidden by the policy.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { readGuide } from './content.mjs';
import { expectAnswers } from './expect.mjs';
import { listen, mounted, pointer, worker, workRight } from './lesson.mjs';
import { work } from './native.mjs';
import { field, state, type } from './reader.mjs';
import { settings } from './settings.mjs';
import { launch, ready, visit } from './visit.mjs';

const browser = await launch();
const packet = (name) => pathToFileURL(join(settings.packets, name)).href;

// open opens a packet where no network is.
async function open(t, name) {
  const visitor = await visit(browser, 'about:blank', { width: 320, height: 640 });
  t.after(visitor.close);
  const { page, complaints } = visitor;
  await listen(page.context());
  await page.context().setOffline(true);
  page.on('request', (request) => {
    if (!/^(file|data):/.test(request.url())) {
      complaints.push(`a request: ${request.url()}`);
    }
  });
  await page.goto(packet(name));
  await ready(page);
  // About:blank is no file, so that the file itself is complained of.
  return { page, faults: () => complaints.filter((one) => !one.startsWith('a request left the site: file:')) };
}

// answers types another number into a guide, and compares all that it shows with the program.
async function answers(page, name, { sheet, given, number, unit }) {
  const guide = readGuide(name);
  await type(field(page, sheet, given), number);
  expectAnswers(guide, await state(page), work(guide.worksheets, { [sheet]: { [given]: `${number} ${unit}` } }));
}

const nitrate = { sheet: 'soil', given: 'nitrate', number: '15', unit: 'ppm NO3-N' };
const guides = [
  ['all/guides/soil.html', 'guides/soil/', nitrate],
  ['alone/guides/soil.html', 'guides/soil/', nitrate],
  ['all/guides/water.html', 'guides/water/', { sheet: 'well', given: 'nitrate', number: '25', unit: 'ppm NO3' }],
];

for (const [file, name, change] of guides) {
  test(file, async (t) => {
    const { page, faults } = await open(t, file);
    await answers(page, name, change);
    assert.deepEqual(faults(), []);
  });
}

test('a lesson', async (t) => {
  const { page, faults } = await open(t, 'all/courses/feeding/trees.html');
  await lesson(page);
  assert.deepEqual(faults(), []);
  await page.goto(packet('all/courses/feeding/course.html'));
  assert.match(await page.locator('.lessons ol > li:has([href*=trees]) .told').textContent(), /right/);
});

async function lesson(page) {
  await mounted(page);
  const name = (await page.locator('.exercise').first().getAttribute('id')).replace('exercise-', '');
  await workRight(worker(page, pointer(page), name));
}

const title = (page) => page.locator('h1').textContent();
const at = (page, name) => page.waitForFunction((id) => document.body?.id === `#${id}`, name).then(() => ready(page));

test('the site in one file', async (t) => {
  const { page, faults } = await open(t, 'all/site.html');
  const go = async (name) => {
    await page.locator(`a[href="#${name}"]`).first().click();
    await at(page, name);
  };
  await page.evaluate(() => scrollTo(0, 300));
  await go('/guides/soil/');
  assert.equal(await title(page), 'Nitrogen already in your soil');
  await answers(page, 'guides/soil/', nitrate);
  await go('/guides/water/');
  await answers(page, 'guides/water/', guides[2][2]);
  await page.goBack();
  await at(page, '/guides/soil/');
  await page.waitForFunction(() => document.querySelector('#soil-nitrate').value === '15'); // it was kept
  await page.goBack();
  await at(page, '/');
  assert.ok(await page.evaluate(() => scrollY) > 0, 'the way back leads to where the reader was');
  await page.goForward();
  await at(page, '/guides/soil/');
  await page.locator('.foot input[type=search]').fill('burnt leaves');
  await page.locator('.foot input[type=search]').press('Enter');
  await at(page, '/terms/');
  assert.match(await page.locator('.find [role=status]').textContent(), /Words found: \d/);
  await page.locator('.find input').press('Enter');
  await at(page, '/guides/wrong/');
  await page.waitForFunction(() => location.hash === '#the-leaves-are-burnt');
  await page.goto(`${packet('all/site.html')}#/sources/nist-44`);
  await at(page, '/sources/');
  assert.ok(await page.evaluate(() => Math.abs(document.getElementById('nist-44').getBoundingClientRect().top) < 200));
  await page.goto(`${packet('all/site.html')}#/courses/feeding/trees/`);
  await at(page, '/courses/feeding/trees/');
  await lesson(page);
  await go('/courses/feeding/');
  assert.match(await page.locator('.lessons ol > li:has([href*=trees]) .told').textContent(), /right/);
  assert.equal(await page.evaluate(() => document.querySelectorAll('template').length), 0, 'pages that nobody reads');
  assert.deepEqual(faults(), []);
});

test('the site in one file without scripts', async (t) => {
  const { page, close } = await visit(browser, packet('all/site.html'), { script: false });
  t.after(close);
  assert.match(await page.locator('noscript').innerText(), /scripts are switched off/);
  assert.equal(await page.locator('main').count(), 1);
});
