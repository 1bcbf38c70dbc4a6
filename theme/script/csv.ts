// A table as a file that spreadsheets read (RFC 4180).

const NUMBER = /^-?\d+(\.\d+)?$/;
const RUN = /^[=+\-@＝＋－＠]/; // what a spreadsheet takes for a formula

/** One cell. Text that would be run is marked as text, as spreadsheets do it: by an apostrophe. */
function cell(text: string): string {
  const plain = text.replace(/\s+/g, " ").trim();
  return NUMBER.test(plain) ? plain : `"${RUN.test(plain) ? "'" : ""}${plain.replace(/"/g, '""')}"`;
}

/** The text of the file: with a mark for its encoding, without which spreadsheets read accents wrong. */
export const csv = (rows: string[][]): string =>
  "\ufeff" + rows.map((row) => row.map(cell).join(",") + "\r\n").join("");
