// A learner in a course: what is kept on the device, what comes back and when, and the record.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, test } from 'node:test';
import { inspect, inspectColours } from './axe.mjs';
import { keyboard, listen, mounted, pointer, touch, worker, workRight } from './lesson.mjs';
import { sideways } from './look.mjs';
import { settings } from './settings.mjs';
import { serve } from './server.mjs';
import { start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const course = `${origin}/courses/feeding/`;
const lessons = [
  ['report', 'basis'], ['soil', 'layer'], ['water', 'inches'], ['trees', 'acre'], ['season', 'left'], ['field', 'feed'],
];
const today = new Date('2026-11-30T15:00:00');

// learner opens a browser of one learner, whose clock stands still, and keeps what goes wrong in its pages.
async function learner(t, { before, ...how } = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...how });
  t.after(() => context.close());
  await context.clock.setFixedTime(today);
  await listen(context);
  if (before) {
    await context.addInitScript(before);
  }
  const faults = [];
  context.on('weberror', (fault) => faults.push(fault.error().message));
  context.on('console', (message) => faults.push(message.text()));
  const open = async (address) => {
    const page = await context.newPage();
    await page.goto(address);
    await mounted(page);
    return page;
  };
  return { context, faults, open };
}

const kept = (page) => page.evaluate(() => localStorage.getItem('course /courses/feeding/'));
const line = (page) => page.locator('main > .told').textContent();
const status = (page) => page.locator('.record [role=status]').textContent();
const code = (page) => page.locator('.letters').textContent();
const rows = (page) => page.$$eval('.record tbody tr', (all) => all.map((row) => [...row.cells].slice(1).map((cell) => cell.textContent)));

// verify asks the program about a code.
function verify(content, words) {
  const { status: exit, stdout, stderr } = spawnSync(settings.acreleaf, ['record', words, '--from', content],
    { encoding: 'utf8' });
  return { exit, out: stdout, err: stderr };
}

// workTrees has a learner work the lesson on trees with every kind of slip, leave, come back and finish it.
async function workTrees(page, hands, comeBack) {
  const first = worker(page, hands, 'acre');
  const [, , ounces] = await first.givens();
  const [trees, rate] = await first.keys();
  assert.match(await first.answer(1, '150'), /not the number yet/);
  assert.match(await first.answer(2, `${(150 * ounces / 16).toPrecision(3)} ${rate.split(' ').slice(1).join(' ')}`),
    /worked correctly from an earlier answer/);
  assert.match(await first.answer(1, `${Math.round(parseFloat(trees))} trees/ac`), /^Right except for rounding/);
  assert.deepEqual(await first.told(), [
    'Card 1: 1 of 2 right at the first try, 1 still to do.',
    'This exercise comes back on December 1, 2026, with other numbers.',
  ]);

  const again = await comeBack();
  const second = worker(again.page, again.hands, 'acre');
  assert.equal(await line(again.page), 'Started: 0 of 1 exercises finished. 1 of 2 answers right at the first try. Your answers stay on this device.');
  assert.equal(await again.page.inputValue('#exercise-acre .asks > li:not(.step) input'), `${Math.round(parseFloat(trees))} trees/ac`);
  assert.equal(await second.answer(2, rate), `Right: ${rate}.`);
  assert.equal((await second.told())[0], 'Card 1: 1 of 2 right at the first try.');

  await second.another();
  const [wanted, pounds] = await second.keys();
  assert.match(await second.answer(1, `${parseFloat(wanted)} lb/ac`), /the unit is not/);
  assert.equal(await second.answer(1, wanted), `Right: ${wanted}.`);
  const [, , each] = await second.givens();
  const slip = await second.answer(2, `${(parseFloat(wanted) * each).toPrecision(3)} ${pounds.split(' ').slice(1).join(' ')}`);
  assert.doesNotMatch(slip, /^Right|not the number yet/, 'ounces for pounds is a slip with a name');
  assert.equal(await second.answer(2, pounds), `Right: ${pounds}.`);
  assert.equal(await line(again.page), 'Finished on November 30, 2026. 1 of 4 answers right at the first try. Your answers stay on this device.');
  return again;
}

describe('a course from its first lesson to its record', () => {
  for (const [way, how, handsOf] of [
    ['by keyboard alone', {}, keyboard],
    ['by touch', { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true }, touch],
  ]) {
    test(way, async (t) => {
      const { context, faults, open } = await learner(t, { acceptDownloads: true, ...how });
      const page = await open(`${course}trees/#exercise-acre`);
      const { page: last } = await workTrees(page, await handsOf(page), async () => {
        await page.close();
        const back = await open(`${course}trees/#exercise-acre`);
        return { page: back, hands: await handsOf(back) };
      });
      for (const [lesson, exercise] of lessons.filter(([name]) => name !== 'trees')) {
        await last.goto(`${course}${lesson}/#exercise-${exercise}`); // where the Tab key goes on
        await mounted(last);
        await workRight(worker(last, await handsOf(last), exercise));
      }
      await last.goto(course);
      const hands = await handsOf(last);
      assert.equal(await last.locator('.start').textContent(), 'You have finished all lessons.');
      assert.equal(await last.locator('.record .sum').textContent(), '6 of 6 lessons finished. 10 of 13 answers right at the first try.');
      const told = await code(last);
      const { exit, out } = verify(settings.content, told);
      assert.equal(exit, 0);
      assert.match(out, /4\. +Trees and ounces +2026-11-30 +1 of 4 right/);
      assert.match(out, /6 of 6 lessons finished; 10 of 13 right[^]*does not prove who sat there/);

      await hands.type('#course_name', 'R. Quince');
      const [download] = await Promise.all([last.waitForEvent('download'), hands.press('.record .save')]);
      const file = await download.path();
      assert.equal(download.suggestedFilename(), 'feeding.json');
      const saved = readFileSync(file, 'utf8');
      assert.equal(JSON.parse(saved).course, course);
      assert.doesNotMatch(saved, /Quince/);
      await hands.press('.record .clear');
      assert.equal(await kept(last), null);
      assert.match(await last.locator('.record .sum').textContent(), /^0 of 6 lessons finished\.$/);
      assert.equal(await last.locator('.start').textContent(), 'Start here: Read a report');
      const [chooser] = await Promise.all([last.waitForEvent('filechooser'), hands.press('.record .load')]);
      await chooser.setFiles(file);
      await last.waitForFunction(() => document.querySelector('.start').textContent.startsWith('You have'));
      assert.match(await status(last), /is loaded/);
      assert.equal(await code(last), told);
      await hands.press('.record .clear');
      await hands.press('.record [role=status] button');
      assert.equal(await status(last), 'The record is back.');
      assert.equal(await code(last), told);
      assert.doesNotMatch(await kept(last), /Quince/);
      assert.deepEqual(faults, []);
      await context.close();
    });
  }

  test('a record of nothing and of a part says how far it is', async (t) => {
    const { open } = await learner(t);
    const page = await open(course);
    const none = verify(settings.content, await code(page));
    assert.equal(none.exit, 0);
    assert.match(none.out, /0 of 6 lessons finished; no answers/);
    await page.goto(`${course}water/`);
    await mounted(page);
    const exercise = worker(page, pointer(page), 'inches');
    await exercise.answer(1, (await exercise.keys())[0]);
    await page.goto(course);
    assert.equal(await page.locator('.start').textContent(), 'Go on where you left off: What the water brings');
    assert.equal(await page.locator('.lessons .told').nth(2).textContent(), 'Started: 0 of 1 exercises finished. 1 of 1 answers right at the first try.');
    assert.deepEqual((await rows(page))[2], ['not finished', '1 of 1']);
    assert.match(verify(settings.content, await code(page)).out, /3\. +What the water brings +not finished +1 of 1 right/);
  });

  test('without a script nothing of it shows', async (t) => {
    const { context } = await learner(t, { javaScriptEnabled: false });
    const page = await context.newPage();
    for (const address of [course, `${course}soil/`]) {
      await page.goto(address);
      assert.equal(await page.locator(':is(.record, .again, .told)').filter({ visible: true }).count(), 0);
    }
  });
});

describe('what was missed', () => {
  const day = (page, n) => page.clock.setFixedTime(new Date(today.getTime() + n * 864e5));
  const due = async (page) => {
    await page.goto(course);
    return page.$$eval('.again li', (all) => all.map((one) => one.textContent));
  };
  // takes the card that is due and works it right.
  const work = async (page) => {
    await page.click('.again a');
    await mounted(page);
    const exercise = worker(page, pointer(page), 'layer');
    await workRight(exercise);
    return exercise.card();
  };

  test('comes back after 1, 3 and 10 days with other cards, and a miss begins anew', async (t) => {
    const { open, faults } = await learner(t);
    const page = await open(`${course}soil/`);
    const exercise = worker(page, pointer(page), 'layer');
    await exercise.answer(1, '9999');
    await exercise.answer(1, (await exercise.keys())[0]);
    assert.deepEqual(await due(page), [], 'on the same day');
    const cards = [];
    for (const [miss, until] of [[0, 1], [1, 4], [4, 14]]) {
      await day(page, until - 1);
      assert.deepEqual(await due(page), [], `${until - 1 - miss} days after`);
      await day(page, until);
      assert.equal((await due(page)).length, 1, `${until - miss} days after`);
      cards.push(await work(page));
      assert.deepEqual(await due(page), []);
    }
    assert.deepEqual(cards, ['2', '3', '4']);
    await day(page, 400);
    assert.deepEqual(await due(page), [], 'three times right is enough');

    await page.goto(`${course}soil/#card-layer-9`);
    await mounted(page);
    await page.locator('#exercise-layer .hint summary').click();
    assert.match((await exercise.told()).at(-1), /comes back on January 5, 2028/);
    await workRight(exercise);
    assert.match((await exercise.told()).at(-2), /Card 9: 0 of 1 right at the first try/, 'the hint was asked for');
    await day(page, 401);
    assert.deepEqual(await due(page), ['Nitrogen in a layer, card 10 What is in the soil']);
    await page.click('.again a');
    await mounted(page);
    assert.match((await exercise.told()).at(-1), /comes back today, with other numbers: Card 10/);
    await exercise.answer(1, '9999');
    await day(page, 402);
    assert.deepEqual(await due(page), ['Nitrogen in a layer, card 11 What is in the soil']);
    assert.deepEqual(faults, []);
  });

  test('loses nothing to a clock that is wrong by years', async (t) => {
    const { open } = await learner(t);
    const page = await open(`${course}soil/`);
    await page.clock.setFixedTime(new Date('2071-01-01T12:00:00'));
    const exercise = worker(page, pointer(page), 'layer');
    await exercise.answer(1, '9999');
    for (const wrong of ['1971-01-01T12:00:00', '2026-12-01T12:00:00', '2999-01-01T12:00:00']) {
      await page.clock.setFixedTime(new Date(wrong));
      assert.equal((await due(page)).length, 1, wrong);
      const { exit, out } = verify(settings.content, await code(page));
      assert.equal(exit, 0);
      assert.match(out, /0 of 1 right/);
    }
    await page.clock.setFixedTime(new Date('1965-01-01T12:00:00'));
    await work(page);
    assert.deepEqual((await rows(await page.goto(course).then(() => page)))[1], ['January 1, 1970', '1 of 2']);
    assert.equal(verify(settings.content, await code(page)).exit, 0);
  });
});

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
    assert.deepEqual(await one.told(), [1, 2].map((card) => `Card ${card}: 2 of 2 right at the first try.`));
    const page = await open(course);
    assert.deepEqual((await rows(page)).filter(([, of]) => of !== '–'), [['November 30, 2026', '4 of 4'], ['November 30, 2026', '2 of 2']]);
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

describe('a course in Spanish, of which nobody wrote the page', () => {
  test('a lesson without an exercise is finished once it is opened', async (t) => {
    const folder = mkdtempSync(join(tmpdir(), 'curso-'));
    t.after(() => rmSync(folder, { recursive: true }));
    const lessonsOf = join(folder, 'content/courses/joven');
    mkdirSync(lessonsOf, { recursive: true });
    writeFileSync(join(folder, 'content/site.yaml'), 'office: Oficina de prueba\nlanguage: es\n');
    writeFileSync(join(folder, 'content/home.md'), '---\ntitle: Prueba\nsummary: Una prueba.\n---\n');
    const head = (title, order) => `---\ntitle: ${title}\nsummary: Es corta.\norder: ${order}\n---\n\nCave.\n`;
    writeFileSync(join(lessonsOf, 'cavar.md'), head('Cavar', 1));
    const [exercise] = readFileSync(join(settings.content, 'courses/feeding/soil.md'), 'utf8').match(/^```exercise[^]*?^```$/m);
    writeFileSync(join(lessonsOf, 'suelo.md'), `${head('El suelo', 2)}\n${exercise}\n`);
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
    for (const [path, from, to, want] of [
      ['courses/feeding/soil.md', 'cards: 40', 'cards: 39', /another edition of "Feeding a young orchard"/],
      ['site.yaml', 'office:', 'address: https://other.example.org/\noffice:', /of no course of this site/],
    ]) {
      const name = join(folder, path);
      const before = readFileSync(name, 'utf8');
      const after = before.includes(from) ? before.replace(from, to) : before.replace('digits: 3\n', `digits: 3\n${to}\n`);
      assert.notEqual(after, before);
      writeFileSync(name, after);
      const { exit, err } = verify(folder, told);
      assert.equal(exit, 1);
      assert.match(err, want);
      assert.equal(err.match(/^error: /gm).length, 1);
      writeFileSync(name, before);
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

describe('the pages with progress', () => {
  for (const width of [320, 1280]) {
    test(`at ${width} px, light and dark`, async (t) => {
      const { open, context } = await learner(t, { viewport: { width, height: 800 } });
      const page = await open(`${course}soil/`);
      const exercise = worker(page, pointer(page), 'layer');
      await exercise.answer(1, '9999');
      await exercise.answer(1, (await exercise.keys())[0]);
      await context.clock.setFixedTime(new Date('2026-12-01T12:00:00'));
      for (const address of [`${course}soil/`, course]) {
        await page.goto(address);
        await mounted(page);
        assert.ok(await page.locator(':is(.told p, p.told, .again li)').filter({ visible: true }).count() > 1);
        assert.deepEqual(await page.evaluate(sideways), []);
        assert.deepEqual(await inspect(page), []);
        const small = await page.locator('.record :is(button, input)').filter({ visible: true }).evaluateAll((all) => all
          .map((one) => [one.outerHTML.slice(0, 60), one.getBoundingClientRect().height]).filter(([, height]) => height < 44));
        assert.deepEqual(small, []);
        await look(page, `${width}-light`);
        await page.emulateMedia({ colorScheme: 'dark' });
        assert.deepEqual(await inspectColours(page), []);
        await look(page, `${width}-dark`);
        await page.emulateMedia({ colorScheme: 'light' });
      }
    });
  }
});

// look takes a picture, for people.
async function look(page, name) {
  if (settings.pictures) {
    const path = join(settings.pictures, `${name}-${page.url().split('/').at(-2)}.png`);
    await page.screenshot({ path, fullPage: true });
  }
}
