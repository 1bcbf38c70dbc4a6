// Runs inside Chromium. Works one program on the same inputs as the native side and gives the first input whose
// outputs differ in any bit; null when none does. cmd/check/parity/draw.go is its twin.

export async function compare({ name, seed, reads, writes, module, sums }) {
  const [bytes, expected] = await Promise.all([module, sums].map(async (file) => (await fetch(file)).arrayBuffer()));
  const { instance } = await WebAssembly.instantiate(bytes);
  const cells = new Float64Array(instance.exports.m.buffer);
  const words = new Uint32Array(instance.exports.m.buffer);
  const wanted = new Uint32Array(expected);
  const random = draw(seed);
  let numbers = 0;
  for (let input = 0; input < wanted.length / 2; input++) {
    reads.forEach((cell) => random.fill(cells, words, cell));
    const given = reads.map((cell) => cells[cell]);
    instance.exports.r();
    const [a, b] = hash(words, writes);
    if (a !== wanted[2 * input] || b !== wanted[2 * input + 1]) {
      const got = writes.map((cell) => show(words, cells, cell));
      return { difference: { name, input, given: given.map(String), got } };
    }
    numbers += writes.filter((cell) => !Number.isNaN(cells[cell])).length;
  }
  return { numbers, runs: wanted.length / 2 };
}

const special = [
  [0, 0], [0, 0x80000000], [0, 0x3ff00000], [0, 0xbff00000], [0, 0x3fe00000], [0, 0x40040000], [0, 0x7ff00000],
  [0, 0xfff00000], [0, 0x7ff80000], [0xffffffff, 0x7fefffff], [1, 0], [0, 0x00100000], [1, 0x43400000],
];

function draw(seed) {
  let state = seed;
  const word = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state;
  };
  return {
    fill(cells, words, cell) {
      switch (word() % 10) {
        case 0:
          words[2 * cell] = word();
          words[2 * cell + 1] = word();
          break;
        case 1:
          [words[2 * cell], words[2 * cell + 1]] = special[word() % special.length];
          break;
        case 2:
        case 3:
          cells[cell] = word() % 6;
          break;
        default:
          cells[cell] = (word() % 200_000) / 1000;
      }
    },
  };
}

// An order-sensitive hash of the bits, every NaN counting as the same one.
export function hash(words, writes) {
  let a = 0x811c9dc5;
  let b = 0x9e3779b9;
  const add = (word) => {
    a = Math.imul(a ^ word, 0x01000193);
    a ^= a >>> 15;
    b = Math.imul(b + word, 0x85ebca6b);
    b ^= b >>> 13;
  };
  for (const cell of writes) {
    const low = words[2 * cell];
    const high = words[2 * cell + 1];
    const nan = (high & 0x7fffffff) > 0x7ff00000 || ((high & 0x7fffffff) === 0x7ff00000 && low !== 0);
    add(nan ? 0 : low);
    add(nan ? 0x7ff80000 : high);
  }
  return [a >>> 0, b >>> 0];
}

function show(words, cells, cell) {
  const hex = (word) => word.toString(16).padStart(8, '0');
  return `cell ${cell}: ${cells[cell]} ${hex(words[2 * cell + 1])}${hex(words[2 * cell])}`;
}
