// Compares what a guide shows with the native answers.
import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { ends, reckon, value, work, written } from './native.mjs';
import { settings } from './settings.mjs';

// The number text that the page uses; another test holds it against Go's on thousands of numbers.
const { text, money, operand } = await import(pathToFileURL(settings.numbers));

// expectNative wants every answer, line of work, note in the margin and table cell to say what native says, and the
// worksheets named in moved, and no others, to be marked as the reader's own. A worksheet that native has no answers for
// must show none and say why.
export function expectNative(guide, now, native, moved) {
  for (const [name, answered] of native) {
    const sheet = now.worksheets[name];
    assert.equal(sheet.yours, moved.has(name), `${name} is marked as the reader's own, or is not`);
    if (answered.error) {
      expectVoid(name, now);
      continue;
    }
    expectResults(name, sheet.answers, answered);
    expectWork(name, sheet.work, answered.work);
    expectRemarks(name, sheet.remarks, answered);
    assert.deepEqual(sheet.words, answered.says, `${name} in words`);
    assert.deepEqual([...sheet.faults, ...sheet.refusals], [], `${name} shows a fault`);
    assert.equal(sheet.void, false, `${name} is void`);
  }
  expectFigures(guide.figures, now.passages, native, moved);
  assert.equal(now.tables.length, guide.reckoners.length, 'tables');
  const example = work(guide.worksheets);
  guide.reckoners.forEach((reckoner, i) => {
    const [own, ofExample] = [native, example].map((answers) => reckoner.follow && answers.get(reckoner.follow));
    // While the worksheet that it follows has no answer, a table shows the example's and points at nothing.
    const pointed = own && !own.error ? own : undefined;
    expectTable(reckoner, now.tables[i], pointed ?? ofExample, pointed);
  });
}

// expectVoid wants no number anywhere that is bound to the worksheet, and a sentence that says why: that it waits for
// one, or what it refuses.
export function expectVoid(name, now) {
  const sheet = now.worksheets[name];
  assert.deepEqual(now.bound[name], [], `numbers of ${name} still stand`);
  assert.ok(sheet.void && (sheet.waiting || sheet.refusals.length > 0), `${name} does not say why it has no answer`);
}

// expectFigures wants every figure in the text to stand as its author wrote it, and the note of a part of the text that
// is tied to a worksheet with other numbers to give those, and no other note to be seen.
function expectFigures(written, passages, native, moved) {
  assert.deepEqual(passages.flatMap(({ figures }) => figures), written.map(({ text: author }) => author),
    'the text is not as it was written');
  let at = 0;
  for (const { figures, owns } of passages) {
    const tied = written.slice(at, at += figures.length);
    const distinct = tied.filter(({ sheet, field }, i) => (
      tied.findIndex((one) => one.sheet === sheet && one.field === field) === i));
    assert.deepEqual(owns.map(({ sheet }) => sheet), distinct.map(({ sheet }) => sheet), `the note of ${figures}`);
    const differs = distinct.some(({ sheet }) => moved.has(sheet));
    distinct.forEach((figure, i) => {
      assert.equal(owns[i].seen, differs, `${figure.sheet}.${figure.field} stands in the margin, or does not`);
      expectOwn(figure, owns[i], native.get(figure.sheet));
    });
  }
}

function expectOwn({ sheet, field }, own, answered) {
  if (answered.error) {
    assert.equal(own.says, own.seen ? 'no answer yet' : own.says, `${sheet}.${field}`);
    return;
  }
  const where = `${own.label}, ${own.number}, of ${sheet}.${field}`;
  const quantity = value(answered, field);
  if (quantity) {
    // A number that a person typed is shown as it was typed.
    const typed = (number) => operand(number, quantity.unit?.startsWith('$'), 9, 0);
    // Hours that were typed for a given in minutes are shown in minutes where the sentence has the number in words.
    const factors = quantity.unit === 'h' ? [own.by, '60/1'] : [own.by];
    const may = factors.flatMap((by) => [
      numbers(quantity, by), ...(answered.answers[field] ? [] : [numbers(quantity, by, typed)]),
    ]);
    assert.ok(may.includes(own.number), where);
    return;
  }
  // A step is no answer; it stands at the end of its line of the work. What is left out is in neither.
  const line = answered.work.find((one) => `${one} `.includes(` = ${own.number} `));
  if (!line) {
    assert.equal(own.number, '–', where);
    assert.equal(own.says, own.seen ? 'none' : own.says, where);
    return;
  }
  assert.equal(own.by, '1/1', where);
}

const day = new Intl.DateTimeFormat('en-US', { year: 'numeric', month: 'short', day: 'numeric', timeZone: 'UTC' });

// numbers is a quantity as a page shows it, without its unit: "48", "3 to 4", "Apr 15, 2027".
export function numbers(quantity, by = '1/1', write = quantity.unit?.startsWith('$') ? money : text) {
  const [multiply, divide] = by.split('/').map(Number);
  const [low, high] = ends(quantity).map((end) => (
    typeof end === 'string' ? day.format(new Date(end)) : write(end * multiply / divide)));
  return low === high ? low : `${low} to ${high}`;
}

// expectAnswers is expectNative for a moment when it is not the question what the reader changed.
export function expectAnswers(guide, now, native) {
  expectNative(guide, now, native, new Set(Object.keys(now.worksheets).filter((name) => now.worksheets[name].yours)));
}

// Each native answer stands among those shown, number and unit, and there are as many.
function expectResults(name, shown, answered) {
  const answers = Object.values(answered.answers);
  assert.equal(shown.length, answers.length, `answers of ${name}`);
  answers.forEach((answer, i) => {
    const { unit = '' } = answer;
    const expected = (unit.startsWith('$') ? `$${numbers(answer)}${unit.slice(1)}` : `${numbers(answer)} ${unit}`).trim();
    assert.ok(shown.some((line) => line === expected || line.startsWith(`${expected} `)),
      `${name}: answer ${i + 1} should be ${expected}; shown are ${shown.join(' | ')}`);
  });
}

// The sentences beside the answers are those that the program says; how a laboratory's "<5" is taken stands at its
// field.
function expectRemarks(name, shown, { notes, cautions }) {
  const said = [...notes.filter((note) => !note.includes('the lab found less')), ...cautions];
  assert.deepEqual(shown.toSorted(), said.toSorted(), `remarks of ${name}`);
}

// The numbers of each line of work stand in the native line, in order, and the last is the native result.
function expectWork(name, shown, lines) {
  assert.equal(shown.length, lines.length, `lines of work of ${name}`);
  lines.forEach((line, i) => {
    assert.ok(shown[i].length > 0, `${name}: line ${i + 1} of the work shows no number`);
    let from = 0;
    for (const number of shown[i]) {
      const at = line.indexOf(number, from);
      assert.ok(at >= 0, `${name}: ${number} is not where it should be in "${line}"; shown are ${shown[i].join(', ')}`);
      from = at + number.length;
    }
    const result = line.slice(line.lastIndexOf('=') + 1).trim();
    assert.ok(result.replace('$', '').startsWith(shown[i].at(-1)), `${name}: ${shown[i].at(-1)} is not ${result}`);
  });
}

// followed is the worksheet whose other givens the table takes, pointed the one whose own two numbers it points at.
function expectTable(reckoner, rows, followed, pointed) {
  const { down, across, show, mark } = reckoner;
  // What the reckoner says itself goes before what it takes from the worksheet.
  const taken = Object.entries(followed?.given ?? {}).map(([name, given]) => [name, written(given)]);
  const others = { ...Object.fromEntries(taken), ...reckoner.givens };
  const nearest = (side) => {
    const [own] = ends(value(pointed, side.given));
    const distances = side.values.map((v) => Math.abs(v - own));
    return distances.indexOf(Math.min(...distances));
  };
  down.values.forEach((d, row) => across.values.forEach((a, column) => {
    const here = { [down.given]: `${d} ${down.unit}`.trim(), [across.given]: `${a} ${across.unit}`.trim() };
    const answer = reckon(reckoner.calculation, { ...others, ...here }).answers[show];
    const cell = rows[row][column];
    const where = `${reckoner.calculation}, ${down.given} ${d}, ${across.given} ${a}`;
    assert.equal(cell.text, numbers(answer), where);
    const [low, high] = ends(answer);
    const marked = mark !== undefined && low >= mark.low && high <= mark.high;
    assert.equal(cell.marked, marked, `${where}: marked`);
    const near = pointed !== undefined && row === nearest(down) && column === nearest(across);
    assert.equal(cell.near, near, `${where}: nearest`);
    assert.deepEqual(cell.notes.sort(), [...(marked ? ['mark-note'] : []), ...(near ? ['near-note'] : [])], where);
  }));
}
