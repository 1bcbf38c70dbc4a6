// Every printed line of the work is true for a person who keys it in: on every page with a worksheet, at the example, and at
// random numbers in all of its fields at once, with ranges and other units among them.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { check, lines } from './calculator.mjs';
import { settings } from './settings.mjs';
import { pages } from './site.mjs';
import { regulars, start } from './visit.mjs';

const SETS = 50; // of random numbers, on each page; of a twin, which has the same calculations in other words, a fifth

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);
const count = { pages: 0, sets: 0, lines: 0, bare: 0 };

describe('the work', { concurrency: 2 }, () => {
  for (const [seed, path] of pages.filter((page) => /^(es\/)?(guides|manual)\/./.test(page)).entries()) {
    test(`/${path}`, async (t) => {
      const { page, complaints, close } = await visit(`${origin}/${path}`, { width: 1280 });
      t.after(close);
      if (!await page.locator('section.worksheet').count()) {
        return;
      }
      count.pages++;
      rework(await page.evaluate(lines), `/${path}, the example`);
      const random = generator(seed + 1);
      const sets = Array.from({ length: path.startsWith('es/') ? SETS / 5 : SETS }, () => Array.from({ length: 600 }, random));
      // All sets in one turn of the page: it would lay itself out and paint itself after each.
      const drawn = await page.evaluate(`${JSON.stringify(sets)}.map((set) => [(${draw})(set), (${lines})()])`);
      for (const [i, [typed, printed]] of drawn.entries()) {
        rework(printed, `/${path}, set ${i + 1}: ${typed}`);
        count.sets++;
      }
      assert.deepEqual(complaints, []);
    });
  }
});

test('all lines were worked again', (t) => {
  t.diagnostic(`${count.lines} lines of ${count.pages} pages, at the example and ${count.sets} sets of numbers; `
    + `${count.bare} more have names and a result alone`);
  assert.ok(count.pages >= 8 && count.lines > 6_500, `only ${count.lines} lines of ${count.pages} pages`);
});

function rework(printed, where) {
  for (const line of printed) {
    let wrong;
    try {
      wrong = check(line);
    } catch (error) {
      wrong = error.message;
    }
    count[wrong === null ? 'bare' : 'lines']++;
    assert.ok(!wrong, `${where}\n${line.sheet}: ${line.names} ${line.printed}: ${wrong}`);
  }
}

// draw fills every field of the page, in it: numbers as people type them, in any of the units, and now and then two.
function draw(random) {
  const next = () => random.pop() ?? 0.5;
  const some = (low, high) => {
    const value = low + next() ** 3 * (high - low);
    return Number(value.toPrecision(1 + Math.floor(next() * 5)));
  };
  const typed = [];
  for (const input of document.querySelectorAll('.worksheet [data-cell]')) {
    if (input.localName === 'select') {
      input.selectedIndex = Math.floor(next() * input.options.length);
    } else if (input.type === 'date') {
      const day = Date.parse('2027-03-01') + Math.floor(next() * 200) * 864e5;
      input.value = new Date(day).toISOString().slice(0, 10);
    } else {
      const units = input.parentElement.querySelector('select');
      if (units && next() < 0.3) {
        units.selectedIndex = Math.floor(next() * units.options.length);
      }
      const chosen = units?.selectedOptions[0];
      const [multiply, divide] = (chosen?.value || '1/1').split('/').map(Number);
      const { low, high } = chosen?.hasAttribute('data-other') ? chosen.dataset : input.dataset;
      const near = Number(input.dataset.start ?? input.defaultValue) || Number(low);
      const one = () => {
        const whole = next() < 0.8 && !chosen?.hasAttribute('data-other')
          ? some(near * 0.5, near * 1.5) : some(Number(low), Number(high));
        return Number((whole * divide / multiply).toPrecision(1 + Math.floor(next() * 5)));
      };
      const ends = [one(), one()].sort((a, b) => a - b);
      input.value = input.dataset.presence && next() < 0.3 ? '' : next() < 0.1 ? ends.join(' to ') : String(ends[0]);
    }
    typed.push(`${input.id}=${input.value}`);
  }
  document.querySelector('.worksheet [data-cell]').dispatchEvent(new Event('change', { bubbles: true }));
  // A worksheet that refuses its numbers goes back to the example, so that those after it have theirs.
  for (const button of document.querySelectorAll('.worksheet.void [data-reset]')) {
    if (button.closest('.void')) {
      button.click();
      typed.push(`and ${button.closest('section').id} as it was`);
    }
  }
  return typed.join(' ');
}

// generator gives the same numbers from 0 to 1 for the same seed.
function generator(seed) {
  let state = seed * 2654435761 % 4294967296;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}
