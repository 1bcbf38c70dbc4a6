// What cmd/check tells the browser tests, as flags on the command line.
import { parseArgs } from 'node:util';

const flags = {
  chromium: { type: 'string' }, // the browser to start
  site: { type: 'string' }, // the folder of the pressed site
  content: { type: 'string' }, // the folder it was pressed from
  acreleaf: { type: 'string' }, // the built program, and
  answers: { type: 'string' }, // the one that answers for it again and again
  numbers: { type: 'string' }, // the page's number text as one module, and
  vectors: { type: 'string' }, // the numbers that Go and the page must write alike
  codes: { type: 'string' }, // the codes of records that Go and the page must write alike
  parity: { type: 'string' }, // the folder that the program parity wrote, and
  native: { type: 'string' }, // that program itself
  marks: { type: 'string' }, // the program that marks the exercises of a content folder in many ways
  handed: { type: 'string' }, // the folder with the handouts of the demo's workshop
  packets: { type: 'string' }, // the folder with the packets of the demo
  guides: { type: 'string' }, // how many guides the desk is tried with, and
  blocks: { type: 'string' }, // how many random blocks the page about one block is tried with, and
  visits: { type: 'string' }, // of how many of them one is shown by guides
  pictures: { type: 'string' }, // a folder for pictures of it; for looking, without a check
};

export const settings = parseArgs({ options: flags }).values;
