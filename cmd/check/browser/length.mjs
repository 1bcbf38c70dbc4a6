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

// tall gives the height of the page, pictures and all. Parts that the browser has not laid out yet are laid out first.
const tall = (page) => page.evaluate(() => {
  for (const element of document.body.querySelectorAll('*')) {
    element.style.contentVisibility = 'visible';
  }
  return document.documentElement.scrollHeight;
});

describe('length', () => {
  for (const path of pages.filter((one) => /^(es\/)?guides\/[^/]+\/$/.test(one))) {
    test(`/${path} on a phone`, async (t) => {
      const { page, close } = await visit(browser, `${origin}/${path}`, { ...phone, folded: true });
      t.after(close);
      const worksheets = readGuide(path.replace(/^es\//, '')).worksheets.size;
      const screens = await tall(page) / phone.height;
      const most = limit(worksheets) * longer(path);
      t.diagnostic(`${path}: ${screens.toFixed(1)} screens, at most ${most.toFixed(1)} (worksheets: ${worksheets})`);
      assert.ok(screens <= most, `${screens.toFixed(2)} screens, and ${most.toFixed(1)} are the most`);
    });
  }
});
