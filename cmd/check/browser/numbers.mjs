// The page's number text against Go's, in Chromium, on every number of the shared file.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { test } from 'node:test';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

// "4045000000000000,42,42,42,42,42": the bits of a number in hexadecimal, and its text by each writer, in quotes where
// it holds commas.
const vectors = readFileSync(settings.vectors, 'utf8').split('\n').filter(Boolean)
  .map((line) => line.match(/"[^"]*"|[^,\r]+/g).map((field) => field.replaceAll('"', '')))
  .map(([bits, ...texts]) => ({ bits, texts }));

const { browser, origin } = await start(dirname(settings.numbers));
const page = await browser.newPage();
await page.goto(`${origin}/blank.html`);

test('the file holds at least 2,000 numbers', () => assert.ok(vectors.length >= 2000, `${vectors.length} numbers`));

test('every number is written alike', async (t) => {
  t.diagnostic(`${vectors.length} numbers compared`);
  const written = await page.evaluate(write, { module: `${origin}/${basename(settings.numbers)}`, vectors });
  assert.deepEqual(written.map(({ texts }) => texts), vectors.map(({ texts }) => texts));
});

test('what is written reads back as that number', async () => {
  const written = await page.evaluate(write, { module: `${origin}/${basename(settings.numbers)}`, vectors });
  for (const { text, read } of written.filter((one) => /^-?[\d.,]+$/.test(one.text))) {
    assert.equal(read, Number(text.replaceAll(',', '')), text);
  }
});

test('what is no number is not read', async () => {
  const module = `${origin}/${basename(settings.numbers)}`;
  const texts = ['', ' ', 'abc', '1,2', '1.2.3', '1,0000', '0x10', '<5', '1e3', 'NaN', 'Infinity', '--1', '5 lb', '–'];
  const read = await page.evaluate(async ({ module, texts }) => {
    const { parse } = await import(module);
    return texts.map((text) => parse(text));
  }, { module, texts });
  assert.deepEqual(read, texts.map(() => null));
});

async function write({ module, vectors }) {
  const { text, operand, money, parse } = await import(module);
  return vectors.map(({ bits }) => {
    const view = new DataView(new ArrayBuffer(8));
    view.setBigUint64(0, BigInt(`0x${bits}`));
    const value = view.getFloat64(0);
    const texts = [
      text(value), text(value, 2), operand(value, false, 6, 1, 6), money(value), operand(value, true, 6, 1),
    ];
    return { texts, text: texts[0], read: parse(texts[0]) };
  });
}
