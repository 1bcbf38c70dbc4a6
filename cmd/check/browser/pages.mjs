// Every page of the site, at two widths, in light and dark: what a checker and a reader with a keyboard would find.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { inspect, undecided } from './axe.mjs';
import { walk } from './focus.mjs';
import { clipped, moving, sideways, small, spaceText } from './look.mjs';
import { settings } from './settings.mjs';
import { pages } from './site.mjs';
import { opposite, regulars, screens, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);

// Every screen for one page of each form. The guides and the pages of the manual are many, so the others are looked at on
// two screens that share neither width nor scheme, and those of the manual take turns at the screen that is walked with
// the Tab key. The calculations and the messages are set from one pattern each: they take turns at the two screens.
const patterns = ['calculations/', 'manual/messages-'];
const folders = ['guides/', 'manual/'];

function planOf(path) {
  const start = [...patterns, ...folders].find((one) => path.startsWith(one) && path !== one);
  const at = start ? pages.filter((one) => one.startsWith(start) && one !== start).indexOf(path) : 0;
  if (at === 0) {
    return screens.map((screen) => ({ ...screen, walked: true }));
  }
  const turn = opposite[at % opposite.length];
  if (patterns.includes(start)) {
    return [{ ...turn, walked: true }];
  }
  return opposite.map((screen) => ({ ...screen, walked: start === 'guides/' || screen === turn }));
}

// Three at a time: a page waits for the browser, which shows each stop of the Tab key.
describe('pages', { concurrency: 3 }, () => {
  for (const path of pages) {
    for (const screen of planOf(path)) {
      test(`/${path} at ${screen.width} px, ${screen.scheme}`, async (t) => {
        const { page, complaints, close } = await visit(`${origin}/${path}`, screen);
        t.after(close);
        await t.test('axe finds nothing', async () => assert.deepEqual(await inspect(page), []));
        await t.test('no sideways scroll', async () => assert.deepEqual(await page.evaluate(sideways), []));
        await t.test('nothing is cut off', async () => assert.deepEqual(await page.evaluate(clipped), []));
        await t.test('controls are large enough', async () => assert.deepEqual(await page.evaluate(small), []));
        if (screen.walked) {
          await t.test('each stop of the Tab key is seen', async () => {
            const { stops, faults } = await walk(page);
            assert.deepEqual(faults, []);
            assert.ok(stops > 0, 'the Tab key reaches nothing');
          });
        }
        await t.test('wider text spacing cuts nothing off', async () => {
          await page.evaluate(spaceText);
          assert.deepEqual([...await page.evaluate(sideways), ...await page.evaluate(clipped)], []);
        });
        await t.test('with less motion nothing moves', async () => {
          await page.emulateMedia({ reducedMotion: 'reduce' });
          assert.deepEqual(await page.evaluate(moving), []);
        });
        await t.test('no message, no violation, no request away', () => assert.deepEqual(complaints, []));
      });
    }
  }
});

test('what axe leaves to people', (t) => {
  const rules = [...undecided].map(([rule, places]) => `${rule} in ${places} places`);
  t.diagnostic(`axe could not decide: ${rules.join(', ') || 'nothing'}`);
});
