// What the program says of an answer to an exercise, the page says to the word: cmd/acreleaf/internal/cli/marks answers
// every exercise in many ways, and the same texts are typed here. The content is in English and in Spanish.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { describe, test } from 'node:test';
import { settings } from './settings.mjs';
import { ready, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const pages = JSON.parse(execFileSync(settings.marks, ['-from', settings.content], { maxBuffer: 1 << 28, encoding: 'utf8' }));

// answer types the answers of all cases into an exercise, in the page, and gives the mark of each.
function answer({ name, cases }) {
  const exercise = document.getElementById(`exercise-${name}`);
  const number = exercise.querySelector('.card input');
  const steps = [...exercise.querySelectorAll('li[data-asked]')].map((step) => ({
    input: step.querySelector('input'), units: step.querySelector('select'), check: step.querySelector('button'),
    mark: step.querySelector('.mark'), options: [...step.querySelectorAll('.options :is(input, select)')],
  }));
  const spoken = exercise.querySelector('[role=status]');
  const faults = [];
  cases.forEach(({ card, texts, said }) => {
    number.value = card;
    number.dispatchEvent(new Event('change', { bubbles: true }));
    let last = -1;
    texts.forEach((text, i) => {
      if (text !== null) {
        // Every other number is typed alone, and its unit chosen in the list, where that has it.
        const { input, units, check, options } = steps[i];
        if (options.length) {
          options.forEach((one, at) => {
            if (one.matches('select')) {
              one.value = text[at] === '-' ? '' : text[at];
            } else {
              one.checked = one.value === text;
            }
          });
          check.click();
          last = i;
          return;
        }
        const option = [...(units?.options ?? [])].find((one) => one.value && text.endsWith(` ${one.value}`));
        input.value = option && card % 2 ? text.slice(0, -option.value.length - 1) : text;
        if (option && card % 2) {
          units.value = option.value;
        }
        check.click();
        last = i;
      }
    });
    const now = steps.map(({ mark }) => (mark.hidden ? '' : [...mark.children]
      .filter((one) => (mark.matches('.unclear') ? one.matches('.unread') : !one.hidden))
      .map((one) => one.textContent).join('\n')));
    now.forEach((one, i) => {
      if (one !== said[i]) {
        faults.push(`card ${card}, ${JSON.stringify(texts)}, step ${i + 1}: the page says "${one}", and the program "${said[i]}"`);
      }
    });
    if (last >= 0 && spoken.textContent !== said[last].replaceAll('\n', ' ')) {
      faults.push(`card ${card}, ${JSON.stringify(texts)}: spoken is "${spoken.textContent}"`);
    }
  });
  return faults;
}

// open opens a page in which nothing can be kept: its exercises work all the same, and faster.
async function open(path) {
  const page = await browser.newPage();
  await page.addInitScript(() => { Storage.prototype.setItem = () => { throw new Error('full'); }; });
  await page.goto(`${origin}/${path}`);
  await ready(page);
  await page.waitForFunction(() => [...document.querySelectorAll('.exercise .card input')].every((one) => !one.readOnly));
  return page;
}

let answers = 0;
const verdicts = new Map();
describe('an answer is marked alike', () => {
  for (const { path, exercises } of pages) {
    let page; // opened once for all exercises in it
    for (const exercise of exercises) {
      test(`${path}, ${exercise.name}`, async () => {
        page ??= await open(path);
        const faults = await page.evaluate(answer, exercise);
        exercise.cases.forEach(({ texts, said }) => texts.forEach((text, i) => {
          answers += text === null ? 0 : 1;
          verdicts.set(said[i].slice(0, 12), (verdicts.get(said[i].slice(0, 12)) ?? 0) + (text === null ? 0 : 1));
        }));
        assert.equal(faults.length, 0, `${faults.length} of ${exercise.cases.length}: ${faults.slice(0, 6).join('; ')}`);
      });
    }
  }
  test('there were enough answers, in two languages', (t) => {
    assert.ok(answers >= 20_000, `${answers} answers`);
    assert.ok(pages.some(({ path }) => path.startsWith('es/')) && pages.some(({ path }) => !path.startsWith('es/')));
    t.diagnostic(`marks ${answers} answers, ${verdicts.size} beginnings of sentences`);
  });
});
