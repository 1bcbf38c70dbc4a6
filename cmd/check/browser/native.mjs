// Native answers, from the program itself.
import { execFileSync } from 'node:child_process';
import { settings } from './settings.mjs';

const known = new Map();

// reckon gives what acreleaf reckon --json prints for a calculation and its givens, as an object.
export function reckon(calculation, givens) {
  const words = Object.entries(givens).map(([name, value]) => `${name}=${value}`);
  const key = [calculation, ...words].join('\n');
  if (!known.has(key)) {
    const printed = execFileSync(settings.acreleaf, ['reckon', calculation, ...words, '--json'], { encoding: 'utf8' });
    known.set(key, JSON.parse(printed));
  }
  return known.get(key);
}

// work answers every worksheet of a guide. changes gives other texts for givens: { soil: { nitrate: '15 ppm NO3-N' } }.
export function work(worksheets, changes = {}) {
  const answers = new Map();
  const answer = (name) => {
    if (answers.has(name)) {
      return answers.get(name);
    }
    const { calculation, givens } = worksheets.get(name);
    const texts = Object.entries({ ...givens, ...changes[name] }).map(([given, text]) => {
      const link = text.match(/^from ([^.]+)\.(.+)$/);
      return [given, link ? written(value(answer(link[1]), link[2])) : text];
    });
    answers.set(name, reckon(calculation, Object.fromEntries(texts)));
    return answers.get(name);
  };
  for (const name of worksheets.keys()) {
    answer(name);
  }
  return answers;
}

// value gives { value, unit } of a given or an answer.
export function value(answered, name) {
  return answered.answers[name] ?? answered.given[name];
}

export function written(quantity) {
  return `${quantity.value} ${quantity.unit}`;
}
