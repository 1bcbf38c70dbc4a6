// How long a live answer takes after a keystroke, on a page of ten worksheets, with the processor slowed four times.
// The time by the clock is printed beside its limits and beside that of a field that nothing listens to; it fails nothing,
// because a busy machine is no fault of the page. The limits are for the time of the processor, four times over, which
// the browser counts itself. A processor that has others to serve takes longer for that too, so each round of keystrokes
// comes after a round of work that never changes, and the limits are as much longer as that work takes. An answer that
// does not come, or is not the one, fails.
import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { test } from 'node:test';
import { readGuide } from './content.mjs';
import { work } from './native.mjs';
import { settings } from './settings.mjs';
import { start, visit } from './visit.mjs';

const limit = 8; // ms of script, and
const limitLaidOut = 16.7; // with style and layout, where
const free = 12; // ms, times 4, is what the work takes that never changes: a processor with nothing else to do
const keystrokes = 400;
const rounds = 8; // of the keystrokes, and as many of the other work
const path = 'guides/ten/';

const { text } = await import(pathToFileURL(settings.numbers));

const { browser, origin } = await start(settings.site);

test('a keystroke among ten worksheets', async (t) => {
  const { page, complaints, close } = await visit(browser, `${origin}/${path}`, { width: 320 });
  t.after(close);
  const { worksheets } = readGuide(path);
  assert.equal(await page.locator('section.worksheet').count(), 10);
  const chromium = await page.context().newCDPSession(page);
  await chromium.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const floor = await page.evaluate(measure, { keystrokes });
  const live = await page.evaluate(measure, { id: 'soil-nitrate', keystrokes });
  await chromium.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  const processor = await inTurn(chromium, page);

  const native = work(worksheets, { soil: { nitrate: `${live.last} ppm NO3-N` } });
  const shown = await page.locator('#worksheet-budget .answer dd').allTextContents();
  for (const { value, unit } of Object.values(native.get('budget').answers)) {
    assert.ok(shown.some((line) => line.startsWith(`${text(value)} ${unit}`)), `no ${value} among ${shown}`);
  }
  assert.equal(live.changes, keystrokes, 'keystrokes that changed the answer');
  assert.deepEqual(complaints, []);

  const line = (what, times) => `${what} ${percentile(times, 0.95).toFixed(1)} ms (median ${
    percentile(times, 0.5).toFixed(1)})`;
  t.diagnostic(`live answer after a keystroke, ten worksheets, processor ÷ 4, ${keystrokes} keystrokes, 95 % within: `
    + `${line('script', live.script)}, ${line('with layout', live.total)}; limits ${limit} and ${limitLaidOut} ms; `
    + `${line('a field that does nothing', floor.total)}`);
  const { script, laidOut, slow } = processor;
  t.diagnostic(`time of the processor for each, times 4: script ${script.toFixed(1)} ms of ${limit}, with style and layout ${
    laidOut.toFixed(1)} ms of ${limitLaidOut}; the processor takes ${slow.toFixed(2)} times as long as a free one`);
  assert.ok(script <= limit * slow, `a keystroke takes ${script.toFixed(1)} ms of script`);
  assert.ok(laidOut <= limitLaidOut * slow, `a keystroke takes ${laidOut.toFixed(1)} ms with style and layout`);
});

// inTurn gives the processor time of a keystroke in ms, times 4, and how much longer than a free processor this one
// takes, each of them the middle one of the rounds.
async function inTurn(chromium, page) {
  const [script, laidOut, slow] = [[], [], []];
  const each = keystrokes / rounds;
  for (let round = 0; round < rounds; round++) {
    const same = await spent(chromium, () => page.evaluate(unchanging, each));
    slow.push(4 * sum(same) / each / free);
    const own = await spent(chromium, () => page.evaluate(measure, { id: 'soil-nitrate', keystrokes: each, from: round * each }));
    script.push(4 * own.ScriptDuration / each);
    laidOut.push(4 * sum(own) / each);
  }
  return { script: percentile(script, 0.5), laidOut: percentile(laidOut, 0.5), slow: Math.max(1, percentile(slow, 0.5)) };
}

const sum = (times) => times.ScriptDuration + times.LayoutDuration + times.RecalcStyleDuration;

// unchanging runs inside the page: script, style and layout of about as much as a keystroke, with nothing of the page.
function unchanging(times) {
  const box = document.createElement('div');
  box.style.cssText = 'position: fixed; width: 20em; contain: strict';
  document.body.append(box);
  const parts = Array.from({ length: 100 }, () => box.appendChild(document.createElement('p')));
  for (let i = 0; i < times; i++) {
    JSON.parse(JSON.stringify(parts.map((_, at) => ({ at, name: `part ${at}`, value: Math.sqrt(at + i) }))))
      .forEach(({ at, value }) => { parts[at].textContent = `${value} lb/ac of nitrogen for part ${at}`; });
    box.getBoundingClientRect();
  }
  box.remove();
}

// spent gives the milliseconds of processor time, by kind of work, that the page needs for something.
async function spent(chromium, work) {
  await chromium.send('Performance.enable', { timeDomain: 'threadTicks' });
  const read = async () => (await chromium.send('Performance.getMetrics')).metrics;
  const before = await read();
  await work();
  return Object.fromEntries((await read()).map(({ name, value }, i) => [name, 1000 * (value - before[i].value)]));
}

// measure runs inside the page: types numbers into the field, or into one of its own when there is no id, and times
// each until the answers are in the page and are laid out.
function measure({ id, keystrokes: count, from = 0 }) {
  const input = id ? document.getElementById(id) : document.createElement('input');
  if (!id) {
    document.body.append(input);
  }
  const answer = document.querySelector('#worksheet-budget .answer');
  const [script, total] = [[], []];
  let changes = 0;
  let before = answer.textContent;
  let last = '';
  for (let i = from; i < from + count; i++) {
    last = String(3 + (i * 7) % 90);
    const start = performance.now();
    input.value = last;
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    script.push(performance.now() - start);
    document.body.getBoundingClientRect();
    total.push(performance.now() - start);
    changes += answer.textContent === before ? 0 : 1;
    before = answer.textContent;
  }
  if (!id) {
    input.remove();
  }
  return { script, total, changes, last };
}

function percentile(times, part) {
  return times.toSorted((a, b) => a - b)[Math.ceil(times.length * part) - 1];
}
