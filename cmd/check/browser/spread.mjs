// How the page works ranges against how the program does, bit for bit: every calculation, for several sets of ranges.
import assert from 'node:assert/strict';
import { copyFileSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

const spreads = JSON.parse(readFileSync(join(settings.parity, 'spreads.json'), 'utf8'));
for (const name of ['parity-page.mjs', 'spread-page.mjs']) {
  copyFileSync(new URL(name, import.meta.url), join(settings.parity, name));
}
for (const name of ['spread.mjs', 'ranges.mjs']) {
  copyFileSync(join(dirname(settings.numbers), name), join(settings.parity, name));
}

const { browser, origin } = await start(settings.parity);
const page = await browser.newPage();
await page.goto(`${origin}/spreads.json`);

for (const one of spreads) {
  test(one.name, async () => {
    const differ = await page.evaluate(async (given) => (await import('/spread-page.mjs')).compareSpread(given), one);
    assert.deepEqual(differ, [], 'cases that differ');
  });
}

test('the comparison was not of nothing', (t) => {
  const cases = spreads.flatMap((one) => one.cases);
  const ranged = cases.filter(({ low, high }) => low.some((value, i) => value !== high[i]));
  const guarded = spreads.filter(({ guards }) => guards?.length);
  t.diagnostic(`${spreads.length} calculations, ${cases.length} sets of givens, ${ranged.length} of them with ranges, `
    + `${guarded.length} with answers that may be left out`);
  assert.ok(ranged.length > 100 && guarded.length > 0);
});
