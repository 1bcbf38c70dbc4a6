// What a learner's device keeps of a course, and the record as a file and as a code: nothing that a browser forbids, a clock
// or a file can do harms it.
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, test } from 'node:test';
import { browser, code, course, kept, learner, line, rows, status, verify } from './learning.mjs';
import { mounted, pointer, worker, workRight } from './lesson.mjs';
import { serve } from './server.mjs';
import { settings } from './settings.mjs';

describe('what is kept', () => {
  test('a script that comes late takes the marks from before, and one that does not come takes none', async (t) => {
    const { context, open, faults } = await learner(t);
    let come;
    const waits = new Promise((resolve) => { come = resolve; });
    await context.route(/course\.en\..*\.js$/, async (route) => {
      await waits;
      await route.continue();
    });
    const page = await context.newPage();
    await page.goto(`${course}soil/`, { waitUntil: 'commit' });
    await page.waitForFunction(() => document.querySelector('.asks input')?.readOnly === false);
    const exercise = worker(page, pointer(page), 'layer');
    await page.fill('.asks > li:not(.step) input', (await exercise.keys())[0]);
    await page.click('.asks > li:not(.step) button');
    assert.match(await page.locator('.exercise [role=status]').textContent(), /^Right/);
    assert.deepEqual(await exercise.told(), []);
    come();
    await page.waitForSelector('#exercise-layer .told p');
    assert.deepEqual(await exercise.told(), ['Card 1: 1 of 1 right at the first try.']);
    await context.unrouteAll();
    await context.route(/course\.en\..*\.js$/, (route) => route.abort());
    const without = await open(`${course}water/`);
    await workRight(worker(without, pointer(without), 'inches'));
    assert.equal(await without.locator('.told').filter({ visible: true }).count(), 0);
    assert.deepEqual(faults.filter((fault) => !fault.includes('ERR_FAILED')), []);
  });

  test('two tabs on one course do not lose each other\'s answers', async (t) => {
    const { open } = await learner(t);
    const tabs = [await open(`${course}water/`), await open(`${course}water/`), await open(`${course}field/`)];
    const [one, two, three] = tabs.map((page, i) => worker(page, pointer(page), i < 2 ? 'inches' : 'feed'));
    await two.another();
    for (const place of [1, 2]) {
      for (const [i, exercise] of [one, two, three].entries()) {
        await tabs[i].bringToFront();
        await exercise.answer(place, (await exercise.keys())[place - 1]);
      }
    }
    await tabs[2].bringToFront();
    assert.match(await three.answer(3, (await three.keys())[2]), /^Right/);
    assert.deepEqual(await one.told(), [1, 2].map((card) => `Card ${card}: 2 of 2 right at the first try.`));
    const page = await open(course);
    assert.deepEqual((await rows(page)).filter(([, of]) => of !== '–'), [['November 30, 2026', '4 of 4'], ['November 30, 2026', '3 of 3']]);
  });

  for (const [name, before] of [
    ['forbidden', () => Object.defineProperty(window, 'localStorage', { get() { throw new Error('forbidden'); } })],
    ['full', () => {
      for (let size = 2 ** 22; size >= 1; size = Math.floor(size / 2)) {
        try {
          localStorage.setItem(`full ${size}`, 'x'.repeat(size));
        } catch {
          // there is less room than that
        }
      }
    }],
  ]) {
    test(`storage that is ${name}: the lesson works, and says that nothing is kept`, async (t) => {
      const { open, faults } = await learner(t, { before });
      const page = await open(`${course}soil/`);
      assert.match(await line(page), /nothing is kept once you close/);
      await workRight(worker(page, pointer(page), 'layer'));
      await page.goto(course);
      assert.match(await page.locator('.where').textContent(), /nothing is kept once you close/);
      assert.deepEqual(faults, []);
    });
  }

  test('what is there of a newer page, or damaged, is not written over', async (t) => {
    for (const text of ['{"version":2,"lessons":{}}', '{"version":1,"less', '[]']) {
      const { context, open } = await learner(t);
      const page = await open(course);
      await page.evaluate((was) => localStorage.setItem('course /courses/feeding/', was), text);
      await page.goto(`${course}soil/`);
      await mounted(page);
      assert.match(await line(page), /cannot be read here/);
      await workRight(worker(page, pointer(page), 'layer'));
      assert.equal(await kept(page), text);
      await page.goto(course);
      await page.click('.record .save');
      assert.match(await status(page), /cannot be read here/);
      await page.click('.record .clear');
      assert.equal(await kept(page), null);
      await page.click('.record .clear'); // twice by mistake
      await page.click('.record [role=status] button');
      assert.equal(await kept(page), text);
      await context.close();
    }
  });
});

describe('a file', () => {
  const part = { answer: '5', in: '', tries: 1, first: true, right: true };
  const card = { card: 1, day: 20787, helped: false, answers: [part] };
  const whole = (own, more = {}) => ({
    version: 1, course, code: own, lessons: { soil: { day: 20787, exercises: { layer: [card] } } }, ...more,
  });
  const soil = (own, cards) => whole(own, { lessons: { soil: { day: 20787, exercises: { layer: cards } } } });
  const other = (own) => `${own[0] === 'A' ? 'B' : 'A'}${own.slice(1)}`;
  const cases = [
    ['of another course', (own) => whole(other(own)), /another course, or of another site/],
    ['of another edition', (own) => whole(own.slice(0, 4) + other(own.slice(4))), /another edition of this course/],
    ['of a newer page', (own) => whole(own, { version: 2 }), /newer edition of this page/],
    ['that is cut off', (own) => JSON.stringify(whole(own)).slice(0, -9), /is damaged/],
    ['that is empty', () => '', /is damaged/],
    ['that is a picture', () => Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 255]), /is damaged/],
    ['of two million letters', (own) => JSON.stringify(whole(own)) + ' '.repeat(2e6), /too large/],
    ['that is null', () => 'null', /is damaged/],
    ['of an old version', (own) => whole(own, { version: 0 }), /is damaged/],
    ['with lessons in a list', (own) => whole(own, { lessons: [] }), /is damaged/],
    ['with a text for a number', (own) => soil(own, [{ ...card, card: '1' }]), /is damaged/],
    ['with a number for a text', (own) => soil(own, [{ ...card, answers: [{ ...part, answer: 5 }] }]), /is damaged/],
    ['with a day that is none', (own) => soil(own, [{ ...card, day: 1e12 }]), /is damaged/],
    ['with an endless number', (own) => JSON.stringify(soil(own, [card])).replace('20787', '1e999'), /is damaged/],
    ['with a number below 0', (own) => soil(own, [{ ...card, answers: [{ ...part, tries: -1 }] }]), /is damaged/],
    ['with lists in lists', () => '['.repeat(400_000) + ']'.repeat(400_000), /is damaged/],
    ['with a card of nothing', (own) => soil(own, [null]), /is damaged/],
    ['with 2,000 cards', (own) => soil(own, Array(2000).fill(card)), /is damaged/],
    ['with a long answer', (own) => soil(own, [{ ...card, answers: [{ ...part, answer: 'x'.repeat(61) }] }]), /is damaged/],
    ['with a name of the language', (own) => JSON.stringify(whole(own)).replace('"soil"', '"__proto__"'), /is damaged/],
  ];

  test('that is not this record gets a message, and what is kept stays', async (t) => {
    const { open, faults } = await learner(t);
    const page = await open(`${course}soil/`);
    await workRight(worker(page, pointer(page), 'layer'));
    await page.goto(course);
    const before = await kept(page);
    const own = await page.evaluate(() => JSON.parse(document.getElementById('course').textContent).code);
    for (const [name, make, want] of cases) {
      const made = make(own);
      const buffer = Buffer.from(typeof made === 'string' || Buffer.isBuffer(made) ? made : JSON.stringify(made));
      await page.setInputFiles('[type=file]', { name: 'mine.json', mimeType: 'application/json', buffer });
      await page.waitForFunction(() => document.querySelector('.record [role=status]').textContent);
      assert.match(await status(page), want, name);
      assert.equal((await status(page)).match(/Nothing was changed\./g).length, 1, name);
      assert.equal(await kept(page), before, name);
      await page.evaluate(() => { document.querySelector('.record [role=status]').textContent = ''; });
    }
    t.diagnostic(`${cases.length} files refused`);
    assert.deepEqual(faults, []);
  });

  test('joins what is kept; what it says beside that is not shown', async (t) => {
    const { open, faults } = await learner(t);
    const page = await open(`${course}soil/`);
    await workRight(worker(page, pointer(page), 'layer'));
    await page.goto(course);
    const own = await page.evaluate(() => JSON.parse(document.getElementById('course').textContent).code);
    const hostile = '<img src=x onerror=alert(1)>';
    const made = whole(own, { evil: hostile, lessons: {
      constructor: { day: 1, exercises: { toString: [card] } },
      soil: { day: 20780, exercises: { layer: [{ ...card, card: 2, answers: [{ ...part, answer: hostile, in: hostile }] }] } },
      water: { day: 20780, exercises: { inches: [card], gone: [card] } },
    } });
    await page.setInputFiles('[type=file]', { name: `${hostile}.json`, mimeType: 'text/plain', buffer: Buffer.from(JSON.stringify(made)) });
    await page.waitForFunction(() => document.querySelector('.record [role=status]').textContent);
    assert.match(await status(page), /is loaded/);
    assert.deepEqual((await rows(page)).slice(1, 3), [['November 30, 2026', '2 of 2'], ['not finished', '–']]);
    assert.equal(verify(settings.content, await code(page)).exit, 0);
    const lesson = await open(`${course}soil/`);
    assert.equal(await lesson.inputValue('#exercise-layer .asks > li:not(.step) input'), hostile);
    assert.equal(await lesson.locator('main img').count(), 0);
    assert.deepEqual(faults, []);
  });
});

// writeCourse writes the content of a site in Spanish, with a course of two lessons, and gives its folder.
function writeCourse(t) {
  const folder = mkdtempSync(join(tmpdir(), 'curso-'));
  t.after(() => rmSync(folder, { recursive: true }));
  const own = join(folder, 'content/courses/joven');
  mkdirSync(own, { recursive: true });
  writeFileSync(join(folder, 'content/site.yaml'), 'office: Oficina de prueba\nlanguage: es\n');
  writeFileSync(join(folder, 'content/home.md'), '---\ntitle: Prueba\nsummary: Una prueba.\n---\n');
  const head = (title, order) => `---\ntitle: ${title}\nsummary: Es corta.\norder: ${order}\n---\n\nCave.\n`;
  writeFileSync(join(own, 'cavar.md'), head('Cavar', 1));
  const [exercise] = readFileSync(join(settings.content, 'courses/feeding/suelo.md'), 'utf8').match(/^```exercise[^]*?^```$/m);
  writeFileSync(join(own, 'suelo.md'), `${head('El suelo', 2)}\n${exercise}\n`);
  return folder;
}

describe('a course in Spanish, of which nobody wrote the page', () => {
  test('at the desk, a save of the lesson leaves its progress at work', async (t) => {
    const folder = writeCourse(t);
    const desk = spawn(settings.acreleaf, ['desk', '--from', join(folder, 'content'), '--port', '0']);
    t.after(() => desk.kill('SIGINT'));
    let said = '';
    await new Promise((resolve) => {
      desk.stdout.on('data', (text) => (said += text) && said.includes('Ctrl+C') && resolve());
    });
    const { open } = await learner(t);
    const page = await open(`${said.match(/http:\/\/[\d.:]+/)[0]}/courses/joven/suelo/`);
    const soil = worker(page, pointer(page), 'layer');
    await soil.answer(1, '9999');
    const name = join(folder, 'content/courses/joven/suelo.md');
    writeFileSync(name, readFileSync(name, 'utf8').replace('Cave.', 'Cave hondo.'));
    await page.waitForFunction(() => document.body.textContent.includes('Cave hondo.')
      && document.querySelector('.asks input')?.readOnly === false);
    assert.match((await soil.told())[0], /^Tarjeta 1: 0 de 1 bien/);
    await page.click('#exercise-layer .card button');
    await page.fill('.asks > li:not(.step) input', (await soil.keys())[0]);
    await page.click('.asks > li:not(.step) button');
    assert.match((await soil.told())[1], /^Tarjeta 2: 1 de 1 bien/);
  });

  test('a lesson without an exercise is finished once it is opened', async (t) => {
    const folder = writeCourse(t);
    const pressed = spawnSync(settings.acreleaf, ['press', '--from', join(folder, 'content'), '--to', join(folder, 'public')], { encoding: 'utf8' });
    assert.equal(pressed.status, 0, pressed.stderr);
    const { origin: own, close } = await serve(join(folder, 'public'));
    t.after(close);
    const { open, faults } = await learner(t);
    const page = await open(`${own}/courses/joven/cavar/`);
    assert.equal(await line(page), 'Abierta el 30 de noviembre de 2026. Sus respuestas quedan en este aparato.');
    await page.goto(`${own}/courses/joven/suelo/`);
    await mounted(page);
    const soil = worker(page, pointer(page), 'layer');
    await soil.answer(1, '9999');
    assert.deepEqual(await soil.told(), [
      'Tarjeta 1: 0 de 1 bien al primer intento; faltan 1.',
      'Este ejercicio vuelve el 1 de diciembre de 2026, con otros números.',
    ]);
    await page.goto(`${own}/courses/joven/`);
    assert.equal(await page.locator('.start').textContent(), 'Siga donde se quedó: El suelo');
    assert.equal(await page.locator('.record .sum').textContent(), '1 de 2 lecciones terminadas. 0 de 1 respuestas bien al primer intento.');
    const { exit, out } = verify(join(folder, 'content'), await code(page));
    assert.equal(exit, 0);
    assert.match(out, /1\. +Cavar +2026-11-30 +no answers\n2\. +El suelo +not finished +0 of 1 right/);
    assert.deepEqual(faults, []);
  });
});

describe('a code', () => {
  test('is what the program writes for the same record', async (t) => {
    const folder = dirname(settings.numbers);
    const { origin: own, close } = await serve(folder);
    t.after(close);
    const page = await browser.newPage();
    t.after(() => page.close());
    await page.goto(`${own}/blank.html`);
    const cases = readFileSync(settings.codes, 'utf8').trim().split('\n').map((one) => one.split(' '));
    const written = await page.evaluate(async ({ module, all }) => {
      const { writeCode } = await import(module);
      return all.map(([letters, ...rest]) => writeCode(letters, rest.slice(0, -1).map((one) => one.split('/').map(Number))));
    }, { module: `${own}/code.mjs`, all: cases });
    assert.ok(cases.length >= 100);
    assert.deepEqual(written, cases.map((one) => one.at(-1)));
    t.diagnostic(`${cases.length} codes written alike`);
  });

  test('of another edition or another site says so', async (t) => {
    const folder = mkdtempSync(join(tmpdir(), 'course-'));
    t.after(() => rmSync(folder, { recursive: true }));
    const { open } = await learner(t);
    const told = await code(await open(course));
    cpSync(settings.content, folder, { recursive: true });
    const lesson = ['courses/feeding/soil.md', 'courses/feeding/suelo.md']; // a translation has as many cards
    for (const [paths, from, to, want] of [
      [lesson, 'cards: 40', 'cards: 39', /another edition of "Feeding a young orchard"/],
      [['site.yaml'], 'office:', 'address: https://other.example.org/\noffice:', /of no course of this site/],
    ]) {
      const files = paths.map((path) => join(folder, path)).map((name) => [name, readFileSync(name, 'utf8')]);
      for (const [name, before] of files) {
        const added = before.replace('digits: 3\n', `digits: 3\n${to}\n`);
        const after = before.includes(from) ? before.replace(from, to) : added;
        assert.notEqual(after, before);
        writeFileSync(name, after);
      }
      const { exit, err } = verify(folder, told);
      assert.equal(exit, 1);
      assert.match(err, want);
      assert.equal(err.match(/^error: /gm).length, 1);
      files.forEach(([name, before]) => writeFileSync(name, before));
    }
  });

  test('that is damaged says so', async (t) => {
    const { open } = await learner(t);
    const told = await code(await open(course));
    const { exit, err } = verify(settings.content, told.slice(0, -1) + (told.endsWith('A') ? 'B' : 'A'));
    assert.equal(exit, 1);
    assert.match(err, /^error: the code is damaged[^\n]*\n +note: [^\n]+\n$/);
  });
});
