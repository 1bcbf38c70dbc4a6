// Every page of the site, at two widths, in light and dark: what a checker and a reader with a keyboard would find.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { drawn, inspect, inspectColours, undecided } from './axe.mjs';
import { rings, walk } from './focus.mjs';
import { clipped, moving, shifted, sideways, small, spaceText } from './look.mjs';
import { settings } from './settings.mjs';
import { pages } from './site.mjs';
import { narrow, opposite, regulars, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);

// Both schemes at both widths for the guides, and for one page of each other form. The pages of the manual are many, so
// the others are looked at on a narrow screen, where things are cut off and scroll, and take turns at the schemes. The
// lessons of a course take turns at two screens that share neither width nor scheme. So do the pages in Spanish, whose
// forms are those of their originals, and the calculations and the messages, which are set from one pattern each: of the
// calculations in Spanish every third is looked at. A page is loaded once for a width; also is the scheme that it is
// looked at in after that.
const inTurn = ['calculations/', 'es/calculations/', 'manual/messages-', 'manual/', 'courses/', 'es/courses/',
  'es/guides/'];

function planOf(path) {
  const start = inTurn.find((one) => path.startsWith(one));
  const at = start ? pages.filter((one) => one.startsWith(start)).indexOf(path) : 0;
  if (at === 0) {
    return opposite.map((screen) => ({ ...screen, also: screen.scheme === 'dark' ? 'light' : 'dark', walked: true }));
  }
  if (start === 'es/calculations/' && at % 3 > 0) {
    return [];
  }
  if (start === 'manual/') {
    return [{ ...narrow[at % narrow.length], walked: true }];
  }
  return [{ ...opposite[at % opposite.length], walked: true }];
}

// Three at a time: a page waits for the browser, which shows each stop of the Tab key.
describe('pages', { concurrency: 3 }, () => {
  for (const path of pages) {
    for (const screen of planOf(path)) {
      const schemes = [screen.scheme, screen.also].filter(Boolean).join(' and ');
      test(`/${path} at ${screen.width} px, ${schemes}`, async (t) => {
        const { page, complaints, close } = await visit(`${origin}/${path}`, screen);
        t.after(close);
        await look(t, page);
        if (screen.walked) {
          await t.test('each stop of the Tab key is seen', async () => {
            const { stops, faults } = await walk(page);
            assert.deepEqual(faults, []);
            assert.ok(stops > 0, 'the Tab key reaches nothing');
          });
        }
        if (screen.also) {
          await lookInColours(t, page, screen.also);
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

async function look(t, page) {
  await t.test('axe finds nothing', async () => assert.deepEqual(await inspect(page), []));
  await t.test('no sideways scroll', async () => assert.deepEqual(await page.evaluate(sideways), []));
  await t.test('nothing is cut off', async () => assert.deepEqual(await page.evaluate(clipped), []));
  await t.test('controls are large enough', async () => assert.deepEqual(await page.evaluate(small), []));
}

// The other scheme may change colours and nothing else. While that holds, what was found of places, sizes and names is
// true of it as well, and only its colours are left to look at.
async function lookInColours(t, page, scheme) {
  await page.evaluate(() => { document.activeElement?.blur(); });
  await page.evaluate(shifted);
  await page.emulateMedia({ colorScheme: scheme });
  await t.test(`${scheme} moves and hides nothing`, async () => assert.deepEqual(await page.evaluate(shifted), []));
  await t.test(`axe finds nothing in the colours of ${scheme}`, async () => (
    assert.deepEqual(await inspectColours(page), [])));
  await t.test(`the ring of each stop is seen in ${scheme}`, async () => assert.deepEqual(await rings(page), []));
}

// Its colour is one that no text had before.
test('a faint text is found after all others were looked at', async (t) => {
  const { page, close } = await visit(`${origin}/${pages.find((one) => one.startsWith('guides/'))}`);
  t.after(close);
  assert.deepEqual(await inspectColours(page), []);
  await page.evaluate(() => { document.querySelector('main p').style.color = '#999'; });
  assert.match((await inspectColours(page)).join(), /^color-contrast: /);
});

test('what axe leaves to people', (t) => {
  t.diagnostic(`axe looked at the colours of ${drawn.looked} texts; ${drawn.alike} more are drawn like them`);
  const rules = [...undecided].map(([rule, places]) => `${rule} in ${places} places`);
  t.diagnostic(`axe could not decide: ${rules.join(', ') || 'nothing'}`);
});
