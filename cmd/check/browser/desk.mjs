// The desk with a thousand guides, and an author who saves one of them: the page that is open shows each save, where it
// was; a fault stands over it until it is fixed; and it finds the desk again after a restart.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { guide, guideName, guideWay, writeOrchard } from './orchard.mjs';
import { settings } from './settings.mjs';
import { launch, ready, visit } from './visit.mjs';

const guides = Number(settings.guides ?? 1000);
const saves = 20;
const edited = Math.floor(guides / 2);
const folder = mkdtempSync(join(tmpdir(), 'desk-'));
const content = join(folder, 'content');
after(() => rmSync(folder, { recursive: true }));
writeOrchard(content, guides);
const save = (text) => writeFileSync(join(content, guideName(edited)), text);
const paragraphs = (n) => Array.from({ length: n }, (_, i) => `More of it, part ${i}.`).join('\n\n');

// startDesk starts the desk and waits until it says where it is. Its lines are gathered.
async function startDesk(port) {
  const desk = spawn(settings.acreleaf, ['desk', '--port', String(port)], { cwd: folder });
  const said = { out: '', err: '' };
  desk.stderr.on('data', (text) => (said.err += text));
  await new Promise((resolve, reject) => {
    desk.on('exit', (code) => reject(new Error(`the desk ended with ${code}: ${said.err}`)));
    desk.stdout.on('data', (text) => (said.out += text) && said.out.includes('Ctrl+C') && resolve());
  });
  const [origin] = said.out.match(/http:\/\/[\d.:]+/);
  const end = new Promise((resolve) => desk.on('exit', resolve));
  return { origin, said, stop: () => { desk.kill('SIGINT'); return end; } };
}

let desk = await startDesk(0);
const { origin } = desk;
after(() => desk.stop());
const browser = await launch();
const address = `${origin}/${guideWay(edited)}`;
const { page, complaints } = await visit(browser, address, { height: 700 });

// shows waits until a text is on the screen, painted, and not only in the document.
const shows = (text) => page.waitForFunction((wanted) => document.readyState !== 'loading' &&
  document.documentElement.style.visibility !== 'hidden' &&
  document.querySelector('main').textContent.includes(wanted), text, { polling: 'raf' });

const overlay = () => page.evaluate(() => {
  const panel = document.documentElement.lastElementChild.shadowRoot?.querySelector('section');
  if (!panel || panel.hidden) {
    return null;
  }
  const list = panel.querySelector('#faults');
  const box = panel.getBoundingClientRect();
  return {
    lines: [...list.querySelectorAll('.head, pre, .note')].map((part) => part.textContent).join('\n'),
    alert: panel.querySelector('[role=alert]').contains(list),
    open: list.checkVisibility(),
    inside: box.top >= 0 && box.left >= 0 && box.right <= innerWidth && box.bottom <= innerHeight,
    sideways: document.documentElement.scrollWidth > innerWidth || panel.scrollWidth > panel.clientWidth,
    carets: [...list.querySelectorAll('pre')].every((line) => {
      const [above, below] = line.textContent.split('\n');
      const cell = line.scrollWidth / Math.max(above.length, below.length);
      const at = below.indexOf('^') * cell - line.scrollLeft;
      return at >= 0 && at < line.clientWidth;
    }),
  };
});
const until = async (what, ask) => {
  for (const end = Date.now() + 20_000; ; await new Promise((resolve) => setTimeout(resolve, 10))) {
    const answer = await ask().catch(() => undefined); // the page may be loading
    if (answer) {
      return answer;
    }
    assert.ok(Date.now() < end, `${what} never comes; the terminal: ${desk.said.out}${desk.said.err}`);
  }
};

test(`each of ${saves} saves is seen, in ${guides} guides`, async (t) => {
  const times = [];
  for (let i = 0; i < saves; i++) {
    const text = guide(edited, guides, `This is save ${i}.`);
    const start = performance.now();
    save(text);
    await shows(`This is save ${i}.`);
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const ms = (time) => `${Math.round(time)} ms`;
  t.diagnostic(`desk: from a save to the new text in Chromium, ${guides} guides: median ` +
    `${ms((times[saves / 2 - 1] + times[saves / 2]) / 2)}, slowest ${ms(times.at(-1))}`);
  assert.deepEqual(desk.said.out.match(/Made again/g)?.length >= saves, true, desk.said.out);
});

test('the reader stays where they are, with what they typed', async () => {
  await ready(page);
  const field = page.locator('#block-nitrate');
  await field.fill('17');
  const heading = page.locator('#what-it-does-not-tell-you');
  await heading.evaluate((element) => scrollTo(0, scrollY + element.getBoundingClientRect().top - 120));
  await field.evaluate((element) => { element.focus({ preventScroll: true }); element.setSelectionRange(1, 2); });
  await page.evaluate(() => document.querySelectorAll('details').forEach((details, i) => (details.open = i % 2 === 0)));
  const place = () => page.evaluate(() => ({
    top: Math.round(document.getElementById('what-it-does-not-tell-you').getBoundingClientRect().top),
    value: document.getElementById('block-nitrate').value,
    focus: document.activeElement.id,
    cursor: [document.activeElement.selectionStart, document.activeElement.selectionEnd],
    open: [...document.querySelectorAll('details')].map((details) => details.open),
    answer: document.querySelector('.answer dd').textContent,
    yours: document.querySelector('section.worksheet').classList.contains('yours'),
  }));
  const before = await place();
  assert.equal(before.value, '17');
  assert.match(before.answer, /68/);
  for (const n of [30, 0, 12]) { // far more text above the reader, and less again
    save(guide(edited, guides, `${paragraphs(n)}\n\nNow with ${n} parts.`));
    await shows(`Now with ${n} parts.`);
    await ready(page);
    const now = await place();
    assert.ok(Math.abs(now.top - before.top) <= 1, `the heading was at ${before.top}, and is at ${now.top}`);
    assert.deepEqual({ ...now, top: 0 }, { ...before, top: 0 });
  }
});

test('a page that must be loaded again, for a new picture, does not lose the place either', async () => {
  const picture = (width) => writeFileSync(join(content, 'row.svg'),
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${width}"></svg>`);
  picture(40);
  save(guide(edited, guides, 'It has a picture: ![A row](../row.svg)'));
  await shows('It has a picture');
  const place = () => page.evaluate(() => ({
    top: Math.round(document.getElementById('what-it-does-not-tell-you').getBoundingClientRect().top),
    value: document.getElementById('block-nitrate').value, focus: document.activeElement.id,
  }));
  await until('the picture', () => page.evaluate(() => document.images[0].naturalWidth === 40));
  await page.evaluate(() => document.getElementById('what-it-does-not-tell-you').scrollIntoView({ behavior: 'instant' }));
  await page.evaluate(() => scrollBy({ top: -150, behavior: 'instant' }));
  const before = await place();
  picture(80);
  await until('the new picture', () => page.evaluate(() => document.images[0].naturalWidth === 80 &&
    document.body.classList.contains('live') && document.readyState === 'complete'));
  const now = await until('the place', async () => {
    const there = await place();
    return Math.abs(there.top - before.top) <= 1 && there;
  });
  assert.deepEqual({ ...now, top: 0 }, { value: '17', focus: 'block-nitrate', top: 0 });
});

test('a field that was not touched has the number of the page', async () => {
  await page.locator('#block-nitrate').evaluate((field) => { field.value = field.defaultValue; });
  save(guide(edited, guides, 'Another report.').replace(/nitrate: \d+/, 'nitrate: 25').replace(/\[\d+ lb/, '[100 lb'));
  await shows('Another report.');
  assert.equal(await page.locator('#block-nitrate').inputValue(), '25');
});

test('a fault covers the page until it is fixed', async (t) => {
  const bad = guide(edited, guides, 'A line that is longer than any telephone is wide, with <img src=x onerror=alert(1)>' +
    ' in `code`, and then [a way](gone.md) to nothing.').replace('<img src=x onerror=alert(1)>', '`<img src=x>`');
  for (const { width, scheme } of [{ width: 320, scheme: 'dark' }, { width: 1280, scheme: 'light' }]) {
    await page.setViewportSize({ width, height: 700 });
    await page.emulateMedia({ colorScheme: scheme });
    desk.said.err = '';
    save(bad);
    const shown = await until('the fault', overlay);
    await until('the fault in the terminal', async () => desk.said.err.includes('1 error'));
    assert.equal(`${shown.lines}\n`, desk.said.err.slice(0, desk.said.err.indexOf('1 error')));
    assert.match(shown.lines, /`<img src=x>`/);
    assert.deepEqual({ ...shown, lines: '' },
      { lines: '', alert: true, open: true, inside: true, sideways: false, carets: true }, `${width} px, ${scheme}`);
    if (settings.pictures) {
      await page.screenshot({ path: join(settings.pictures, `desk-${width}-${scheme}.png`) });
    }
    await page.keyboard.press('Escape');
    assert.equal((await overlay()).open, false);
    await page.reload();
    await until('the fault after the page is loaded again', overlay);
    save(guide(edited, guides, `Mended at ${width}.`));
    await shows(`Mended at ${width}.`);
    await until('a page without the fault', async () => (await overlay()) === null);
  }
  save(bad);
  await until('the fault', overlay);
  save(guide(edited, guides, 'Mended at 1280.')); // as it was: there is nothing to load again
  await until('a page without the fault', async () => (await overlay()) === null);
  t.diagnostic('desk: a fault was shown, put aside and cleared at 320 and 1280 px');
});

test('a browser that was left open finds the desk again, and what changed meanwhile', async () => {
  // A page that is loaded again drops its line to the desk, and what it was about to load.
  const dropped = [`${origin}/.desk/events`, `${origin}/assets/ranges.`, address].map((start) => `request failed: ${start}`);
  const aborted = (one) => dropped.some((start) => one.startsWith(start)) && one.endsWith('net::ERR_ABORTED');
  assert.deepEqual(complaints.filter((one) => !aborted(one)), []);
  assert.equal(await desk.stop(), 0);
  save(guide(edited, guides, 'Written while the desk was away.'));
  desk = await startDesk(new URL(origin).port);
  assert.equal(desk.origin, origin);
  await shows('Written while the desk was away.');
  save(guide(edited, guides, 'Written after that.'));
  await shows('Written after that.');
});
