// The accessibility checker axe, run inside a page.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { shifted } from './look.mjs';
import { paints } from './paint.mjs';

// Under a page's strict policy axe can come in by evaluation only; a script element would be refused.
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const options = {
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
  resultTypes: ['violations', 'incomplete'],
};

// The rules that ask for colours. All others give the same for two pages that differ in colours alone.
const colours = ['color-contrast', 'link-in-text-block'];
const onlyColours = { ...options, runOnly: { type: 'rule', values: colours } };
const withoutColours = { ...options, rules: Object.fromEntries(colours.map((rule) => [rule, { enabled: false }])) };

// What axe could not decide and leaves to people, by rule.
export const undecided = new Map();

// How texts are drawn that axe found nothing wrong with; and how many texts it looked at, and how many were drawn so.
export const drawn = { ways: new Set(), looked: 0, alike: 0 };

// inspect gives a line for every place that breaks a rule. To find what lies behind each text takes axe long, so texts
// that are drawn alike (paint.mjs) are looked at once, wherever they are.
export async function inspect(page) {
  const ways = await fresh(page);
  return run(page, ways.length > 0 ? options : withoutColours, ways);
}

// inspectColours is inspect with the rules that ask for colours, of those texts alone that are drawn as none before.
export async function inspectColours(page) {
  const ways = await fresh(page);
  return ways.length > 0 ? run(page, onlyColours, ways, ways) : [];
}

// fresh gives the ways in which texts of the page are drawn and none was that axe found nothing wrong with.
async function fresh(page) {
  const all = await page.evaluate(paints);
  assert.ok(all.length > 0, 'the page has no text');
  for (const { way, texts } of all) {
    drawn[drawn.ways.has(way) ? 'alike' : 'looked'] += texts;
  }
  return all.map(({ way }) => way).filter((way) => !drawn.ways.has(way));
}

// inspectBoth is inspect in the scheme that a page has, and in the other: that may move and hide nothing, and while
// it does not, its colours alone are left to look at.
export async function inspectBoth(page) {
  const found = await inspect(page);
  await page.evaluate(shifted);
  const dark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  await page.emulateMedia({ colorScheme: dark ? 'light' : 'dark' });
  return [...found, ...await page.evaluate(shifted), ...await inspectColours(page)];
}

// run runs axe on the whole page, or on the texts that are drawn in some ways alone, and notes the ways that it found
// nothing wrong with.
async function run(page, how, ways, only) {
  // Reading axe takes a browser as long as many a page's whole inspection: once for each time that the page is loaded.
  if (!await page.evaluate(() => 'axe' in window)) {
    await page.evaluate(axe);
  }
  const result = await page.evaluate(async ([how, ways, only]) => {
    const where = only ? { include: only.flatMap((way) => window.paints.get(way)) } : document;
    const { passes, incomplete, violations } = await axe.run(where, { ...how, elementRef: true });
    const open = new Set([...incomplete, ...violations].flatMap(({ nodes }) => nodes.map(({ element }) => element)));
    return {
      passed: passes.length,
      incomplete: incomplete.map(({ id, nodes }) => [id, nodes.length]),
      found: violations.flatMap(({ id, nodes }) => nodes.map((node) => (
        `${id}: ${node.target.join(' ')}: ${node.failureSummary}`))),
      clean: ways.filter((way) => !window.paints.get(way).some((element) => open.has(element))),
    };
  }, [how, ways, only]);
  assert.ok(only || result.passed > 0, 'axe looked at nothing');
  for (const [id, places] of result.incomplete) {
    undecided.set(id, (undecided.get(id) ?? 0) + places);
  }
  result.clean.forEach((way) => drawn.ways.add(way));
  return result.found;
}
