// A printed handout, from the PDF files alone: they are tagged; each side has its cards whole and nothing more; the key
// and the sheet have every number; the QR codes of the printed sides open the card in the live page, which has the same
// story and the same answers as the paper; and the work in the key is true on a calculator.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, test } from 'node:test';
import { inspect } from './axe.mjs';
import { check, lines } from './calculator.mjs';
import { faces } from './faces.mjs';
import { lead } from './hour.mjs';
import { settings } from './settings.mjs';
import { regulars, start } from './visit.mjs';

const { browser, origin } = await start(settings.site);
const visit = regulars(browser);
const address = 'https://sorrelflat.example.org/';

// What cmd/check/handout.go has printed. With "cards" every card of every exercise is compared.
const handouts = JSON.parse(readFileSync(join(settings.handed, 'list.json'), 'utf8'));
if (!handouts[0].cards) {
  await import('./paper.mjs');
}
const papers = { letter: { width: 612, height: 792 }, a4: { width: 595, height: 842 } }; // in points

const bare = (text) => text.replace(/[\s\u00a0]+/g, '');
const run = (...command) => execFileSync(command[0], command.slice(1), { encoding: 'utf8', maxBuffer: 1 << 26 });

for (const { folder, page: of, first, last, paper, cards: all } of handouts) {
  const { width, height } = papers[paper];
  const lastOf = (exercise) => all?.[exercise] ?? last;
  const file = (name) => join(settings.handed, folder, name);
  // The text of each sheet in the order in which it is set, without white space.
  const sheets = (name) => run('pdftotext', '-raw', file(name), '-').split('\f').slice(0, -1).map(bare);

  describe(folder, () => {
    for (const name of ['cards', 'key', 'sign-in']) {
      test(`${name} is tagged, on its paper, and in order for all readers`, async (t) => {
        const info = run('pdfinfo', file(`${name}.pdf`));
        assert.match(info, /^Tagged: +yes$/m);
        const [, wide, high] = info.match(/^Page size: +([\d.]+) x ([\d.]+) pts/m);
        assert.ok(Math.abs(wide - width) < 1 && Math.abs(high - height) < 1, `${wide} x ${high}`);
        const { page, complaints, close } = await visit(pathToFileURL(file(`${name}.html`)).href);
        t.after(close);
        assert.deepEqual(of === 'report' ? await inspect(page) : [], []);
        assert.deepEqual(complaints, []);
      });
    }

    test('each side has its cards whole, and the codes on it open them', async (t) => {
      const sides = await cards(file('cards.html'));
      const exercises = [...new Set(sides.map(({ title }) => title))];
      for (const title of exercises) {
        const found = sides.filter((side) => side.title === title).flatMap((side) => side.cards);
        const wanted = Array.from({ length: lastOf(found[0].exercise) - first + 1 }, (_, at) => first + at);
        assert.deepEqual(found.map(({ number }) => number), wanted, title);
      }
      const printed = sheets('cards.pdf');
      assert.equal(printed.length, sides.length, 'sheets');
      sides.forEach((side, at) => {
        assert.equal(printed[at].replace(bare(side.heading), ''), bare(side.text), `sheet ${at + 1}`);
      });
      sides.forEach((side, at) => {
        if (all || sides[at - 1]?.title !== side.title) {
          assert.deepEqual(codes(file('cards.pdf'), at + 1), side.cards.map((card) => card.code).sort(), `sheet ${at + 1}`);
        }
      });
      const key = await keys(file('key.html'));
      const printedCards = sides.flatMap(({ title, cards }) => cards.map(({ code, number, story, report }) => ({
        code, number, story, report,
        answers: key[title][number].answers, steps: key[title][number].steps.map(({ text }) => text),
      })));
      assert.deepEqual(await open(printedCards.map(({ code }) => code)), printedCards);
      t.diagnostic(`cards ${printedCards.length} of ${exercises.length} exercises of ${of}, on ${sides.length} sides`);
    });

    test('each face of a card comes to the numbers of the key', async (t) => {
      const key = await keys(file('key.html'));
      const printed = (await cards(file('cards.html'))).flatMap(({ title, cards }) => cards
        .filter(({ number }) => number <= first + 49)
        .map(({ code, number, exercise }) => ({ code, anchor: `exercise-${exercise}`, number, ...key[title][number] })));
      const { page, close } = await openCard(printed[0].code);
      t.after(close);
      await page.emulateMedia({ media: 'print' }); // what is shown is what is printed of the page
      const found = await page.evaluate(`${JSON.stringify(printed)}.map(${faces})`);
      await page.emulateMedia({ media: null });
      const faults = found.flatMap(({ faults }, i) => faults.map((fault) => `${printed[i].code}, ${fault}`));
      assert.deepEqual(faults.slice(0, 5), [], `${faults.length} in all`);
      const sum = (what) => found.reduce((total, one) => total + one[what], 0);
      const [answers, worked] = [sum('answers'), sum('lines')];
      assert.ok(answers >= 2 * printed.length && worked >= printed.length, `${answers} answers, ${worked} lines`);
      t.diagnostic(`faces of ${printed.length} cards of ${of}: ${answers} answers and ${worked} lines of work`);
    });

    test('a long name in a story stays in its card', async (t) => {
      const { page, close } = await visit(pathToFileURL(file('cards.html')).href);
      t.after(close);
      const out = await page.evaluate(() => [...document.querySelectorAll('article')].filter((card) => {
        const given = card.querySelector('.story b');
        given.textContent = 'Calcium ammonium nitrate solution with sulfur and some more to its name, 17-0-0-8.8Ca-3S';
        return given.getBoundingClientRect().right > card.getBoundingClientRect().right;
      }).length);
      assert.equal(out, 0);
    });

    test('the key and the sheet have every number', async (t) => {
      const { page, close } = await visit(pathToFileURL(file('key.html')).href);
      t.after(close);
      const rows = await page.locator('tbody tr').allTextContents();
      const key = sheets('key.pdf').join('');
      let at = 0;
      for (const row of rows) {
        at = key.indexOf(bare(row), at);
        assert.ok(at >= 0, `the printed key lacks the row ${row}`);
      }
      let worked = 0;
      for (const line of await page.evaluate(lines)) {
        const wrong = check(line);
        assert.ok(!wrong, `${line.names} ${line.printed}: ${wrong}`);
        worked += wrong === '';
      }
      assert.ok(worked >= (of === 'report' ? 8 : 1), `only ${worked} lines were worked`);
      const sheet = sheets('sign-in.pdf').join('');
      for (let number = first; number <= Math.max(last, ...Object.values(all ?? {})); number++) {
        assert.ok(sheet.includes(number), `the sheet lacks ${number}`);
      }
    });
  });
}

// Thirty cards are printed by one command, above. What follows is the hour itself.
handouts.some(({ folder }) => folder === 'letter') && test('a leader shows two exercises, counts thirty answers and reads off the slips', async (t) => {
  const key = await read(join(settings.handed, 'letter', 'key.html'), () => {
    const section = document.querySelector('section');
    const texts = (from, selector) => [...from.querySelectorAll(selector)].map((one) => one.textContent);
    return {
      rows: [...section.querySelectorAll('tbody tr')].map((row) => ({
        answer: row.querySelector('.part').textContent, slips: texts(row, '.slip'),
      })),
      slips: texts(section, 'dd'),
    };
  });
  const { taps, heard, counts, people } = await lead(browser, `${origin}/workshops/report/leader/`, key);
  const told = counts.replace(/\s+/g, ' ');
  for (const [said, times] of Object.entries(heard)) {
    assert.ok(told.includes(` ${times} ${said}`), `${times} × ${said}: ${told}`);
  }
  assert.match(counts, new RegExp(`: ${heard.Right} of ${people} right`));
  t.diagnostic(`a leader's hour: ${taps.wall} taps for two exercises on the wall, ${taps.tally} for ${people} answers`);
});

// read reads something in a page of a handout.
async function read(name, how) {
  const { page, close } = await visit(pathToFileURL(name).href);
  const found = await page.evaluate(how);
  close();
  return found;
}

// cards reads the sides of the cards from their page.
const cards = (name) => read(name, () => [...document.querySelectorAll('.side')].map((side, at) => ({
  title: side.querySelector('h2').textContent, text: side.textContent,
  heading: at ? '' : document.querySelector('h1').textContent,
  cards: [...side.querySelectorAll('article')].map((card) => ({
    number: +card.querySelector('.number').textContent.match(/\d+/)[0],
    exercise: card.querySelector('.code').href.match(/#card-(.+)-\d+$/)[1],
    story: card.querySelector('.story').textContent,
    report: [...card.querySelectorAll('.report tbody tr')].map((line) => line.textContent), code: card.querySelector('.code').href,
  })),
})));

// keys reads the right answers and the steps of the work, by the title of the exercise and the number of the card.
const keys = (name) => read(name, () => {
  const texts = (heads) => heads
    .map((head) => [head.querySelector('b').textContent, head.querySelector('span')?.textContent]);
  const behind = (cell, unit) => [cell.textContent, unit].filter(Boolean).join(' ');
  return Object.fromEntries([...document.querySelectorAll('section')].map((section) => {
    const cards = {};
    for (const table of section.querySelectorAll('table')) {
      const steps = table.matches('.steps');
      const all = (selector) => [...table.querySelectorAll(selector)];
      const heads = steps ? texts(all('thead th')).slice(1) : texts(all('thead tr:last-child .part'));
      const labels = steps ? heads : texts(all('thead tr:first-child .part'));
      for (const row of table.querySelectorAll('tbody tr')) {
        const card = (cards[row.querySelector('th').textContent] ??= { answers: [], asked: [], steps: [] });
        [...row.querySelectorAll(steps ? 'td' : '.part')].forEach((cell, at) => {
          const one = { label: labels[at][0], text: behind(cell, heads[at][1]) };
          (steps ? card.steps : card.asked).push(one);
          if (!steps) {
            card.answers.push(one.text);
          }
        });
      }
    }
    return [section.querySelector('h2').lastChild.textContent.trim(), cards];
  }));
});

// codes are the addresses in the QR codes of a sheet, from a picture of it.
function codes(pdf, sheet) {
  const picture = join(settings.handed, `sheet-${sheet}`);
  run('pdftoppm', '-r', '150', '-gray', '-png', '-singlefile', '-f', sheet, '-l', sheet, pdf, picture);
  return run('zbarimg', '--quiet', '--raw', `${picture}.png`).trim().split('\n').sort();
}

// openCard opens the page that a code leads to.
async function openCard(code) {
  assert.ok(code.startsWith(address));
  const visitor = await visit(origin + '/' + code.slice(address.length), { width: 390 });
  await visitor.page.waitForFunction(() => document.querySelectorAll('.exercise').length
    && [...document.querySelectorAll('.exercise .card input')].every((one) => !one.readOnly));
  return visitor;
}

// open follows addresses as a phone does, and reads the card that each comes to. The first opens the page.
async function open(list) {
  assert.ok(list.every((code) => code.startsWith(address)));
  const { page, complaints, close } = await openCard(list[0]);
  const found = await page.evaluate(async (codes) => {
    const cards = [];
    for (const code of codes) {
      const { hash } = new URL(code);
      if (hash !== location.hash) {
        const moved = new Promise((resolve) => addEventListener('hashchange', resolve, { once: true }));
        location.hash = hash;
        await moved;
      }
      const exercise = document.getElementById(`exercise-${hash.match(/^#card-(.+)-\d+$/)[1]}`);
      const texts = (selector) => [...exercise.querySelectorAll(selector)].map((one) => one.textContent);
      cards.push({
        code, number: +exercise.querySelector('.card input').value, story: texts('.story')[0],
        report: texts('.report tbody tr'), answers: texts('.solution .key'),
        steps: texts('.asks > .step .mark > .right:first-child .key'),
      });
    }
    return cards;
  }, list);
  close();
  assert.deepEqual(complaints, []);
  return found;
}
