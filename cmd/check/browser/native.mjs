// Native answers, from the program itself.
import { MessageChannel, Worker, receiveMessageOnPort } from 'node:worker_threads';
import { settings } from './settings.mjs';

const known = new Map();

// reckon gives what acreleaf reckon --json prints for a calculation and its givens, as an object: the answers, or
// { error } with the sentence that says why there are none.
export function reckon(calculation, givens) {
  const words = Object.entries(givens).map(([name, value]) => `${name}=${value}`);
  const key = [calculation, ...words].join('\n');
  if (!known.has(key)) {
    known.set(key, JSON.parse(run(['reckon', calculation, ...words, '--json'])));
  }
  return known.get(key);
}

// run gives what the program prints on standard output, of a fault too.
function run(words) {
  const { code, out, err } = ask(words);
  if (code !== 0 && code !== 1) {
    throw new Error(err);
  }
  return out;
}

// ask stands still until the program has answered: a process for each answer would take most of the tests' time.
function ask(words) {
  answers ??= start();
  const before = Atomics.load(answers.signal, 0);
  answers.port.postMessage(words);
  Atomics.wait(answers.signal, 0, before, 20_000);
  const answer = receiveMessageOnPort(answers.port);
  if (!answer) {
    throw new Error(`no answer in 20 seconds to ${words.join(' ')}`);
  }
  return answer.message;
}

let answers;

function start() {
  const { port1: port, port2 } = new MessageChannel();
  const signal = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(new URL('answers.mjs', import.meta.url), {
    workerData: { program: settings.answers, port: port2, signal }, transferList: [port2],
  });
  worker.unref();
  port.unref();
  return { port, signal };
}

// work answers every worksheet of a guide. changes gives other texts for givens, and null for one that is left out:
// { soil: { nitrate: '15 ppm NO3-N', 'bulk-density': null } }. A worksheet that takes a number from one without
// answers has { error } too.
export function work(worksheets, changes = {}) {
  const answers = new Map();
  const answer = (name) => {
    if (!answers.has(name)) {
      answers.set(name, one(name));
    }
    return answers.get(name);
  };
  const one = (name) => {
    const { calculation, givens } = worksheets.get(name);
    const texts = {};
    for (const [given, text] of Object.entries({ ...givens, ...changes[name] })) {
      const [, from, field] = text?.match(/^from ([^.]+)\.(.+)$/) ?? [];
      if (from && answer(from).error) {
        return { error: `${name} waits for ${from}` };
      }
      const taken = from ? value(answer(from), field) : undefined;
      if (from ? taken !== undefined : text !== null) { // an optional given that is left empty is nothing to take
        texts[given] = from ? written(taken) : text;
      }
    }
    return reckon(calculation, texts);
  };
  for (const name of worksheets.keys()) {
    answer(name);
  }
  return answers;
}

// value gives a given or an answer: { value, unit }, of a range { low, high, unit }, of a day { date } or { low, high }.
export function value(answered, name) {
  return answered.answers[name] ?? answered.given[name];
}

// ends gives the two ends of a quantity; of one number, the same twice.
export const ends = ({ value: one, date, low = one ?? date, high = low }) => [low, high];

// written is a given or an answer as the program reads it: a choice is its name.
export function written(quantity) {
  if (typeof quantity === 'string') {
    return quantity;
  }
  const [low, high] = ends(quantity);
  return `${low === high ? low : `${low} to ${high}`} ${quantity.unit ?? ''}`.trim();
}
