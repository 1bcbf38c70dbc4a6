// A learner's hands in a lesson: keys, or touches of a screen, and what the page says aloud.
import assert from 'node:assert/strict';

// listen has every page of a context keep what its live regions say, a list of texts each time that one changes.
export async function listen(context) {
  await context.addInitScript(() => {
    window.heard = [];
    document.addEventListener('DOMContentLoaded', () => {
      document.querySelectorAll('[role=status], [aria-live]').forEach((region) => new MutationObserver(() => {
        window.heard.push(region.textContent.trim());
      }).observe(region, { childList: true, characterData: true, subtree: true }));
    });
  });
}

// heard gives what was said since the last time, without what was emptied.
const heard = async (page) => (await page.evaluate(() => window.heard.splice(0))).filter(Boolean);

// mounted waits until the exercises of a page are live.
export async function mounted(page) {
  await page.waitForFunction(() => [...document.querySelectorAll('.exercise .card input')].every((one) => !one.readOnly));
  await heard(page);
}

// pointer gives hands that fill fields and click at once, where it is not the question how.
export const pointer = (page) => ({
  press: (selector) => page.click(selector),
  type: (selector, text) => page.fill(selector, text),
  tick: (selector) => page.check(selector),
  pick: (selector, place) => page.selectOption(selector, place),
});

// keyboard gives hands that have keys alone: they come to what is to be pressed with the Tab key, forward or back.
export function keyboard(page) {
  const reach = async (selector) => {
    for (let stops = 0; stops < 300; stops++) {
      const way = await page.evaluate((wanted) => {
        const at = document.activeElement;
        const before = Node.DOCUMENT_POSITION_PRECEDING;
        return at.matches(wanted) ? 0 : at.compareDocumentPosition(document.querySelector(wanted)) & before ? -1 : 1;
      }, selector);
      if (!way) {
        return;
      }
      await page.keyboard.press(way < 0 ? 'Shift+Tab' : 'Tab');
    }
    throw new Error(`the Tab key does not come to ${selector}`);
  };
  return {
    async press(selector) {
      await reach(selector);
      await page.keyboard.press('Enter');
    },
    async type(selector, text) {
      await reach(selector);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
    },
    // The Tab key comes to one of the buttons of a choice, and the arrow keys go from one to the next.
    async tick(selector) {
      const name = await page.getAttribute(selector, 'name');
      await reach(`[name="${name}"]`);
      await page.keyboard.press('Space');
      while (!await page.isChecked(selector)) {
        await page.keyboard.press('ArrowDown');
      }
    },
    async pick(selector, place) {
      await reach(selector);
      await page.keyboard.type(place);
    },
  };
}

// touch gives hands that have a screen alone: each press is a finger that comes down and goes up.
export async function touch(page) {
  const screen = await page.context().newCDPSession(page);
  const press = async (selector) => {
    const target = page.locator(selector).first();
    await target.scrollIntoViewIfNeeded();
    const { x, y, width, height } = await target.boundingBox();
    const at = { x: x + width / 2, y: y + height / 2 };
    await screen.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at] });
    await screen.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
  return {
    press,
    async type(selector, text) {
      await press(selector);
      await page.waitForFunction((wanted) => document.activeElement.matches(wanted), selector);
      await page.evaluate(() => document.activeElement.select());
      await screen.send('Input.insertText', { text }); // as a keyboard on the screen does
    },
    tick: press,
    // The list itself is the device's own, so what a finger chooses in it is set.
    pick: (selector, place) => page.selectOption(selector, place),
  };
}

// marks is how many answers were marked by hands, each said once.
export let marks = 0;

// worker gives the exercise of a lesson in somebody's hands. Each mark must be said in one sentence or a few, once.
export function worker(page, hands, name) {
  const own = `#exercise-${name}`;
  const asked = `${own} .asks > li:not(.step)`;
  return {
    own,
    // answer types an answer to the question at a place, from 1 on, or chooses what it says, has it marked, and gives
    // what is said.
    async answer(place, text) {
      const part = `${own} .asks > li[data-asked="${await placeOf(page, asked, place)}"]`;
      const options = await page.$$eval(`${part} .option`, (all) => all.map((option) => option.textContent));
      const control = (at) => `${part} .options li:nth-child(${at + 1}) :is(input, select)`;
      if (!options.length) {
        await hands.type(`${part} input`, text);
      } else if (options.includes(text)) {
        await hands.tick(control(options.indexOf(text)));
      } else {
        for (const [at, option] of options.entries()) {
          await hands.pick(control(at), `${text.split('; ').indexOf(option) + 1}`);
        }
      }
      await heard(page);
      await hands.press(`${part} button`);
      await page.waitForFunction(() => window.heard.some(Boolean));
      const said = await heard(page);
      assert.equal(said.length, 1, `one mark is said as ${JSON.stringify(said)}`);
      marks++;
      return said[0];
    },
    another: () => hands.press(`${own} .card button`),
    card: () => page.inputValue(`${own} .card input`),
    // keys are the right answers of the card, as the page has them: "87.1 trees/ac".
    keys: () => page.$$eval(`${own} .solution dl .key`, (all) => all.map((key) => key.textContent)),
    givens: () => page.$$eval(`${own} .story [data-picked]`, (all) => all.map((given) => parseFloat(given.textContent))),
    told: () => page.$$eval(`${own} .told p`, (all) => all.map((one) => one.textContent)),
  };
}

const placeOf = (page, asked, place) => page.$$eval(asked, (all, at) => all[at - 1].getAttribute('data-asked'), place);

// workRight has every question of the exercise on the card at hand right at the first try.
export async function workRight(exercise) {
  for (const [i, key] of (await exercise.keys()).entries()) {
    assert.match(await exercise.answer(i + 1, key), /^Right/);
  }
}
