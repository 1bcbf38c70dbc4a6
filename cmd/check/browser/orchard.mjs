// Writes a content folder with many guides, each with a worksheet, headings, a table and links, as offices have them.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const sentences = [
  'What the trees do not take up can wash below the roots with the next long set.',
  'Walk the rows before you order, and look at the tips of the shoots.',
  'A report is a picture of one day, and a wet month can make it old.',
  'Sample where the roots and the emitters are.',
  'Keep the bag cool on the way to the lab, and write the block on it.',
  'Young trees have a small root ball, so small feeds reach more of them.',
  'Ask the lab how it states nitrate when the line does not say so.',
  'It costs less to measure than to guess.',
];

export const guideName = (i) => `guides/block-${String(i).padStart(5, '0')}.md`;
export const guideWay = (i) => guideName(i).replace(/\.md$/, '/');

const paragraph = (i, part) => Array.from({ length: 6 },
  (_, line) => sentences[(i * 7 + part * 3 + line * 5) % sentences.length]).join('\n');

// guide is a guide of about five kilobytes. more is what is added in its middle.
export function guide(i, guides, more = '') {
  const nitrate = 4 + i % 20;
  const next = guideName((i + 1) % guides).slice('guides/'.length);
  return `---
title: What block ${i} needs this year
summary: ${sentences[i % sentences.length]}
reviewed: 2026-09-${String(1 + i % 28).padStart(2, '0')}
order: ${i}
season: in spring
glance: [block.nitrogen]
---
${paragraph(i, 0)}

## Read the report first

${[1, 2, 3].map((part) => paragraph(i, part)).join('\n\n')}

${more}

## Work it out

\`\`\`worksheet block
calculation: soil-nitrogen
nitrate: ${nitrate} ppm NO3-N
depth: 12 in
\`\`\`

The answer is [${4 * nitrate} lb/ac](worked:block.nitrogen).

${[4, 5, 6].map((part) => paragraph(i, part)).join('\n\n')}

| Row | Look |
|---|---|
| North | Pale |
| South | Green |

## What it does not tell you

${[7, 8, 9, 10].map((part) => paragraph(i, part)).join('\n\n')}

Next, see [the next block](${next}#work-it-out).
`;
}

// writeOrchard writes the folder.
export function writeOrchard(folder, guides) {
  mkdirSync(join(folder, 'guides'), { recursive: true });
  writeFileSync(join(folder, 'site.yaml'), 'office: Thousand Rows Orchard Office\ninvented: true\nnotice: It is made up.\n');
  writeFileSync(join(folder, 'home.md'), '---\ntitle: Thousand Rows\nsummary: Guides for the year.\n---\nIn order.\n');
  for (let i = 0; i < guides; i++) {
    writeFileSync(join(folder, guideName(i)), guide(i, guides));
  }
}
