// A leader's hour as one walk, by taps on a phone: two exercises on the wall, the answers of thirty people put into the
// tally, and the slips of the room read off. What the people answer is taken from the printed key.
import assert from 'node:assert/strict';
import { unfold } from './visit.mjs';

// The answers that the room gives to the first exercise: each card the right one, but for these.
const people = 30;
const slipOn = (card) => (card % 4 === 3 ? 0 : card % 9 === 5 ? 1 : null);

// lead walks through the hour and counts taps; key is of the first exercise: a row for each card, and what each slip is.
export async function lead(browser, address, key) {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 780 } });
  const page = await context.newPage();
  await unfold(page);
  const taps = { wall: 0, tally: 0 };
  const tap = async (part, place) => {
    await page.tap(place);
    taps[part]++;
  };
  await page.goto(address);
  await page.waitForFunction(() => document.querySelector('.heard input')?.readOnly === false);
  await tap('wall', '.show');
  for (const exercise of [0, 1]) {
    const slide = page.locator('.slide').nth(exercise);
    while (await slide.locator(':is(.work li:not([hidden]), .found).later').count() > 0) {
      await tap('wall', '.bar .next');
    }
    assert.equal(await slide.isVisible(), true, `exercise ${exercise + 1} is on the wall`);
    assert.ok(await slide.locator('.found dd').first().isVisible(), 'its answer is shown');
    await tap('wall', exercise === 0 ? '.bar .next' : '.bar .close');
  }
  await tap('tally', '.heard:not([hidden]) input');
  const heard = {};
  for (let card = 1; card <= people; card++) {
    assert.equal(await page.inputValue('#tally-card'), String(card));
    const slip = slipOn(card);
    const answer = slip === null ? key.rows[card - 1].answer : key.rows[card - 1].slips[slip];
    const said = slip === null ? 'Right' : key.slips[slip];
    heard[said] = (heard[said] ?? 0) + 1;
    for (const digit of answer) {
      await page.keyboard.type(digit); // a tap on the keys of the phone
      taps.tally++;
    }
    await tap('tally', '.heard:not([hidden]) button');
  }
  const counts = await page.locator('.counts').innerText();
  await context.close();
  return { taps, heard, counts, people };
}
