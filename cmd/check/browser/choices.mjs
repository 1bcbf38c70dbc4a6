// The other things to change in a worksheet: the unit of a number, a choice from a list, a given that may stay empty. And
// the pictures that follow all of them.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { dependents, readGuide } from './content.mjs';
import './drawings.mjs';
import { expectAnswers, expectNative } from './expect.mjs';
import { reckon, work } from './native.mjs';
import { choose, field, put, restore, state, whole } from './reader.mjs';
import { settings } from './settings.mjs';
import { guides } from './site.mjs';
import { regulars, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);

// Two at a time: a page waits for the browser as often as the browser for a page.
describe('choices', { concurrency: 2 }, () => {
  for (const path of guides) {
    const guide = readGuide(path);
    test(`/${path}`, async (t) => {
      const { page, complaints, close } = await visit(`${origin}/${path}`);
      t.after(close);
      const example = await whole(page);
      // Whatever a trial finds, the next one starts from the example again.
      const trial = (name, sheet, run) => t.test(name, async () => {
        try {
          await run();
        } finally {
          await restore(page, sheet);
        }
        assert.deepEqual(await whole(page), example, 'the example does not come back');
      });
      for (const sheet of guide.worksheets.keys()) {
        for (const control of await controls(page, sheet)) {
          const one = { ...control, sheet };
          await trial(`${sheet}.${one.given}: ${one.kind}`, sheet, () => kinds[one.kind](page, guide, one));
        }
      }
      assert.deepEqual(complaints, []);
    });
  }
});

// controls gives what can be changed in a worksheet beside the numbers of the example: given, kind, options.
function controls(page, sheet) {
  return page.locator(`#worksheet-${sheet}`).evaluate((section) => [
    ...[...section.querySelectorAll('select[data-unit-for]')].filter((select) => (
      /^[\d.]+$/.test(document.getElementById(select.dataset.unitFor).value))).map((select) => ({
      kind: 'units',
      id: select.dataset.unitFor,
      options: [...select.options].filter((option) => option.dataset.other === select.selectedOptions[0].dataset.other)
        .map(({ text, value, index }) => ({ text, value, index })),
    })),
    ...[...section.querySelectorAll('option[data-other]')].map((option) => ({
      kind: 'second', id: option.parentElement.dataset.unitFor, index: option.index, unit: option.text,
      low: Number(option.dataset.low), high: Number(option.dataset.high),
    })),
    ...[...section.querySelectorAll('select[data-cell]')].map((select) => ({ kind: 'choice', id: select.id })),
    ...[...section.querySelectorAll('input[data-presence]')].filter((input) => input.value === '').map((input) => ({
      kind: 'empty', id: input.id, low: Number(input.dataset.low), high: Number(input.dataset.high),
      unit: input.parentElement.querySelector('.unit, option:checked')?.textContent ?? '',
    })),
  ].map((control) => ({ ...control, given: control.id.slice(section.id.length - 'worksheet-'.length + 1) })));
}

// belonging gives the numbers that belong to a choice: whether it has moved, what is there, what is said beside it.
function belonging(page) {
  return page.evaluate(() => [...document.querySelectorAll('input[data-for]')].map((input) => {
    const sheet = input.closest('section.worksheet').id.replace(/^worksheet-/, '');
    const field = input.closest('.field');
    const lists = input.dataset.for.split(' ').map((cell) => document.querySelector(`select[data-cell="${cell}"]`));
    return {
      sheet, given: input.id.slice(sheet.length + 1), id: input.id, text: input.value, printed: input.defaultValue,
      moved: lists.some((list) => !list.selectedOptions[0].defaultSelected),
      needed: !('presence' in input.dataset), fault: field.querySelector('.fault').checkVisibility(),
      aside: field.querySelector('.aside')?.checkVisibility() ? field.querySelector('.aside > p').textContent : '',
    };
  }));
}

// expectAside wants what belongs to another option to be set aside, with a sentence that names it.
function expectAside({ id, moved, text, printed, aside }, option) {
  assert.equal(text, moved ? '' : printed, `${id} with ${option}`);
  assert.equal(aside !== '', moved && printed !== '', `${id} with ${option} says “${aside}”`);
  assert.ok(aside === '' || aside.includes(printed), `“${aside}” does not name ${printed}`);
}

// expectWayOn wants a worksheet without answers to say what to change: it refuses, with a sentence; or it waits for the
// number of the option that is chosen now, at a field that says so; or for a worksheet that does.
function expectWayOn(now, numbers, option) {
  const stuck = Object.entries(now.worksheets).filter(([, sheet]) => sheet.void);
  const told = stuck.some(([name, sheet]) => sheet.refusals.length > 0
    || numbers.some((one) => one.sheet === name && one.needed && one.fault && one.aside !== ''));
  assert.ok(stuck.length === 0 || told, `${option}: no way on from ${stuck.map(([name]) => name)}`);
}

// useAgain brings back with one press what was set aside with the first option that sets anything aside.
async function useAgain(page, guide, { sheet, given, select, names, printed }) {
  const other = printed === 0 ? 1 : 0;
  await choose(select, other);
  const set = (await belonging(page)).filter(({ aside }) => aside !== '');
  for (const { id } of set) {
    await page.locator(`.field:has([id="${id}"]) .aside button`).evaluate((button) => button.click());
  }
  const left = (await belonging(page)).filter((one) => one.moved && !set.some(({ id }) => id === one.id));
  for (const { id, text, printed: own, aside } of await belonging(page)) {
    assert.equal(text, own, `${id} is not back`);
    assert.equal(aside, '', `${id} is back, and still said to be set aside`);
  }
  assert.deepEqual(left.filter(({ text }) => text !== ''), []);
  const changes = { [sheet]: { [given]: names[other] } };
  expectAnswers(guide, await state(page), work(guide.worksheets, changes));
}

const unitOf = (page, sheet, given) => page.locator(`[data-unit-for="${sheet}-${given}"]`);

const kinds = {
  // A number stays as it is typed when its unit changes, and is a fault where it is outside in that unit. The
  // example's amount, typed anew in that unit, is worked as the program works it.
  async units(page, guide, { sheet, given, options }) {
    const input = field(page, sheet, given);
    const number = await input.inputValue();
    const [low, high] = await input.evaluate(({ dataset }) => [Number(dataset.low), Number(dataset.high)]);
    const factors = options.map(({ value }) => value.split('/').map(Number));
    const chosen = await unitOf(page, sheet, given).evaluate((select) => select.selectedIndex);
    const [multiply, divide] = factors[options.findIndex(({ index }) => index === chosen)];
    for (const [i, [to, by]] of factors.entries()) {
      const unit = options[i].text;
      await choose(unitOf(page, sheet, given), options[i].index);
      assert.equal(await input.inputValue(), number, 'the number in the field changed with the unit');
      const as = Number(number) * to / by;
      const wrong = await input.getAttribute('aria-invalid') === 'true';
      assert.equal(wrong, as < low || as > high, `${number} ${unit} is outside and passes, or is not and does not`);

      const amount = String(Number((Number(number) * multiply / divide * by / to).toPrecision(3)));
      await put(input, amount);
      const native = work(guide.worksheets, { [sheet]: { [given]: `${amount} ${unit}` } });
      expectAnswers(guide, await state(page), native);
      await put(input, number);
    }
  },

  // The second kind of quantity that a given takes: the number is worked as that, within the limits of that kind.
  async second(page, guide, { sheet, given, index, unit, low, high }) {
    const input = field(page, sheet, given);
    const amount = String(Number((low + (high - low) / 40).toPrecision(2)));
    await choose(unitOf(page, sheet, given), index);
    await put(input, amount);
    const native = work(guide.worksheets, { [sheet]: { [given]: `${amount} ${unit}` } });
    expectAnswers(guide, await state(page), native);
    await put(input, String(high * 2));
    assert.equal(await input.getAttribute('aria-invalid'), 'true', `${high * 2} ${unit} is taken`);
  },

  async choice(page, guide, { sheet, given }) {
    const { calculation } = guide.worksheets.get(sheet);
    const names = reckon(calculation, { [given]: '?' }).error.match(/one of: (.*)/)[1].split(', ');
    const select = field(page, sheet, given);
    assert.equal(await select.locator('option').count(), names.length);
    const example = await whole(page);
    const printed = await select.evaluate((list) => [...list.options].findIndex((option) => option.defaultSelected));
    for (const [i, name] of names.entries()) {
      await choose(select, i);
      const changes = { [sheet]: { [given]: name } };
      for (const one of await belonging(page)) {
        expectAside(one, name);
        changes[one.sheet] = { ...changes[one.sheet], ...(one.moved ? { [one.given]: null } : {}) };
      }
      const now = await state(page);
      expectAnswers(guide, now, work(guide.worksheets, changes));
      expectWayOn(now, await belonging(page), name);
    }
    await choose(select, printed);
    assert.deepEqual(await whole(page), example, 'what belonged to the first option does not come back with it');
    await useAgain(page, guide, { sheet, given, select, names, printed });
  },

  // A given that the example leaves empty: filled in, it counts; empty again, it does not.
  async empty(page, guide, { sheet, given, low, high, unit }) {
    const number = String(Number(((low + high) / 2).toPrecision(3)));
    const moved = dependents(guide.worksheets, sheet);
    await put(field(page, sheet, given), number);
    const native = work(guide.worksheets, { [sheet]: { [given]: `${number} ${unit}` } });
    expectNative(guide, await state(page), native, moved);
    await put(field(page, sheet, given), '');
    expectNative(guide, await state(page), work(guide.worksheets), new Set());
  },
};
