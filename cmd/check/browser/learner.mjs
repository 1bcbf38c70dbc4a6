// A learner in a course: by keys and by touch, from the first lesson to the record; and what comes back, and when.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { inspect, inspectColours } from './axe.mjs';
import { code, course, kept, learner, line, rows, status, today, verify } from './learning.mjs';
import { keyboard, marks, mounted, pointer, touch, worker, workRight } from './lesson.mjs';
import { sideways } from './look.mjs';
import { settings } from './settings.mjs';

const lessons = [
  ['report', 'basis'], ['soil', 'layer'], ['water', 'inches'], ['trees', 'acre'], ['season', 'left'], ['field', 'feed'],
];

// workTrees has a learner work the lesson on trees with every kind of slip, leave, come back and finish it.
async function workTrees(page, hands, comeBack) {
  const first = worker(page, hands, 'acre');
  const [, , ounces] = await first.givens();
  const [trees, rate, order] = await first.keys();
  assert.match(await first.answer(1, '150'), /not it yet/);
  assert.match(await first.answer(2, `${(150 * ounces / 16).toPrecision(3)} ${rate.split(' ').slice(1).join(' ')}`),
    /worked correctly from an earlier answer/);
  assert.match(await first.answer(1, `${Math.round(parseFloat(trees))} trees/ac`), /^Right except for rounding/);
  assert.deepEqual(await first.told(), [
    'Card 1: 1 of 3 right at the first try, 2 still to do.',
    'This exercise comes back on December 1, 2026, with other numbers.',
  ]);

  const again = await comeBack();
  const second = worker(again.page, again.hands, 'acre');
  assert.equal(await line(again.page), 'Started: 0 of 1 exercises finished. 1 of 2 answers right at the first try. Your answers stay on this device.');
  assert.equal(await again.page.inputValue('#exercise-acre .asks > li:not(.step) input'), `${Math.round(parseFloat(trees))} trees/ac`);
  assert.equal(await second.answer(2, rate), `Right: ${rate}.`);
  assert.match(await second.answer(3, order), /^Right/);
  assert.equal((await second.told())[0], 'Card 1: 2 of 3 right at the first try.');

  await second.another();
  const [wanted, pounds] = await second.keys();
  assert.match(await second.answer(1, `${parseFloat(wanted)} lb/ac`), /the unit is not/);
  assert.equal(await second.answer(1, wanted), `Right: ${wanted}.`);
  const [, , each] = await second.givens();
  const slip = await second.answer(2, `${(parseFloat(wanted) * each).toPrecision(3)} ${pounds.split(' ').slice(1).join(' ')}`);
  assert.doesNotMatch(slip, /^Right|not it yet/, 'ounces for pounds is a slip with a name');
  assert.equal(await second.answer(2, pounds), `Right: ${pounds}.`);
  assert.match(await second.answer(3, order), /^Right/);
  assert.equal(await line(again.page), 'Finished on November 30, 2026. 3 of 6 answers right at the first try. Your answers stay on this device.');
  return again;
}

describe('a course from its first lesson to its record', () => {
  for (const [way, how, handsOf] of [
    ['by keyboard alone', {}, keyboard],
    ['by touch', { viewport: { width: 390, height: 780 }, hasTouch: true, isMobile: true }, touch],
  ]) {
    test(way, async (t) => {
      const before = marks;
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
      assert.equal(await last.locator('.record .sum').textContent(), '6 of 6 lessons finished. 15 of 18 answers right at the first try.');
      const told = await code(last);
      const { exit, out } = verify(settings.content, told);
      assert.equal(exit, 0);
      assert.match(out, /4\. +Trees and ounces +2026-11-30 +3 of 6 right/);
      assert.match(out, /6 of 6 lessons finished; 15 of 18 right[^]*does not prove who sat there/);

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
      t.diagnostic(`${way}: ${marks - before} answers marked, each said once`);
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
