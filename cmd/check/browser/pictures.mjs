// Takes the pictures of the README from a pressed site:
//
//   go run ./cmd/acreleaf press --to SITE
//   node cmd/check/browser/pictures.mjs --chromium /usr/bin/chromium-headless-shell --site SITE
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const folder = fileURLToPath(new URL('../../../theme/picture/', import.meta.url));
const { browser, origin } = await start(settings.site);

// The number typed is the reader's own, so that the pictures show a page that answers for it.
async function picture(name, width, height, from) {
  const { page, close } = await visit(browser, `${origin}/guides/soil/`, { width, height });
  await page.fill('#soil-nitrate', '66');
  await page.evaluate((selector) => {
    document.querySelectorAll('details[open]').forEach((fold) => { fold.open = false; }); // as a reader finds them
    document.activeElement.blur();
    document.querySelector(selector).scrollIntoView();
  }, from);
  await page.screenshot({ path: `${folder}${name}.png` });
  await close();
}

test('pictures', async () => {
  await picture('guide-wide', 1160, 1000, '#worksheet-soil');
  await picture('guide-narrow', 360, 800, '#worksheet-soil');
});
