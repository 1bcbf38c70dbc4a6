// What can go wrong around the page about one block: links that lie, guides with numbers of an older edition or a dry
// material, a clock that is wrong, storage that goes, a script that comes in half.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { settings } from './settings.mjs';

// hardTimes tries the site at origin; open opens the page about one block, and how has the few ways to deal with it.
export function hardTimes(origin, open, { said, names, kept }) {
  const link = async (page) => {
    await page.click('.blocks [data-link]');
    return page.url();
  };
  const keep = async (page, name) => {
    await page.fill('#block-name', name);
    await page.click('.keep');
  };

  describe('a block in hard times', () => {
    test('a link carries the name of its block, as text and cut', async (t) => {
      const { page, context, faults } = await open(t);
      await page.fill('#soil-nitrate', '21');
      const long = 'x'.repeat(4000);
      for (const [name, shown, says] of [['North 12', 'North 12', /Block North 12/], ['Nopal & Ñ #3', 'Nopal & Ñ #3', /Ñ #3/],
        ['<img src=x onerror=alert(1)>', '<img src=x onerror=alert(1)>', /onerror/], [long, 'x'.repeat(50), /too long/],
        ['a\u202eb\u0000', 'ab', /Block ab/]]) {
        await page.evaluate((name) => { document.getElementById('block-name').value = name; }, name);
        const address = await link(page);
        const other = await context.newPage();
        await other.goto(address);
        await other.waitForFunction((shown) => document.getElementById('block-name').value === shown, shown);
        assert.match(await said(other), says);
        assert.equal(await other.inputValue('#soil-nitrate'), '21');
        assert.equal(await other.locator('.blocks img').count(), 0);
        assert.deepEqual(await names(other), []);
        await other.close();
      }
      assert.deepEqual(faults, []);
    });

    test('a link of another edition, with what there is not, or very long, shows the example or what fits', async (t) => {
      const { page, context, faults } = await open(t);
      await page.fill('#soil-nitrate', '21');
      const hash = new URL(await link(page)).hash;
      const other = await context.newPage();
      for (const [bad, nitrate, says] of [
        [hash.replace(/edition=\w+/, 'edition=zz'), '9', /another edition/],
        [`${hash}&no-such=1&spacing-tree=&__proto__=1`, '21', /do not fit/],
        [`${hash}&${'y'.repeat(100000)}=1`, '21', /do not fit/],
        [`${hash}&need-crop=Cactus&spacing-tree*=parsecs&spacing-tree=20`, '21', /do not fit/],
      ]) {
        await other.goto('about:blank');
        await other.goto(`${origin}/block/${bad}`);
        await other.waitForSelector('.blocks:not([hidden])');
        await other.waitForFunction((says) => new RegExp(says).test(document.getElementById('state').textContent), says.source);
        assert.equal(await other.inputValue('#soil-nitrate'), nitrate);
      }
      assert.deepEqual(faults, []);
    });

    test('a guide leaves out what an older edition worked, and says why a dry material is not injected', async (t) => {
      const { page, context, faults } = await open(t);
      await page.fill('#spacing-tree', '15');
      await keep(page, 'North');
      await kept(page);
      let guide;
      const state = async (way, says) => {
        guide = await context.newPage(); // a tab of its own keeps no numbers of the one before
        await guide.goto(`${origin}/${way}`);
        await guide.waitForFunction((says) => new RegExp(says).test(document.getElementById('state').textContent), says);
      };
      await state('guides/inject/', 'Shows block North.*This material is dry.*Material');
      assert.equal(await guide.textContent('.glance [data-show]'), '–');
      const choice = await guide.getAttribute('#state a[href^="#"]', 'href');
      await guide.selectOption(choice, { label: 'UAN-32, urea-ammonium nitrate solution' });
      assert.match(await guide.textContent('.glance [data-show]'), /^[\d.,]+$/);
      await state('guides/plan/', 'Shows block North');
      const worked = await guide.textContent('.glance [data-show]');
      await page.evaluate(() => {
        const all = JSON.parse(localStorage.getItem('blocks /'));
        all.blocks[0].edition = 'older';
        all.blocks[0].worked['trees-an-acre'] = ['9', 'trees/ac'];
        localStorage.setItem('blocks /', JSON.stringify(all));
      });
      await state('guides/plan/', 'older edition');
      assert.equal(await guide.inputValue('#need-trees'), '83.8');
      const again = await context.newPage();
      await again.goto(`${origin}/block/`);
      await again.waitForFunction(() => JSON.parse(localStorage.getItem('blocks /')).blocks[0].edition !== 'older');
      await again.close(); // it would write what it has over what comes next
      await state('guides/plan/', 'Shows block North');
      assert.equal(await guide.textContent('.glance [data-show]'), worked);
      await page.evaluate(() => { // the trees of the block were counted, which a guide that counts by spacing says
        const all = JSON.parse(localStorage.getItem('blocks /'));
        all.blocks[0].facts.counted = ['1500', 'trees'];
        localStorage.setItem('blocks /', JSON.stringify(all));
      });
      await state('guides/ounces/', 'Shows block North.*counts trees by the spacing. You counted');
      assert.equal(await guide.inputValue('#spacing-tree'), '15');
      await state('es/guides/raices/', 'cuenta los árboles por la distancia');
      await state('guides/soil/', 'example$');
      assert.deepEqual(faults, []);
    });

    test('the need follows the leaf and the crop, and water the emitters', async (t) => {
      const { page, faults } = await open(t);
      const sees = (text) => page.waitForFunction((text) => new RegExp(text).test(document.querySelector('.plan').innerText), text);
      await page.selectOption('#need-crop', { label: 'Pistachio (yield as CPC weight)' });
      await sees('first-leaf tree takes up');
      await page.click('[data-fact=rate] > button');
      assert.equal(await page.inputValue('#need-rate'), '3 to 4');
      await page.fill('#need-leaf', '8');
      await page.locator('#need-leaf').blur();
      assert.equal(await page.inputValue('#need-rate'), '');
      await sees('35\\.7 lb N/ac fed'); // 25 lb taken up, of which 70 % of a feed is
      await page.selectOption('#need-crop', { label: 'Pecan (yield in shell)' });
      await sees('pecan or hazelnut');
      await page.fill('#need-rate', '6');
      await sees('31\\.4 lb N/ac fed');
      const water = () => page.innerText('[data-fact=well-water] .instead');
      const before = await water();
      await page.locator('.known summary').last().click();
      await page.fill('#emitters-hours', '490');
      await page.waitForFunction((before) => document.querySelector('[data-fact=well-water] .instead').innerText !== before, before);
      assert.match(await water(), /3\.02 in/);
      await page.fill('#emitters-known', '6');
      assert.equal(await page.locator('[data-fact=well-water] .instead').isVisible(), false);
      assert.deepEqual(faults, []);
    });

    test('a clock that is wrong by years changes nothing', async (t) => {
      const plan = [];
      for (const year of [1970, 2026, 2099]) {
        const { page, faults } = await open(t, (year) => {
          const now = Date.UTC(year, 0, 1);
          const RealDate = Date;
          globalThis.Date = class extends RealDate {
            constructor(...given) { super(...(given.length ? given : [now])); }
            static now() { return now; }
          };
        }, year);
        await page.fill('#soil-nitrate', '20');
        await keep(page, 'North');
        await kept(page);
        plan.push(await page.innerText('.plan dl'));
        assert.deepEqual(faults, []);
      }
      assert.deepEqual(plan, [plan[0], plan[0], plan[0]]);
    });

    test('a block whose storage was cleared meanwhile is kept again', async (t) => {
      const { page, faults } = await open(t);
      await keep(page, 'North');
      await page.evaluate(() => localStorage.clear());
      await page.fill('#soil-nitrate', '33');
      await page.waitForFunction(() => /"33"/.test(localStorage.getItem('blocks /')));
      assert.equal(await page.evaluate(() => JSON.parse(localStorage.getItem('blocks /')).blocks[0].name), 'North');
      assert.deepEqual(faults, []);
    });

    test('with half of a script the page works without what that script does', async (t) => {
      const half = (name) => readFileSync(join(settings.site, 'assets', name), 'utf8').slice(0, 1500);
      for (const kind of ['blocks', 'after', 'ranges']) {
        const name = readdirSync(join(settings.site, 'assets')).find((one) => new RegExp(`^${kind}\\.(en\\.)?\\w+\\.js$`).test(one));
        const { page } = await open(t, null, null, 'block/');
        await page.route(`**/${name}`, (route) => route.fulfill({ contentType: 'text/javascript', body: half(name) }));
        await page.reload();
        await page.waitForSelector('body.live');
        await page.fill('#soil-nitrate', '20');
        await page.waitForFunction(() => /93\.3 lb N\/ac present/.test(document.querySelector('.plan').innerText));
        if (kind === 'blocks') {
          await page.waitForSelector('.lost:visible');
          assert.match(await page.innerText('.lost'), /blocks cannot be shown.*Load the page again/);
        }
        await page.unroute(`**/${name}`);
        await page.reload();
        await page.waitForSelector('.blocks:not([hidden])');
        assert.equal(await page.locator('.lost').isVisible(), false);
      }
    });
  });
}
