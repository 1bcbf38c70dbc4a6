// The accessibility checker axe, run inside a page.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { shifted } from './look.mjs';

// Under a page's strict policy axe can come in by evaluation only; a script element would be refused.
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const options = {
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
  resultTypes: ['violations', 'incomplete'],
};

// What axe could not decide and leaves to people, by rule.
export const undecided = new Map();

// inspect gives a line for every place that breaks a rule.
export const inspect = (page) => run(page, options);

// The rules that ask for colours. All others give the same for two pages that differ in colours alone.
const colours = { ...options, runOnly: { type: 'rule', values: ['color-contrast', 'link-in-text-block'] } };

// inspectWithoutColours is inspect with all others, for a page whose colours are those of another.
export const inspectWithoutColours = (page) => run(page, {
  ...options, rules: Object.fromEntries(colours.runOnly.values.map((rule) => [rule, { enabled: false }])),
});

// inspectColours is inspect with those rules.
export const inspectColours = (page) => run(page, colours);

// inspectBoth is inspect in the scheme that a page has, and in the other: that may move and hide nothing, and while
// it does not, its colours alone are left to look at.
export async function inspectBoth(page) {
  const found = await inspect(page);
  await page.evaluate(shifted);
  const dark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  await page.emulateMedia({ colorScheme: dark ? 'light' : 'dark' });
  return [...found, ...await page.evaluate(shifted), ...await inspectColours(page)];
}

async function run(page, how) {
  // Reading axe takes a browser as long as many a page's whole inspection: once for each time that the page is loaded.
  if (!await page.evaluate(() => 'axe' in window)) {
    await page.evaluate(axe);
  }
  const result = await page.evaluate((rules) => axe.run(document, rules), how);
  assert.ok(result.passes.length > 0, 'axe looked at nothing');
  for (const { id, nodes } of result.incomplete) {
    undecided.set(id, (undecided.get(id) ?? 0) + nodes.length);
  }
  return result.violations.flatMap((violation) => violation.nodes.map((node) => (
    `${violation.id}: ${node.target.join(' ')}: ${node.failureSummary}`)));
}
