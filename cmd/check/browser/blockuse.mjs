// How people use the page about one block: one block after another, on a small screen, with little known; and what hangs
// on a wall afterwards.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

// ordinaryUse tries the site at origin; open opens the page about one block, and how has the few ways to deal with it.
export function ordinaryUse(origin, open, { said, kept }) {
  const keep = async (page, name) => {
    await page.fill('#block-name', name);
    await page.click('.keep');
  };
  const typeInto = async (page, id, text) => {
    await page.fill(`#${id}`, text);
    await page.locator(`#${id}`).blur();
  };

  describe('a block in ordinary use', () => {
    test('a second block that is typed over the first leaves the first as it was, or both have the numbers', async (t) => {
      const { page } = await open(t);
      await typeInto(page, 'soil-nitrate', '21');
      await keep(page, 'North');
      assert.match(await page.innerText('.known > .hint'), /block North\. What you change is kept in it/);
      await typeInto(page, 'soil-nitrate', '5');
      await kept(page, '5');
      await keep(page, 'South');
      assert.match(await said(page), /South is kept.*North has the numbers again/);
      const nitrateOf = async (name) => {
        await page.selectOption('#block-chosen', name);
        return page.inputValue('#soil-nitrate');
      };
      assert.deepEqual([await nitrateOf('North'), await nitrateOf('South')], ['21', '5']);
      await typeInto(page, 'soil-nitrate', '7');
      await keep(page, 'West');
      await page.click('.blocks [role=status] button');
      assert.deepEqual([await nitrateOf('North'), await nitrateOf('South'), await nitrateOf('West')], ['21', '7', '7']);
      await page.click('.known > .hint button');
      assert.deepEqual([await page.inputValue('#soil-nitrate'), await page.inputValue('#block-name')], ['9', '']);
      assert.equal(await nitrateOf('West'), '7');
    });

    test('what still is of the example is named, and only what counts', async (t) => {
      const { page } = await open(t);
      const line = page.locator('.sheet-name + p');
      assert.equal(await line.isVisible(), false);
      await typeInto(page, 'soil-nitrate', '21');
      await page.waitForSelector('.sheet-name + p:visible');
      assert.match(await line.textContent(), /Leaf year.*Hours that the water runs.*Material/);
      assert.doesNotMatch(await line.textContent(), /Nitrate, soil|Share of a feed/);
      await typeInto(page, 'emitters-known', '7');
      await typeInto(page, 'trees-count', '900');
      await page.waitForFunction(() => !/Row to row|Hours/.test(document.querySelector('.sheet-name + p').textContent));
    });

    test('older trees have not the root share of first leaf, unless it was typed', async (t) => {
      const { page } = await open(t);
      await typeInto(page, 'need-leaf', '3');
      assert.equal(await page.inputValue('#budget-reach'), '3 to 100');
      assert.match(await page.innerText('[data-fact=reach] .lacking'), /counted as 3 to 100 %/);
      await typeInto(page, 'need-leaf', '1');
      assert.equal(await page.inputValue('#budget-reach'), '0 to 10');
      assert.match(await page.innerText('[data-fact=reach] .lacking'), /counted as 0 to 10 %/);
      await typeInto(page, 'budget-reach', '12');
      await typeInto(page, 'need-leaf', '3');
      assert.equal(await page.inputValue('#budget-reach'), '12');
    });

    test('no number is cut in its field on a small telephone, also where a guide shows the block', async (t) => {
      const { page } = await open(t);
      await page.setViewportSize({ width: 320, height: 700 });
      const cut = () => page.$$eval('.field input', (inputs) => inputs.filter((input) => (
        input.clientWidth && input.type === 'text' && input.scrollWidth > input.clientWidth)).map(({ id, value }) => `${id}: ${value}`));
      for (const button of await page.$$('.known .field > button')) {
        if (await button.isVisible()) {
          await button.click();
        }
      }
      assert.equal(await page.inputValue('#well-nitrate'), '0 to 10');
      assert.deepEqual(await cut(), []);
      await keep(page, 'North');
      for (const guide of ['guides/plan/', 'guides/season/', 'es/guides/plan-completo/']) {
        await page.goto(`${origin}/${guide}`);
        await page.waitForFunction(() => /North/.test(document.getElementById('state').textContent));
        assert.deepEqual(await cut(), [], guide);
      }
    });

    test('the sheet says which material its pounds are of, and its code lies on no line', async (t) => {
      const { page } = await open(t);
      await page.selectOption('#feeds-material', { label: 'Urea, 46-0-0' });
      assert.match(await page.innerText('.feeds > p'), /Material: Urea, 46-0-0/);
      await page.waitForSelector('body.paper');
      await page.emulateMedia({ media: 'print' });
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const [code, room] = await page.$$eval('.room svg, .room', (parts) => parts.map((part) => part.getBoundingClientRect().toJSON())
        .sort((a, b) => a.width - b.width));
      assert.ok(code.top > room.top && code.bottom < room.bottom && code.right < room.right, JSON.stringify([code, room]));
      await page.emulateMedia({ media: 'screen' });
      await typeInto(page, 'well-nitrate', '30');
      assert.equal(await page.locator('.feeds').isVisible(), false); // nothing is left to put on
    });

    test('a well that is not tested is no well over the limit, and a number or a range that reaches it is', async (t) => {
      const { page, faults } = await open(t);
      const warned = () => page.$$eval('.cautions .signal', (all) => all.filter((one) => one.checkVisibility()).map((one) => one.innerText)
        .filter((text) => /drinking|drink /.test(text)));
      assert.deepEqual(await warned(), []);
      for (const [text, unit, tested] of [[null, 0, false], ['10', 0, true], ['0 to 10.1', 0, true], ['0 to 200', 0, true], ['', 0, false],
        ['<11', 0, true], ['0 to 45', 1, true], ['0 to 10', 0, false], ['4 to 12', 0, true]]) {
        if (text === null) {
          await page.click('[data-fact=well-nitrate] > button');
        } else {
          await page.selectOption('[data-unit-for=well-nitrate]', { index: unit });
          await typeInto(page, 'well-nitrate', text);
        }
        const [one, ...more] = await warned();
        assert.deepEqual(more, [], text);
        assert.match(one, tested ? /WARNING[^]*at or above the limit/ : /CAUTION[^]*well is not tested[^]*nitrate and bacteria[^]*county/, text);
        assert.equal(/limit/.test(one), tested, text);
      }
      await typeInto(page, 'well-nitrate', '2');
      assert.deepEqual(await warned(), []);
      await page.click('[data-fact=well-nitrate] > button');
      await keep(page, 'North');
      await kept(page);
      await page.reload();
      await page.waitForFunction(() => document.getElementById('block-chosen').value === 'North');
      assert.match((await warned()).join(), /^[^,]*CAUTION[^]*not tested/);
      await page.goto(`${origin}/es/bloque/`);
      await page.waitForFunction(() => document.getElementById('block-chosen').value === 'North');
      assert.match(await page.innerText('.cautions'), /pozo no se ha analizado[^]*nitrato y las bacterias/);
      assert.doesNotMatch(await page.innerText('.cautions'), /límite/);
      assert.deepEqual(faults, []);
    });

    test('the first line of the page follows the block that is shown', async (t) => {
      const { page } = await open(t);
      const first = () => page.textContent('#state');
      await typeInto(page, 'soil-nitrate', '21');
      await page.reload();
      await page.waitForFunction(() => /numbers are back/.test(document.getElementById('state').textContent));
      await page.waitForSelector('.blocks:not([hidden])');
      await keep(page, 'North');
      assert.equal(await first(), 'Block North is kept on this device.');
      await kept(page);
      await page.reload();
      await page.waitForFunction(() => /Block North/.test(document.getElementById('state').textContent));
      await page.click('.known > .hint button');
      assert.equal(await first(), 'This is the example.');
      await page.selectOption('#block-chosen', 'North');
      assert.equal(await first(), 'Block North is kept on this device.');
      await page.fill('#block-name', 'South');
      await page.click('.rename');
      assert.equal(await first(), 'Block South is kept on this device.');
      await page.click('.remove');
      assert.equal(await first(), 'Block South is removed.');
      await page.click('.blocks [role=status] button');
      assert.equal(await first(), 'Block South is kept on this device.');
    });

    test('each guide is linked from one answer', async (t) => {
      for (const way of ['block/', 'es/bloque/']) {
        const { page } = await open(t, null, null, way);
        const ways = await page.$$eval('.plan a.why', (links) => links.map((link) => link.href));
        assert.ok(ways.length > 3, way);
        assert.equal(new Set(ways).size, ways.length, `${way}: ${ways}`);
      }
    });

    test('on paper what is worked stands in the place of an empty field', async (t) => {
      const { page } = await open(t);
      const told = '[data-fact=well-water] .instead';
      const rate = '[data-fact=rate] .instead';
      const worked = await page.textContent(`${told} b`);
      await typeInto(page, 'need-leaf', '4');
      await page.emulateMedia({ media: 'print' });
      assert.match(worked, /\d in$/);
      assert.equal(await page.innerText(told), worked);
      assert.match(await page.innerText(rate), /^[\d.]+ oz N\/tree fed$/);
      assert.equal(await page.locator('[data-fact=well-water] .entry').isVisible(), false);
      await page.emulateMedia({ media: 'screen' });
      await typeInto(page, 'emitters-known', '6');
      await page.emulateMedia({ media: 'print' });
      assert.equal(await page.locator(told).isVisible(), false);
      assert.equal(await page.locator('[data-fact=well-water] .entry').isVisible(), true);
    });

    test('whoever asks for a link is answered where the button is', async (t) => {
      const { page, context } = await open(t);
      await context.grantPermissions(['clipboard-read', 'clipboard-write']);
      await keep(page, 'Peña');
      await page.click('.blocks [data-link]');
      await page.waitForFunction(() => /link is copied/.test(document.querySelector('.blocks [role=status]').textContent));
    });
  });
}
