// A learner at an exercise, by keyboard: what is said, what is shown, and what is kept.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { inspect } from './axe.mjs';
import { sideways } from './look.mjs';
import { settings } from './settings.mjs';
import { ready, screens, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const address = `${origin}/workshops/report/`;

// open opens the workshop in a context of its own; a screen and what runs before the page may be told.
async function open(t, { fragment = '', screen = {}, before } = {}) {
  const context = await browser.newContext({
    viewport: { width: screen.width ?? 1280, height: 800 }, colorScheme: screen.scheme ?? 'light',
  });
  t.after(() => context.close());
  const page = await context.newPage();
  if (before) {
    await page.addInitScript(before);
  }
  await page.goto(address + fragment);
  await mounted(page);
  return page;
}

async function mounted(page) {
  await ready(page);
  await page.waitForFunction(() => [...document.querySelectorAll('.exercise .card input')].every((one) => !one.readOnly));
}

const exercise = (page, name) => {
  const own = page.locator(`#exercise-${name}`);
  return {
    own,
    card: own.locator('.card input'),
    face: own.locator('.face'),
    asked: own.locator('.asks > li').filter({ visible: true }),
    field: (i) => own.locator('.asks > li').filter({ visible: true }).nth(i).locator('input'),
    another: own.locator('.card button'),
    spoken: () => own.locator('[role=status]').textContent(),
    lines: own.locator('.solution .work li').filter({ visible: true }),
  };
};

// key is the right answer to what is asked last, as the page has it.
const key = (own) => own.locator('.solution .key').last().evaluate((element) => element.textContent);

async function answer(field, text) {
  await field.fill(text);
  await field.press('Enter');
}

describe('an exercise', () => {
  test('first the hint, then the work; and a unit that is missing costs no try', async (t) => {
    const page = await open(t);
    const { own, field, spoken } = exercise(page, 'soil');
    const right = await key(own);
    await answer(field(0), right.split(' ')[0]);
    assert.match(await spoken(), /Write its unit/);
    await answer(field(0), 'abc');
    assert.match(await spoken(), /not one number/);
    assert.equal(await own.locator('.hint').getAttribute('open'), null);
    await answer(field(0), '9999 lb/ac');
    assert.notEqual(await own.locator('.hint').getAttribute('open'), null);
    assert.equal(await own.locator('.solution').isVisible(), false);
    await answer(field(0), '8888 lb/ac');
    assert.equal(await own.locator('.solution .key').first().isVisible(), true);
    await answer(field(0), right);
    assert.equal(await spoken(), `Right: ${right}.`);
  });

  test('the four faces, and how a learner goes from one to the next', async (t) => {
    const page = await open(t);
    const { own, face, asked, field, another, lines, spoken } = exercise(page, 'trees');
    const chosen = () => face.evaluate((element) => element.selectedIndex);
    const counts = async () => [await asked.count(), await lines.count()];
    const seen = [];
    for (const index of [0, 1, 2, 3]) {
      await face.selectOption({ index });
      seen.push(await counts());
    }
    const [[noFields, all], [one, most], [steps, none], [parts]] = seen;
    assert.deepEqual([noFields, one, none], [0, 1, 0]);
    assert.ok(most < all && parts < steps, JSON.stringify(seen));
    await answer(field(0), '9999');
    await another.click();
    assert.equal(await chosen(), 2);
    assert.match(await spoken(), /more of the work/);
    await face.selectOption({ index: 1 });
    for (const times of [1, 2]) {
      assert.equal(await chosen(), 1, `before answer ${times}`);
      await answer(field(0), await key(own));
      await another.click();
    }
    assert.equal(await chosen(), 2);
    assert.match(await spoken(), /less of the work/);
    await face.selectOption({ index: 0 });
    await another.click();
    assert.equal(await chosen(), 1);
  });

  test('card and answers stay through reload and back', async (t) => {
    const page = await open(t, { fragment: '#card-soil-7' });
    const soil = exercise(page, 'soil');
    assert.equal(await soil.card.inputValue(), '7');
    const right = await key(soil.own);
    await answer(soil.field(0), right);
    const trees = exercise(page, 'trees');
    await trees.face.selectOption({ index: 2 });
    await trees.field(1).fill('12 f');
    const still = async () => {
      await mounted(page);
      assert.equal(await soil.card.inputValue(), '7');
      assert.equal(await soil.field(0).inputValue(), right);
      assert.equal(await soil.own.locator('.mark .right').filter({ visible: true }).count(), 1);
      assert.equal(await soil.spoken(), '');
      assert.equal(await trees.field(1).inputValue(), '12 f');
    };
    await page.reload();
    await still();
    await page.goto(origin);
    await page.goBack();
    await still();
  });

  test('a card that is none', async (t) => {
    const page = await open(t, { fragment: '#card-soil-999' });
    const { own, card, spoken } = exercise(page, 'soil');
    const story = await own.locator('.story').textContent();
    assert.match(await spoken(), /no such card/);
    for (const text of ['0', '41', '2.5', '', '-3']) {
      await card.fill(text);
      await card.press('Tab');
      assert.match(await spoken(), /no such card/, text);
      assert.equal(await own.locator('.story').textContent(), story);
    }
    await card.fill('5');
    await card.press('Tab');
    assert.equal(await own.locator('.no-card').isVisible(), false);
  });

  for (const [name, before] of [
    ['forbidden', () => Object.defineProperty(window, 'sessionStorage', { get() { throw new Error('forbidden'); } })],
    ['damaged', () => sessionStorage.setItem('/workshops/report/#exercise-soil', '{"card":')],
    ['of another edition', () => sessionStorage.setItem('/workshops/report/#exercise-soil',
      JSON.stringify({ card: 900, face: 3, tries: 0, right: 0, wrong: false, answers: [] }))],
  ]) {
    test(`what is kept is ${name}`, async (t) => {
      const page = await open(t, { before });
      const { own, field, spoken } = exercise(page, 'soil');
      const right = await key(own);
      await answer(field(0), right);
      assert.equal(await spoken(), `Right: ${right}.`);
    });
  }

  for (const screen of screens) {
    test(`at ${screen.width} px, ${screen.scheme}`, async (t) => {
      const page = await open(t, { screen });
      const { own, face, field } = exercise(page, 'trees');
      await face.selectOption({ index: 2 });
      await answer(field(0), 'abc');
      await answer(field(1), '48');
      await own.locator('.hint summary').click();
      assert.deepEqual(await page.evaluate(sideways), []);
      assert.deepEqual(await inspect(page), []);
      const small = await own.locator('input, select, button, summary').filter({ visible: true }).evaluateAll((all) => all
        .map((one) => [one.outerHTML.slice(0, 60), one.getBoundingClientRect().height]).filter(([, height]) => height < 44));
      assert.deepEqual(small, []);
    });
  }
});
