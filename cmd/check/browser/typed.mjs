// What people type into a field, read by the page as by the Go reader: one list, calc/unit/testdata/typed.txt, which
// calc/prose reads too. And a range over which a divisor may be 0 is refused as by the program, which names
// the givens as well.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { readGuide } from './content.mjs';
import { work } from './native.mjs';
import { field, put, restore, state } from './reader.mjs';
import { settings } from './settings.mjs';
import { ready, start, unfold } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const list = readFileSync('calc/unit/testdata/typed.txt', 'utf8').split('\n')
  .filter((line) => line && !line.startsWith('#')).map((line) => line.split(' | '));

const places = {
  length: { path: 'guides/roots/', sheet: 'spacing', given: 'tree' },
  money: { path: 'guides/materials/', sheet: 'tank', given: 'price' },
};

// open opens a page as it would be in a language; the demo guides are in English alone.
async function open(t, path, language) {
  const page = await browser.newPage();
  t.after(() => page.close());
  await unfold(page);
  await page.route('**/page.en.*.js', async (route) => {
    const answer = await route.fetch();
    const body = (await answer.text()).replace('"decimal":"."', `"decimal":"${language === 'es' ? ',' : '.'}"`)
      .replace(words('en'), words(language));
    return route.fulfill({ response: answer, body });
  });
  await page.goto(`${origin}/${path}`);
  await ready(page);
  return page;
}

// shown is what follows from a text in a field: the answers and the work of the worksheet, or the sentence at the field.
async function shown(page, { sheet, given }, text) {
  await restore(page, sheet);
  const input = field(page, sheet, given);
  await put(input, text);
  const { answers, work: lines } = (await state(page)).worksheets[sheet];
  const fault = await input.evaluate((element) => document.getElementById(`${element.id}-fault`))
    ? await page.locator(`[id="${sheet}-${given}-fault"]`).filter({ visible: true }).allTextContents() : [];
  return { refused: await input.getAttribute('aria-invalid') === 'true', fault: fault[0], numbers: [answers, lines] };
}

describe('what people type', () => {
  for (const [kind, place] of Object.entries(places)) {
    for (const language of ['en', 'es']) {
      test(`${kind}, ${language}`, async (t) => {
        const page = await open(t, place.path, language);
        for (const [, , text, means] of list.filter(([l, k]) => l === language && k === kind)) {
          const got = await shown(page, place, text);
          assert.equal(got.refused, means === '-', `${text}: ${got.fault ?? 'is read'}`);
          if (means === '-') {
            assert.ok(got.fault?.trim(), `${text} is refused without a sentence`);
          } else {
            assert.deepEqual(got.numbers, (await shown(page, place, means)).numbers, `${text} means ${means}`);
          }
        }
      });
    }
  }
  test('the list is not empty', () => assert.ok(list.length > 50));
});

// The page's own words are of its language; the sentence is made of them.
const words = (language) => readFileSync(`calc/words/${language}/general.txt`, 'utf8')
  .match(/^no-answer: (.*(?:\n {2}.*)*)/m)[1].replaceAll(/\s+/g, ' ');

for (const language of ['en', 'es']) {
  test(`a range with a divisor that may be 0, ${language}`, async (t) => {
    const path = 'guides/roots/';
    const { worksheets } = readGuide(path);
    const page = await open(t, path, language);
    let refused = 0;
    for (const share of [
      { offset: '0 to 2 ft' }, { offset: '0 to 2 ft', wetted: '0.5 to 60 ft' }, { wetted: '0.5 to 60 ft' },
      { wetted: '7 ft', offset: '0 ft' },
    ]) {
      for (const [given, text] of Object.entries(share)) {
        await put(field(page, 'share', given), text);
      }
      const { error } = work(worksheets, { share }).get('share');
      assert.ok(!error || error.startsWith(words('en')), error);
      const now = (await state(page)).worksheets.share;
      const said = await page.locator('#worksheet-share .waiting').filter({ visible: true }).allTextContents();
      const expected = error ? [words(language).replace(/:$/, '.')] : [];
      assert.deepEqual([...now.refusals, ...said], expected, JSON.stringify(share));
      assert.equal(now.void, Boolean(error));
      refused += said.length;
      await restore(page, 'share');
    }
    assert.ok(refused > 0, 'nothing was refused');
  });
}
