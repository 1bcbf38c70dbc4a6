// What the tests of courses share: a learner's browser, what it keeps, and what the pages say of it.
import { spawnSync } from 'node:child_process';
import { listen, mounted } from './lesson.mjs';
import { settings } from './settings.mjs';
import { start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
export { browser };
export const course = `${origin}/courses/feeding/`;
export const today = new Date('2026-11-30T15:00:00');

// learner opens a browser of one learner, whose clock stands still, and keeps what goes wrong in its pages.
export async function learner(t, { before, ...how } = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...how });
  t.after(() => context.close());
  await context.clock.setFixedTime(today);
  await listen(context);
  if (before) {
    await context.addInitScript(before);
  }
  const faults = [];
  context.on('weberror', (fault) => faults.push(fault.error().message));
  context.on('console', (message) => faults.push(message.text()));
  const open = async (address) => {
    const page = await context.newPage();
    await page.goto(address);
    await mounted(page);
    return page;
  };
  return { context, faults, open };
}

export const kept = (page) => page.evaluate(() => localStorage.getItem('course /courses/feeding/'));
export const line = (page) => page.locator('main > .told').textContent();
export const status = (page) => page.locator('.record [role=status]').textContent();
export const code = (page) => page.locator('.letters').textContent();
export const rows = (page) => page.$$eval('.record tbody tr', (all) => all.map((row) => [...row.cells].slice(1).map((cell) => cell.textContent)));

// verify asks the program about a code.
export function verify(content, words) {
  const { status: exit, stdout, stderr } = spawnSync(settings.acreleaf, ['record', words, '--from', content],
    { encoding: 'utf8' });
  return { exit, out: stdout, err: stderr };
}
