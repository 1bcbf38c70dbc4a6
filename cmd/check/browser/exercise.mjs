// A learner at an exercise, by keyboard: what is said, what is shown, and what is kept.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { inspectBoth } from './axe.mjs';
import { sideways } from './look.mjs';
import { settings } from './settings.mjs';
import { complete, opposite, ready, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const address = `${origin}/workshops/report/`;
const lesson = (name) => `${origin}/courses/feeding/${name}/`;

// open opens a page, the workshop's or another, in a context of its own; a screen and what runs before may be told.
async function open(t, { at = address, fragment = '', screen = {}, before } = {}) {
  const context = await browser.newContext({
    viewport: { width: screen.width ?? 1280, height: 800 }, colorScheme: screen.scheme ?? 'light',
  });
  t.after(() => context.close());
  const page = await context.newPage();
  if (before) {
    await page.addInitScript(before);
  }
  await page.goto(at + fragment);
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

  test('a choice, by keyboard: nothing, wrong, wrong again, right', async (t) => {
    const page = await open(t, { at: lesson('field') });
    const { own, spoken, another } = exercise(page, 'feed');
    const radios = own.locator('.options input');
    const check = own.locator('.pick .entry button');
    const texts = await own.locator('.option').allTextContents();
    const right = texts.indexOf(await key(own));
    const wrong = 1 - right;
    assert.ok(right >= 0 && texts.length === 2, texts);
    const choose = async (at) => {
      await radios.first().focus();
      await page.keyboard.press('Space');
      for (let moved = 0; moved < at; moved++) {
        await page.keyboard.press('ArrowDown');
      }
      await page.keyboard.press('Tab');
      assert.ok(await check.evaluate((button) => button === document.activeElement));
      await page.keyboard.press('Enter');
    };
    await check.focus();
    await page.keyboard.press('Enter');
    assert.match(await spoken(), /Choose one/);
    await choose(wrong);
    assert.match(await spoken(), /not it yet/);
    assert.notEqual(await own.locator('.hint').getAttribute('open'), null);
    assert.equal(await own.locator('.reasons').isVisible(), false);
    await choose(wrong);
    const reasons = own.locator('.reasons p').filter({ visible: true });
    assert.equal(await reasons.count(), 1);
    await choose(right);
    assert.equal(await spoken(), `Right: ${texts[right]}.`);
    await page.reload();
    await mounted(page);
    assert.equal(await radios.nth(right).isChecked(), true);
    assert.equal(await own.locator('.pick .mark .right').isVisible(), true);
    await another.click();
    assert.equal(await own.locator('.options input:checked').count(), 0);
  });

  test('the right option and the order are those of each card, as its numbers are', async (t) => {
    const page = await open(t, { at: lesson('season') });
    const { own, card } = exercise(page, 'left');
    const keys = new Set();
    for (let number = 1; number <= 40; number++) {
      await card.fill(`${number}`);
      await card.press('Tab');
      const [order, values] = await own.evaluate((element) => [
        [...element.querySelectorAll('.solution .key')].pop().textContent.split('; '),
        Object.fromEntries([...element.querySelectorAll('.reasons p')].map((one) => one.textContent.split(': '))),
      ]);
      const amounts = order.map((item) => parseFloat(values[item]));
      assert.deepEqual(amounts, amounts.toSorted((a, b) => a - b), `card ${number}`);
      assert.equal(amounts.length, 3);
      keys.add(order.join());
    }
    assert.ok(keys.size > 1, 'all cards have one order');
  });

  test('an order, by touch: twice the same number, wrong, right', async (t) => {
    const page = await open(t, { at: lesson('trees'), screen: { width: 390 } });
    const { own, spoken } = exercise(page, 'acre');
    const lists = own.locator('.options select');
    const check = own.locator('.pick .entry button');
    const texts = await own.locator('.option').allTextContents();
    const order = (await key(own)).split('; ');
    const places = texts.map((text) => order.indexOf(text) + 1);
    const give = async (numbers) => {
      for (const [at, number] of numbers.entries()) {
        await lists.nth(at).selectOption(`${number}`);
      }
      await check.click();
    };
    await give(places.map(() => 1));
    assert.match(await spoken(), /a number of its own/);
    await give(places.map((place) => (place % places.length) + 1));
    assert.match(await spoken(), /not it yet/);
    await give(places);
    assert.equal(await spoken(), `Right: ${order.join('; ')}.`);
  });

  test('a report varies from card to card, in all of its lines', async (t) => {
    const page = await open(t);
    const { own, card } = exercise(page, 'line');
    const seen = {};
    for (let number = 1; number <= 6; number++) {
      await card.fill(`${number}`);
      await card.press('Tab');
      for (const row of await own.locator('.report tbody tr').all()) {
        const [label, result] = await row.locator('th, td').allTextContents();
        assert.match(result, /^[\d.]+ \D/);
        (seen[label] ??= new Set()).add(result);
      }
    }
    for (const [label, results] of Object.entries(seen)) {
      assert.ok(results.size >= 5, `${label}: ${[...results]}`);
    }
    assert.ok(Object.keys(seen).length > 3);
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

  for (const screen of opposite) {
    test(`at ${screen.width} px, light and dark`, async (t) => {
      const page = await open(t, { screen });
      await complete(page);
      const { own, face, field } = exercise(page, 'trees');
      await face.selectOption({ index: 2 });
      await answer(field(0), 'abc');
      await answer(field(1), '48');
      await own.locator('.hint summary').click();
      assert.deepEqual(await page.evaluate(sideways), []);
      assert.deepEqual(await inspectBoth(page), []);
      const small = await own.locator('input, select, button, summary').filter({ visible: true }).evaluateAll((all) => all
        .map((one) => [one.outerHTML.slice(0, 60), one.getBoundingClientRect().height]).filter(([, height]) => height < 44));
      assert.deepEqual(small, []);
    });

    test(`a choice and an order at ${screen.width} px, light and dark`, async (t) => {
      for (const [name, exerciseName] of [['report', 'basis'], ['season', 'left']]) {
        const page = await open(t, { at: lesson(name), screen });
        await complete(page);
        const { own } = exercise(page, exerciseName);
        await own.locator('.pick .entry button').click();
        await own.locator('.hint summary').click();
        assert.deepEqual(await page.evaluate(sideways), [], name);
        assert.deepEqual(await inspectBoth(page), [], name);
        const small = await own.locator('.options label').evaluateAll((all) => all
          .map((one) => [one.textContent, one.getBoundingClientRect().height]).filter(([, height]) => height < 44));
        assert.deepEqual(small, [], name);
      }
    });
  }
});
