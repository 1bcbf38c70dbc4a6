// The QR code of a text: bytes, with the middle one of the first two corrections, up to a size that a telephone reads
// well on paper (ISO/IEC 18004). Package qrcode gives the same modules, and both are compared on its list of texts.

const LARGEST = 20; // of the 40 versions: 97 modules a side, for 666 bytes
const CORRECTION = [10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26]; // codewords of a block, by version
const BLOCKS = [1, 1, 1, 2, 2, 4, 4, 4, 5, 5, 5, 8, 9, 9, 10, 10, 11, 13, 14, 16];

/** A code: its modules row by row, each 1 where it is dark. */
export interface Code {
  size: number;
  dark: Uint8Array;
}

/** A code that is being made, and which of its modules are taken: those of its patterns. */
interface Grid extends Code {
  taken: Uint8Array;
}

/** The eight masks: where they turn a module over. */
const MASKS: ((x: number, y: number) => number)[] = [
  (x, y) => (x + y) % 2,
  (_, y) => y % 2,
  (x) => x % 3,
  (x, y) => (x + y) % 3,
  (x, y) => ((x / 3 | 0) + (y / 2 | 0)) % 2,
  (x, y) => (x * y) % 2 + (x * y) % 3,
  (x, y) => ((x * y) % 2 + (x * y) % 3) % 2,
  (x, y) => ((x + y) % 2 + (x * y) % 3) % 2,
];

/** Gives the code of a text; null where it has more bytes than the largest one holds. */
export function codeOf(text: string): Code | null {
  const bytes = new TextEncoder().encode(text);
  for (let version = 1; version <= LARGEST; version++) {
    const grid = makeGrid(version);
    const all = grid.taken.filter((taken) => !taken).length >> 3; // codewords
    const [blocks, each] = [BLOCKS[version - 1]!, CORRECTION[version - 1]!];
    const room = all - blocks * each;
    const lengthBits = version < 10 ? 8 : 16;
    if (4 + lengthBits + 8 * bytes.length <= 8 * room) {
      place(grid, interleave(codewords(bytes, lengthBits, room), all, blocks, each));
      return masked(grid);
    }
  }
  return null;
}

/** The bytes behind their mode and their number, filled up. */
function codewords(bytes: Uint8Array, lengthBits: number, room: number): number[] {
  const list = [4, ...(lengthBits > 8 ? [bytes.length >> 12, (bytes.length >> 8) & 15] : []), (bytes.length >> 4) & 15,
    bytes.length & 15, ...[...bytes].flatMap((byte) => [byte >> 4, byte & 15]), 0]; // four bits each
  const words: number[] = [];
  for (let i = 0; words.length < room; i += 2) {
    words.push(i < list.length ? (list[i]! << 4) | list[i + 1]! : (i - list.length) & 2 ? 0x11 : 0xec);
  }
  return words;
}

/** Parts codewords into blocks, gives each its correction, and puts one of each block after the other. */
function interleave(words: number[], all: number, blocks: number, each: number): number[] {
  const short = Math.floor(all / blocks) - each; // codewords of a short block; the last ones have one more
  const generator = generatorOf(each);
  const parts: number[][] = [];
  for (let i = 0, at = 0; i < blocks; i++) {
    const length = short + (i >= blocks - (all % blocks) ? 1 : 0);
    parts.push(words.slice(at, (at += length)));
  }
  const corrections = parts.map((part) => remainder(part, generator));
  const turns = (lists: number[][], most: number) =>
    Array.from({ length: most }, (_, i) => lists.flatMap((list) => (i < list.length ? [list[i]!] : []))).flat();
  return [...turns(parts, short + 1), ...turns(corrections, each)];
}

/** The product of two elements of the field of 256, whose polynomial is 0x11d. */
function times(a: number, b: number): number {
  let product = 0;
  for (; b; b >>= 1) {
    product ^= b & 1 && a;
    a = (a << 1) ^ (a > 127 ? 0x11d : 0);
  }
  return product;
}

/** The polynomial whose roots are the first powers of 2, without its leading 1. */
function generatorOf(degree: number): number[] {
  let generator = [1];
  for (let i = 0, root = 1; i < degree; i++, root = times(root, 2)) {
    generator = [...generator, 0].map((factor, at) => factor ^ (at && times(generator[at - 1]!, root)));
  }
  return generator.slice(1);
}

/** What is left of a block that is divided by the generator. */
function remainder(words: number[], generator: number[]): number[] {
  let rest = generator.map(() => 0);
  for (const word of words) {
    const lead = word ^ rest[0]!;
    rest = generator.map((factor, i) => times(factor, lead) ^ (rest[i + 1] ?? 0));
  }
  return rest;
}

/** The patterns of a version, and room for the format. */
function makeGrid(version: number): Grid {
  const size = 4 * version + 17;
  const grid: Grid = { size, dark: new Uint8Array(size * size), taken: new Uint8Array(size * size) };
  const put = (x: number, y: number, dark: boolean) => {
    if (x >= 0 && y >= 0 && x < size && y < size) {
      grid.dark[y * size + x] = +dark;
      grid.taken[y * size + x] = 1;
    }
  };
  /** Squares in each other around a place, dark but for some. */
  const squares = (x: number, y: number, most: number, light: number[]) => {
    for (let dy = -most; dy <= most; dy++) {
      for (let dx = -most; dx <= most; dx++) {
        put(x + dx, y + dy, !light.includes(Math.max(Math.abs(dx), Math.abs(dy))));
      }
    }
  };
  for (let i = 0; i < size; i++) {
    put(i, 6, i % 2 === 0);
    put(6, i, i % 2 === 0);
  }
  const places = alignment(version);
  const last = places[0]!;
  for (const x of places) {
    for (const y of places) {
      // Three of the corners have a larger pattern.
      if (!(x === 6 && (y === 6 || y === last)) && !(y === 6 && x === last)) {
        squares(x, y, 2, [1]);
      }
    }
  }
  [[3, 3], [size - 4, 3], [3, size - 4]].forEach(([x, y]) => squares(x!, y!, 4, [2, 4]));
  for (let i = 0; version > 6 && i < 18; i++) {
    const dark = !!((version << 12 | checked(version, 12, 0x1f25)) >> i & 1);
    put(size - 11 + i % 3, i / 3 | 0, dark);
    put(i / 3 | 0, size - 11 + i % 3, dark);
  }
  format(grid, 0);
  return grid;
}

/** Where the small patterns are, in both directions: evenly apart from the far side, and at 6. */
function alignment(version: number): number[] {
  const last = 4 * version + 10;
  const gaps = Math.floor(version / 7) + 1;
  const apart = 2 * Math.ceil((last - 6) / gaps / 2);
  return version < 2 ? [6] : [...Array.from({ length: gaps }, (_, i) => last - i * apart), 6];
}

/** The bits that check a number: what is left when it is divided by a polynomial. */
function checked(number: number, bits: number, polynomial: number): number {
  let rest = number;
  for (let i = 0; i < bits; i++) {
    rest = (rest << 1) ^ (rest >> (bits - 1) ? polynomial : 0);
  }
  return rest;
}

/** Writes twice which mask there is, with the correction (its bits are 00), beside the large patterns. */
function format({ size, dark, taken }: Grid, mask: number): void {
  const bits = (mask << 10 | checked(mask, 10, 0x537)) ^ 0x5412;
  const put = (x: number, y: number, value: number) => {
    dark[y * size + x] = value & 1;
    taken[y * size + x] = 1;
  };
  for (let i = 0; i < 15; i++) {
    const along = i < 6 ? i : i < 8 ? i + 1 : size - 15 + i;
    put(8, along, bits >> i);
    put(i < 8 ? size - 1 - i : i < 9 ? 7 : 14 - i, 8, bits >> i);
  }
  put(8, size - 8, 1);
}

/** Puts the bits of the codewords into the free modules: two columns at a time, up and down, from the right. */
function place({ size, dark, taken }: Grid, words: number[]): void {
  let at = 0;
  for (let right = size - 1, up = true; right > 0; right -= right === 8 ? 3 : 2, up = !up) {
    for (let i = 0; i < size; i++) {
      for (const x of [right, right - 1]) {
        const module = (up ? size - 1 - i : i) * size + x;
        if (!taken[module]) {
          dark[module] = (words[at >> 3] ?? 0) >> (7 - (at & 7)) & 1;
          at++;
        }
      }
    }
  }
}

/** The code under the mask that leaves the least of what confuses a reader. */
function masked(grid: Grid): Code {
  let [best, least] = [grid as Code, Infinity];
  MASKS.forEach((turns, mask) => {
    const { size, taken } = grid;
    const dark = grid.dark.map((value, i) => value ^ +(!taken[i] && !turns(i % size, i / size | 0)));
    format({ size, dark, taken }, mask);
    const points = penalty(size, dark);
    if (points < least) {
      [best, least] = [{ size, dark }, points];
    }
  });
  return best;
}

function penalty(size: number, dark: Uint8Array): number {
  let points = 0;
  let sum = 0;
  for (let i = 0; i < size; i++) {
    points += linePenalty(dark, size, i * size, 1) + linePenalty(dark, size, i, size);
  }
  for (let at = 0; at < dark.length; at++) {
    sum += dark[at]!;
    if (dark[at] === dark[at + 1] && dark[at] === dark[at + size] && dark[at] === dark[at + size + 1] && (at + 1) % size) {
      points += 3;
    }
  }
  return points + 10 * (Math.ceil(Math.abs(20 * sum - 10 * dark.length) / dark.length) - 1);
}

/** Of one row or column: five or more of a kind, and what looks like a large pattern beside a light margin. */
function linePenalty(dark: Uint8Array, size: number, start: number, step: number): number {
  const runs = [0]; // light and dark in turn
  let points = 0;
  for (let i = 0, last = 0; i < size; i++) {
    const value = dark[start + i * step]!;
    if (value !== last) {
      runs.push(0);
      last = value;
    }
    const run = ++runs[runs.length - 1]!;
    points += run > 5 ? 1 : run === 5 ? 3 : 0;
  }
  if (runs.length % 2 === 0) {
    runs.push(0);
  }
  runs[0]! += size; // the margin around the code is light
  runs[runs.length - 1]! += size;
  for (let i = 6; i < runs.length; i += 2) {
    const [before, after, one] = [runs[i - 6]!, runs[i]!, runs[i - 1]!];
    if (runs[i - 3] === 3 * one && [2, 4, 5].every((back) => runs[i - back] === one)) {
      points += 40 * (+(before >= 4 * one && after >= one) + +(after >= 4 * one && before >= one));
    }
  }
  return points;
}
