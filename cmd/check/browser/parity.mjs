// Native against Chromium, bit for bit: every calculation, random programs, and the module of every page.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

const programs = JSON.parse(readFileSync(join(settings.parity, 'programs.json'), 'utf8'));
copyFileSync(new URL('parity-page.mjs', import.meta.url), join(settings.parity, 'page.mjs'));

const { browser, origin } = await start(settings.parity);
const page = await browser.newPage();
await page.goto(`${origin}/programs.json`);

let numbers = 0;
let runs = 0;
for (const program of programs) {
  test(program.name, async () => {
    const result = await page.evaluate(async (one) => (await import('/page.mjs')).compare(one), program);
    if (result.difference) {
      assert.fail(explain(result.difference));
    }
    assert.equal(result.runs, 10_000);
    numbers += result.numbers;
    runs += result.runs;
  });
}

test('the comparison was not of nothing', (t) => {
  t.diagnostic(`${programs.length} programs, ${runs} runs, ${numbers} numbers compared`);
  assert.ok(programs.length > 200 && numbers > runs);
});

function explain({ name, input, given, got }) {
  const flags = ['-site', settings.site, '-show', name, '-input', String(input)];
  const native = execFileSync(settings.native, flags, { encoding: 'utf8' });
  return `input ${input} of ${name}: given ${given.join(' ')}\nChromium:\n${got.join('\n')}\nnative:\n${native}`;
}
