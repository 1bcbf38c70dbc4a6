// The accessibility checker axe, run inside a page.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

// Under a page's strict policy axe can come in by evaluation only; a script element would be refused.
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const options = {
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
  resultTypes: ['violations', 'incomplete'],
};

// What axe could not decide and leaves to people, by rule.
export const undecided = new Map();

// inspect gives a line for every place that breaks a rule.
export async function inspect(page) {
  await page.evaluate(axe);
  const result = await page.evaluate((how) => axe.run(document, how), options);
  assert.ok(result.passes.length > 0, 'axe looked at nothing');
  for (const { id, nodes } of result.incomplete) {
    undecided.set(id, (undecided.get(id) ?? 0) + nodes.length);
  }
  return result.violations.flatMap((violation) => violation.nodes.map((node) => (
    `${violation.id}: ${node.target.join(' ')}: ${node.failureSummary}`)));
}
