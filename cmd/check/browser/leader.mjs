// The leader's page, as the one who leads an hour uses it: the view for the wall moves by keys and taps, and the tally
// counts the answers that are heard, by the slip that each may come from.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const address = `${origin}/workshops/report/leader/`;

// open opens the page and waits until what the wall needs is there.
async function open(t, how) {
  const visited = await visit(browser, address, how);
  t.after(visited.close);
  await visited.page.waitForFunction(() => document.querySelector('#tally-card') && !document.querySelector('.heard input').readOnly);
  return visited;
}

const shown = (page) => page.evaluate(() => ({
  slides: [...document.querySelectorAll('.slide')].flatMap((slide, i) => (slide.hidden ? [] : [i])),
  lines: document.querySelectorAll('.slide:not([hidden]) :is(.work li, .found):not(.later, [hidden])').length,
}));

// The slip of a test in NO3 taken for NO3-N, in the words of the calculation.
const slip = 'That is the nitrate itself. Nitrogen is 0.2259 of it.';

describe('the wall', () => {
  test('keys go through the lines of one exercise, and then to the next', async (t) => {
    const { page, complaints } = await open(t);
    const all = await page.locator('.slide').count();
    assert.equal(all, 6);
    assert.equal((await shown(page)).slides.length, all, 'before it is opened, all are there');
    await page.click('.show');
    assert.deepEqual(await shown(page), { slides: [0], lines: 0 });
    await page.keyboard.press('ArrowRight');
    assert.deepEqual(await shown(page), { slides: [0], lines: 1 });
    await page.locator('.slide:not([hidden]) h3').first().evaluate(() => document.activeElement.blur());
    await page.keyboard.press(' ');
    assert.deepEqual(await shown(page), { slides: [0], lines: 2 }, 'one line and the answer');
    await page.keyboard.press('PageDown');
    assert.deepEqual(await shown(page), { slides: [1], lines: 0 });
    await page.keyboard.press('ArrowLeft');
    assert.deepEqual(await shown(page), { slides: [0], lines: 2 });
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    assert.deepEqual(await shown(page), { slides: [2], lines: 0 });
    await page.keyboard.press('ArrowUp');
    assert.deepEqual(await shown(page), { slides: [1], lines: 0 });
    await page.keyboard.press('Escape');
    assert.equal((await shown(page)).slides.length, all);
    assert.deepEqual(complaints, []);
  });

  test('taps do, too', async (t) => {
    const { page } = await open(t, { width: 390, height: 780 });
    await page.click('.show');
    await page.click('.slide:not([hidden]) .story');
    assert.deepEqual(await shown(page), { slides: [0], lines: 1 });
    await page.click('.bar .back');
    assert.deepEqual(await shown(page), { slides: [0], lines: 0 });
    await page.click('.bar .next');
    assert.deepEqual(await shown(page), { slides: [0], lines: 1 });
  });

  test('a card has the numbers that the page of the workshop has for it', async (t) => {
    const { page } = await open(t);
    await page.click('.show');
    await page.fill('#wall-card', '7');
    await page.keyboard.press('Tab');
    const story = await page.locator('.slide:not([hidden]) .story').innerText();
    const answer = await page.locator('.slide:not([hidden]) .found dd').textContent();
    const other = await visit(browser, `${origin}/workshops/report/#card-line-7`);
    t.after(other.close);
    await other.page.waitForFunction(() => document.querySelector('#exercise-line .card input').value === '7');
    assert.equal(story, await other.page.locator('#exercise-line .story').innerText());
    assert.equal(answer, await other.page.locator('#exercise-line .solution dd').first().evaluate((dd) => dd.textContent));
  });

  test('the clock counts the minutes of the exercises', async (t) => {
    const { page } = await open(t);
    await page.clock.install({ time: new Date('2026-11-29T14:00:00') });
    await page.reload();
    await page.waitForFunction(() => !document.querySelector('.heard input').readOnly);
    await page.click('.show');
    await page.click('.bar .start');
    await page.clock.runFor('05:10');
    assert.equal(await page.locator('.elapsed').innerText(), 'exercises: minute 5 of 47, 2 left for this one');
    await page.clock.runFor('04:00');
    assert.equal(await page.locator('.elapsed').innerText(), 'exercises: minute 9 of 47, 2 over');
    await page.keyboard.press('ArrowDown');
    assert.equal(await page.locator('.elapsed').innerText(), 'exercises: minute 9 of 47, 6 left for this one');
  });

  test('without a script the exercises are there one after the other', async (t) => {
    const { page, close } = await visit(browser, address, { script: false });
    t.after(close);
    assert.equal(await page.locator('.slide:visible').count(), 6);
    assert.equal(await page.locator('.slide .found:visible').count(), 6);
  });
});

// given is the number of the report on the card at hand, and right the answer that the wall shows for it.
const given = async (page) => parseFloat(await page.locator('.heard:not([hidden]) [data-picked="0"]').innerText());
const counts = (page) => page.locator('.counts').innerText();

async function say(page, text) {
  await page.keyboard.type(String(text));
  await page.keyboard.press('Enter');
}

describe('the tally', () => {
  test('thirty answers are thirty numbers and thirty keys', async (t) => {
    const { page, complaints } = await open(t);
    await page.focus('.heard:not([hidden]) input');
    for (let card = 1; card <= 30; card++) {
      assert.equal(await page.inputValue('#tally-card'), String(card));
      const reported = await given(page);
      const right = (reported * 14.007 / 62.004).toPrecision(3); // the weights of IUPAC
      await say(page, card % 3 === 0 ? reported : card % 10 === 1 ? 999 : right);
    }
    const said = await counts(page);
    assert.match(said, /As nitrogen, NO3-N: 18 of 30 right/);
    assert.match(said, new RegExp(`10\\s+${slip.replaceAll('.', '\\.')}`));
    assert.match(said, /18\s+Right\s/);
    assert.match(said, /2\s+Not right, and from no slip that is known/);
    assert.deepEqual(complaints, []);
  });

  test('a reload keeps it, the last answer can be taken back, and a tally that was cleared can be, too', async (t) => {
    const { page } = await open(t);
    await page.focus('.heard:not([hidden]) input');
    await say(page, await given(page));
    assert.equal(await page.locator('.last').textContent(), `Card 1: ${slip}`);
    await say(page, await given(page));
    await say(page, 'abc');
    assert.match(await counts(page), /: 0 of 2 right/);
    await page.reload();
    await page.waitForFunction(() => !document.querySelector('.heard input').readOnly);
    assert.match(await counts(page), /: 0 of 2 right/);
    await page.click('.tally .undo');
    assert.match(await counts(page), /: 0 of 1 right/);
    await page.click('.tally .clear');
    assert.equal(await counts(page), '');
    assert.equal(await page.evaluate(() => sessionStorage.getItem(`${location.pathname}#tally`)), '[]');
    await page.click('.tally .last button');
    assert.match(await counts(page), /: 0 of 1 right/);
  });

  test('a wrong first part costs that part alone', async (t) => {
    const { page } = await open(t);
    await page.selectOption('#tally-exercise', { index: 3 });
    const [tree, row, rate] = (await page.locator('.heard:not([hidden]) [data-picked]').allInnerTexts()).map(parseFloat);
    await page.focus('.heard:not([hidden]) input');
    const trees = 110; // more than any card has
    assert.ok(43560 / tree / row < trees - 1, 'the card has fewer trees');
    await say(page, trees);
    await say(page, (trees * rate / 16).toPrecision(3));
    const said = await counts(page);
    assert.match(said, /an acre: 0 of 1 right/);
    assert.match(said, /1\s+This is worked correctly from an earlier answer/);
  });
});

describe('a choice in the room', () => {
  test('the wall shows its options and the right one, and the tally counts it', async (t) => {
    const { page } = await open(t);
    const slide = page.locator('.slide').last();
    const options = await slide.locator('.asks .option').allTextContents();
    const [pounds, right] = await slide.locator('.found .key').allTextContents();
    assert.ok(options.length === 2 && options.includes(right), `${right} of ${options}`);
    await page.selectOption('#tally-exercise', { index: 5 });
    await page.focus('.heard:not([hidden]) input');
    await say(page, pounds);
    await page.keyboard.press('Space');
    for (let at = 0; at < options.indexOf(right); at++) {
      await page.keyboard.press('ArrowDown');
    }
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    assert.equal(await page.locator('.last').textContent(), `Card 1: Right: ${right}.`);
    assert.match(await counts(page), /enough for an acre\?: 1 of 1 right/);
    assert.equal(await page.inputValue('#tally-card'), '2');
    assert.equal(await page.locator('.heard:not([hidden]) .options input:checked').count(), 0);
  });
});

describe('what participants have', () => {
  test('no word of the notes, and no way to them', () => {
    const page = readFileSync(join(settings.site, 'workshops/report/index.html'), 'utf8');
    const led = readFileSync(join(settings.site, 'workshops/report/leader/index.html'), 'utf8');
    assert.match(led, /<meta name="robots" content="noindex">/);
    assert.match(led, /Do not ask whose it was/);
    assert.doesNotMatch(page, /Do not ask whose it was|leader\//);
  });
});
