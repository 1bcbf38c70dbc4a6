// Compares what a guide shows with the native answers.
import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { ends, reckon, value, work, written } from './native.mjs';
import { settings } from './settings.mjs';

// The number text that the page uses; another test compares it with Go's on thousands of numbers.
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
    const others = inOtherUnits(guide, now, name, answered);
    expectConverted(others, answered.work);
    expectWork(name, sheet.work, answered.work.slice(others.length), brought(guide, name, answered));
    expectRemarks(name, sheet.remarks, answered);
    assert.deepEqual(sheet.words, answered.says, `${name} in words`);
    assert.deepEqual([...sheet.faults, ...sheet.refusals], [], `${name} shows a fault`);
    assert.equal(sheet.void, false, `${name} is void`);
  }
  expectFigures(guide, now, native, moved);
  assert.equal(now.tables.length, guide.reckoners.length, 'tables');
  const example = work(guide.worksheets);
  guide.reckoners.forEach((reckoner, i) => {
    const [own, ofExample] = [native, example].map((answers) => reckoner.follow && answers.get(reckoner.follow));
    // While the worksheet that it follows has no answer, a table shows the example's and points at nothing.
    const pointed = own && !own.error ? own : undefined;
    const units = (given) => ownUnit(guide, now, { sheet: reckoner.follow, field: given });
    expectTable(reckoner, now.tables[i], pointed ?? ofExample, pointed && { ...pointed, units });
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
function expectFigures(guide, now, native, moved) {
  assert.deepEqual(now.passages.flatMap(({ figures }) => figures), guide.figures.map(({ text: author }) => author),
    'the text is not as it was written');
  let at = 0;
  for (const { figures, owns } of now.passages) {
    const tied = guide.figures.slice(at, at += figures.length);
    const distinct = tied.filter(({ sheet, field }, i) => (
      tied.findIndex((one) => one.sheet === sheet && one.field === field) === i));
    assert.deepEqual(owns.map(({ sheet }) => sheet), distinct.map(({ sheet }) => sheet), `the note of ${figures}`);
    const differs = distinct.some(({ sheet }) => moved.has(sheet));
    distinct.forEach((figure, i) => {
      assert.equal(owns[i].seen, differs, `${figure.sheet}.${figure.field} is in the margin, or is not`);
      expectOwn(figure, owns[i], native.get(figure.sheet), ownUnit(guide, now, figure));
    });
  }
}

// ownUnit gives by unit what turns a number that was typed for a given into its own unit, "60/1": the page has it in
// the list of units at the field, which is a field of another worksheet where the given is linked.
function ownUnit({ worksheets }, now, { sheet, field }) {
  const [, from, name] = worksheets.get(sheet).givens[field]?.match(/^from ([^.]+)\.(.+)$/) ?? [];
  return from ? ownUnit({ worksheets }, now, { sheet: from, field: name }) : now.worksheets[sheet].units[field] ?? {};
}

function expectOwn({ sheet, field }, own, answered, units) {
  if (answered.error) {
    assert.equal(own.says, own.seen ? 'no answer yet' : own.says, `${sheet}.${field}`);
    return;
  }
  const where = `${own.label}, ${own.number}, of ${sheet}.${field}`;
  const quantity = value(answered, field);
  if (quantity) {
    // A number that a person typed is shown as it was typed.
    const typed = (number) => operand(number, quantity.unit?.startsWith('$'), 9, 0);
    const by = product(units[quantity.unit] ?? '1/1', own.by);
    const may = [numbers(quantity, by), ...(answered.answers[field] ? [] : [numbers(quantity, by, typed)])];
    assert.ok(may.includes(own.number), `${where}, should be ${may.join(' or ')}`);
    return;
  }
  // A step is no answer; it is at the end of its line of the work, with more digits where a later line needs them.
  // What is left out is in neither.
  const steps = answered.work.map((line) => line.slice(line.lastIndexOf('=')).match(/[\d.,]+( to [\d.,]+)?/)?.[0] ?? '')
    .map((step) => step.split(' to ').map((one) => text(Number(one.replaceAll(',', '')))).join(' to '));
  if (!steps.includes(own.number)) {
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

// product gives two factors as one: "60/1" and "1/60" are "60/60".
function product(...factors) {
  const [multiply, divide] = [0, 1].map((side) => factors.reduce((all, one) => all * Number(one.split('/')[side]), 1));
  return `${multiply}/${divide}`;
}

// inverse turns a factor upside down.
const inverse = (factor) => factor.split('/').reverse().join('/');

// expectAnswers is expectNative for a moment when it is not the question what the reader changed.
export function expectAnswers(guide, now, native) {
  expectNative(guide, now, native, new Set(Object.keys(now.worksheets).filter((name) => now.worksheets[name].yours)));
}

// Each native answer stands among those shown, number and unit, and there are as many. One that takes what was typed as
// it stands has the digits that were typed.
export function expectResults(name, shown, answered) {
  const answers = Object.entries(answered.answers).filter(([own]) => !answered.same?.[own]).map(([, answer]) => answer);
  const given = Object.values(answered.given ?? {}).flatMap((one) => (typeof one === 'string' ? [] : ends(one)));
  assert.equal(shown.length, answers.length, `answers of ${name}`);
  answers.forEach((answer, i) => {
    const { unit = '' } = answer;
    const typed = (number) => operand(number, unit.startsWith('$'), 9, 0);
    const taken = ends(answer).every((end) => given.includes(end));
    const may = [numbers(answer), ...(taken ? [numbers(answer, '1/1', typed)] : [])]
      .map((number) => (unit.startsWith('$') ? `$${number}${unit.slice(1)}` : `${number} ${unit}`).trim());
    assert.ok(shown.some((line) => may.some((one) => line === one || line.startsWith(`${one} `))),
      `${name}: answer ${i + 1} should be ${may.join(' or ')}; shown are ${shown.join(' | ')}`);
  });
}

// The sentences beside the answers are those that the program says; how a laboratory's "<5" is taken is at its
// field.
function expectRemarks(name, shown, { notes, cautions }) {
  const said = [...notes.filter((note) => !note.includes('the lab found less')), ...cautions];
  assert.deepEqual(shown.toSorted(), said.toSorted(), `remarks of ${name}`);
}

// inOtherUnits gives the names of the givens that were typed in another unit than their own.
function inOtherUnits(guide, now, sheet, { given }) {
  return Object.entries(given).filter(([field, { unit }]) => {
    const [multiply, divide] = (ownUnit(guide, now, { sheet, field })[unit] ?? '1/1').split('/');
    return multiply !== divide;
  }).map(([field]) => field.replaceAll('-', ' '));
}

// The program first shows how each of those becomes its own unit. In the page the list of units beside the field does.
function expectConverted(names, lines) {
  const found = lines.slice(0, names.length).map((line) => line.split(' = ')[0]);
  assert.deepEqual(found.toSorted(), names.toSorted(), 'what comes first is in another unit');
}

// brought gives the numbers that other worksheets have worked out for this one, and what the program writes for them,
// which takes them for typed here. The page knows better, and prints the digits that the sum needs.
function brought({ worksheets }, name, { given }) {
  return Object.entries(worksheets.get(name).givens).filter(([field, text]) => text.startsWith('from ') && given[field])
    .flatMap(([field]) => ends(given[field]));
}

// rounds says whether a number is printed as it is, with fewer digits. A choice or a day is no number.
function rounds(one, printed) {
  const digits = printed.replaceAll(/\D/g, '').replace(/^0+/, '').length;
  return typeof one === 'number' && Number(one.toPrecision(Math.max(digits, 1))) === Number(printed.replaceAll(',', ''));
}

// The numbers of each line of work are in the native line, in order, and the last is the native result.
function expectWork(name, shown, lines, brought) {
  assert.equal(shown.length, lines.length, `lines of work of ${name}`);
  lines.forEach((line, i) => {
    assert.ok(shown[i].length > 0, `${name}: line ${i + 1} of the work shows no number`);
    const echoes = (number) => brought.filter((one) => text(one) === number || rounds(one, number))
      .map((one) => operand(one, false, 9, 0));
    const may = (number) => [number, ...echoes(number)];
    let from = 0;
    for (const number of shown[i]) {
      const at = (one) => line.indexOf(one, from);
      const [found] = may(number).filter((one) => at(one) >= 0).toSorted((one, other) => at(one) - at(other));
      assert.ok(found, `${name}: ${number} is not where it should be in "${line}"; shown are ${shown[i].join(', ')}`);
      from = line.indexOf(found, from) + found.length;
    }
    const result = line.slice(line.lastIndexOf('=') + 1).trim().replace('$', '');
    const last = shown[i].at(-1);
    assert.ok(may(last).some((one) => result.startsWith(one)), `${name}: ${last} is not ${result}`);
  });
}

// followed is the worksheet whose other givens the table takes, pointed the one whose own two numbers it points at.
function expectTable(reckoner, rows, followed, pointed) {
  const { down, across, show, mark } = reckoner;
  // What the reckoner says itself goes before what it takes from the worksheet.
  const taken = Object.entries(followed?.given ?? {}).map(([name, given]) => [name, written(given)]);
  const others = { ...Object.fromEntries(taken), ...reckoner.givens };
  const nearest = (side) => {
    const { unit, ...typed } = value(pointed, side.given);
    const units = pointed.units(side.given);
    const [multiply, divide] = product(units[unit] ?? '1/1', inverse(units[side.unit] ?? '1/1'))
      .split('/').map(Number);
    const own = ends(typed)[0] * multiply / divide;
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
