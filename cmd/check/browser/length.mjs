// How long a guide is on a phone. A grower who comes with one question looks through all of it, a screen at a time.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';
import { readGuide } from './content.mjs';
import { settings } from './settings.mjs';
import { pages } from './site.mjs';
import { start, visit } from './visit.mjs';

const { browser, origin } = await start(settings.site);

const phone = { width: 390, height: 780 };

// The most screens that a guide may have: what one worksheet and the text around it need, two more for each further
// worksheet, and no more than a whole season needs.
const limit = (worksheets) => Math.min(8 + 2 * Math.max(worksheets - 1, 0), 14);

// Spanish takes a tenth more words to say the same.
const longer = (path) => (path.startsWith('es/') ? 1.1 : 1);

// tall gives the height of the page, with and without the pictures that numbers draw: as with its bytes, these are counted
// apart. Parts that the browser has not laid out yet are laid out first.
const tall = (page) => page.evaluate(() => {
  for (const element of document.body.querySelectorAll('*')) {
    element.style.contentVisibility = 'visible';
  }
  const whole = document.documentElement.scrollHeight;
  document.querySelectorAll('.drawing').forEach((picture) => picture.remove());
  return { whole, bare: document.documentElement.scrollHeight };
});

// The most that a picture may take of a screen, with its title and what it is read by.
const ofPicture = 0.6;

describe('length', () => {
  for (const path of pages.filter((one) => /^(es\/)?guides\/[^/]+\/$/.test(one))) {
    test(`/${path} on a phone`, async (t) => {
      const { page, close } = await visit(browser, `${origin}/${path}`, { ...phone, folded: true });
      t.after(close);
      const worksheets = readGuide(path.replace(/^es\//, '')).worksheets.size;
      const pictures = await page.locator('.drawing').count();
      const { whole, bare } = await tall(page);
      const [screens, shown] = [bare / phone.height, (whole - bare) / phone.height];
      const most = limit(worksheets) * longer(path);
      t.diagnostic(`${path}: ${screens.toFixed(1)} screens, at most ${most.toFixed(1)} (worksheets: ${worksheets})`
        + (pictures ? `, and ${shown.toFixed(2)} of pictures` : ''));
      assert.ok(screens <= most, `${screens.toFixed(1)} screens, and ${most.toFixed(1)} are the most`);
      assert.ok(shown <= ofPicture * pictures, `${pictures} pictures take ${shown.toFixed(2)} screens`);
    });
  }
});
