// Reads from a guide's Markdown what the guide should show: its worksheets, its reckoners and the figures in its
// sentences. It knows the few shapes that the demo guides use and is no reader of Markdown.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { settings } from './settings.mjs';

// readGuide gives { worksheets, reckoners, figures } of the guide whose page is at path ("guides/soil/").
export function readGuide(path) {
  const markdown = readFileSync(join(settings.content, `${path.replace(/\/$/, '')}.md`), 'utf8');
  const guide = { worksheets: new Map(), reckoners: [], figures: [] };
  const prose = markdown.replaceAll(/^```(\S+) ?(\S*)\n([\s\S]*?)^```$/gm, (_, construct, name, body) => {
    const entries = Object.fromEntries(body.trim().split('\n').map((line) => {
      const colon = line.indexOf(':');
      return [line.slice(0, colon).trim(), line.slice(colon + 1).trim()];
    }));
    const { calculation, ...rest } = entries;
    if (construct === 'worksheet') {
      guide.worksheets.set(name, { calculation, givens: rest });
    } else if (construct === 'reckoner') {
      guide.reckoners.push({ calculation, ...readReckoner(rest) });
    }
    return '';
  });
  for (const [, text, sheet, field] of prose.matchAll(/\[([^\]]+)\]\(worked:([^.)\s]+)\.([^)\s]+)\)/g)) {
    guide.figures.push({ sheet, field, text: text.replaceAll(/\s+/g, ' ') });
  }
  return guide;
}

function readReckoner({ down, across, show, mark, follow, ...givens }) {
  return { down: readSide(down), across: readSide(across), show, mark: mark && readMark(mark), follow, givens };
}

// "water = 1, 6, 12, 24 in"
function readSide(text) {
  const [, given, numbers, unit] = text.match(/^(\S+) = ([\d., ]*\d)(?: (.+))?$/);
  return { given, values: numbers.split(',').map(Number), unit: unit ?? '' };
}

// "25 to 35 lb N/ac"
function readMark(text) {
  const [, low, high] = text.match(/^(\S+) to (\S+)/);
  return { low: Number(low), high: Number(high) };
}

// dependents gives the names of the worksheets that take a number, straight or through others, from the one named,
// and that name itself.
export function dependents(worksheets, name) {
  const found = new Set([name]);
  for (let before = 0; before < found.size;) {
    before = found.size;
    for (const [other, { givens }] of worksheets) {
      if (Object.values(givens).some((value) => found.has(value.match(/^from ([^.]+)\./)?.[1]))) {
        found.add(other);
      }
    }
  }
  return found;
}
