// Blocks for the tests of the page about one block: random ones, typed into its form, and what the program answers.
import { value, work } from './native.mjs';

// randomBlock gives what is known of a block, by the fields of the form: what is typed, its unit, and how the program is
// given it. "" is left empty.
export function randomBlock(random) {
  const some = (low, high) => Number((low + random() * (high - low)).toPrecision(2 + Math.floor(random() * 2)));
  const number = (low, high) => {
    const two = [some(low, high), some(low, high)].sort((a, b) => a - b);
    return random() < 0.1 && two[0] < two[1] ? `${two[0]} to ${two[1]}` : `${two[0]}`;
  };
  const whole = (low, high) => `${low + Math.floor(random() * (high - low + 1))}`;
  const maybe = (share, text) => (random() < share ? text : '');
  const [crop, name] = [['walnut', 'Walnut'], ['almond', 'Almond'], ['pistachio', 'Pistachio'], ['pecan', 'Pecan'],
    ['hazelnut', 'Hazelnut']][Math.floor(random() * 5)];
  const leaf = whole(1, 7);
  const acres = number(1, 80);
  const material = random() < 0.3 ? 'UAN-32' : '15-15-15';
  return {
    'need-crop': [name, '', crop], 'feeds-material': [material],
    'need-leaf': [leaf], 'spacing-tree': [number(14, 26), 'ft'], 'spacing-row': [number(16, 30), 'ft'],
    'trees-count': [maybe(0.3, `${Math.round(Number.parseFloat(acres) * (60 + random() * 80))}`), 'trees'],
    'trees-acres': [acres, 'ac'],
    'need-rate': [maybe(leaf === '1' ? 0.95 : 0.5, number(2, 4)), 'oz N/tree fed'],
    'need-yield': [maybe(0.6, whole(200, 3000)), 'lb/ac'], 'need-efficiency': [number(50, 80), '%'],
    'soil-nitrate': [number(0, 30), 'ppm NO3-N'], 'soil-depth': [number(6, 24), 'in'],
    'budget-reach': [number(1, 10), '%'],
    'well-nitrate': [number(0, 12), 'ppm NO3-N'], 'emitters-known': [maybe(0.5, number(1, 12)), 'in'],
    'emitters-emitters': [number(1, 4), 'emitters/tree'], 'emitters-flow': [number(0.5, 2), 'gal/h per emitter'],
    'emitters-hours': [number(200, 1500), 'h'],
  };
}

// single gives a block of single numbers.
export const single = (block) => Object.fromEntries(Object.entries(block).map(([id, [text, ...rest]]) => (
  [id, [text.replace(/ to .*/, ''), ...rest]])));

// generator gives the same numbers from 0 to 1 for the same seed.
export function generator(seed) {
  let state = seed * 2654435761 % 4294967296;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

// type puts a block into the form, in the page, and reads the answers. What is chosen goes first: some numbers belong to
// it. It runs in the page.
export function type(block) {
  const changed = () => document.getElementById('spacing-tree').dispatchEvent(new Event('input', { bubbles: true }));
  const entries = Object.entries(block).map(([id, [text]]) => [document.getElementById(id), text]);
  for (const [element, text] of entries.filter(([{ localName }]) => localName === 'select')) {
    element.selectedIndex = [...element.options].findIndex((option) => option.text.includes(text));
  }
  changed();
  for (const [element, text] of entries.filter(([{ localName }]) => localName !== 'select')) {
    element.value = text;
  }
  changed();
  const rows = [...document.querySelectorAll('[data-fact]:not(.field)')];
  return Object.fromEntries([
    ...rows.map((row) => [row.dataset.fact, row.querySelector('b').textContent]),
    ['all', document.querySelector('#worksheet-whole .answer b').textContent],
  ]);
}

// changesOf gives a block as changes of the worksheets, each number at a share of its range; without a share as it is.
export function changesOf(block, share) {
  const changes = {};
  for (const [id, [text, unit = '', name = text]] of Object.entries(block)) {
    const [use, given] = id.split(/-(.*)/);
    const one = share === undefined ? name : name.replace(/^(.*) to (\S+)/, (_, low, high) => (
      `${Number(low) + share * (Number(high) - Number(low))}`));
    changes[use] = { ...changes[use], [given]: one === '' ? null : `${one} ${unit}`.trim() };
  }
  return changes;
}

// Answers that are facts of the block, by their ids: which worksheet of its page has them.
export const asked = [['trees-an-acre', 'trees', 'trees'], ['rate', 'need', 'season'], ['need', 'need', 'nitrogen'],
  ['in-soil', 'soil', 'nitrogen'], ['well-water', 'emitters', 'depth'], ['in-water', 'well', 'nitrogen'],
  ['to-buy', 'budget', 'apply'], ['feeds', 'feeds', 'feeds'], ['feed-of-a-tree', 'feeds', 'each'],
  ['feed', 'feeds', 'each-acre'], ['feed-of-material', 'feeds', 'product'], ['all', 'whole', 'all']];

// Which facts the givens of the guides stand for. The page has a list of its own.
const standsFor = {
  'tree-rate.rate': 'rate', 'tree-rate.trees': 'trees-an-acre', 'soil-nitrogen.nitrate': 'soil-nitrate',
  'soil-nitrogen.depth': 'soil-depth', 'season-budget.soil': 'in-soil', 'season-budget.water': 'in-water',
  'season-budget.need': 'need', 'season-budget.reach': 'budget-reach', 'water-nitrogen.nitrate': 'well-nitrate',
  'water-nitrogen.water': 'well-water', 'feed-schedule.leaf': 'need-leaf', 'feed-schedule.material': 'feeds-material',
  'tree-rate.leaf': 'need-leaf', 'injection.nitrogen': 'feed', 'injection.acres': 'trees-acres',
  'injection.material': 'feeds-material', 'feed-schedule.trees': 'trees-an-acre',
};

// guideAnswers gives what the program answers for the worksheets of a guide with the numbers of a block, of which
// answers are those of its own page.
export function guideAnswers(guide, block, answers) {
  const known = (id) => {
    if (block[id]) {
      const [text, unit = '', name = text] = block[id];
      return `${name} ${unit}`.trim();
    }
    const [, use, name] = asked.find(([fact]) => fact === id);
    const { value: number, unit = '' } = value(answers.get(use), name);
    return `${number} ${unit}`.trim();
  };
  const changes = {};
  let soil;
  for (const [use, { calculation, givens }] of guide.worksheets) {
    for (const [given, text] of Object.entries(givens)) {
      const id = standsFor[`${calculation}.${given}`];
      soil ??= id?.startsWith('soil-') ? use : undefined; // another worksheet of soil may be of another layer
      if (id && !text.startsWith('from ') && (!id.startsWith('soil-') || soil === use)) {
        changes[use] = { ...changes[use], [given]: known(id) };
      }
    }
  }
  return work(guide.worksheets, changes);
}
