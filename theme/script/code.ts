// Writes the code of a record. Package record reads it, and says how it is made; both are compared with its cases.

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"; // RFC 4648
const VERSION = "B";
const MORE = 16; // of a letter: another digit follows
const MOST = 2 ** 24 - 1; // of a number
const FIRST_DAY = 20454; // the one that the first day is counted from: January 1, 2026
const MOST_DAY = 4e6;

/** What was done in a lesson: the day on which it was finished, and how many answers were right at the first try. */
export type Done = [day: number, right: number, missed: number];

export const UNFINISHED = -1;

const number = (n: number): string => {
  let rest = Math.min(Math.max(n, 0), MOST);
  let letters = ALPHABET[rest % MORE]!;
  while ((rest = Math.floor(rest / MORE))) {
    letters = ALPHABET[MORE + (rest % MORE)]! + letters;
  }
  return letters;
};

/** The check letters of others: the CRC-24 of RFC 9580. */
const check = (letters: string): string => {
  let crc = 0xb704ce;
  for (const letter of letters) {
    for (let bit = 4; bit >= 0; bit--) {
      const out = (crc >> 23) ^ ((ALPHABET.indexOf(letter) >> bit) & 1);
      crc = ((crc << 1) & 0xffffff) ^ (out && 0x864cfb);
    }
  }
  return [20, 15, 10, 5, 0].map((shift) => ALPHABET[(crc >> shift) & 31]).join("");
};

/** Writes the code of a course, whose own letters the press gives, and of what was done in its lessons. */
export function writeCode(course: string, lessons: Done[]): string {
  let before = FIRST_DAY;
  const numbers = lessons.flatMap(([day, right, missed]) => {
    const on = Math.min(day, MOST_DAY);
    const past = on - before;
    before = day < 0 ? before : on;
    return [day < 0 ? 0 : 1 + (past < 0 ? -2 * past - 1 : 2 * past), right, missed];
  });
  const letters = VERSION + course + numbers.map(number).join("");
  return (letters + check(letters)).replace(/.{5}(?=.)/g, "$&-");
}
