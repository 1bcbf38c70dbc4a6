// Package rows works one calculation for every row of a CSV file (RFC 4180), such as a list of orchard blocks.
//
// It owns how such a file is cut into cells, which column is which given, and how the answers are put beside each row.
// A row is read, worked and written before the next one is read, so a file may be of any length. The package must do no
// arithmetic of its own, open no files, and never guess: a cell that it cannot read is reported with its line and
// column, its row comes out without answers, and the other rows come out with theirs.
//
// # What comes in
//
// The first row names the columns. A column is a given when its name is that of one, whatever its capitals, spaces and
// underscores: "Bulk density" is bulk-density. A unit may follow in round brackets, as in "nitrate (ppm NO3-N)"; it is
// that of cells that state none. Any other column is carried through, unless its name is so near to that of a given
// nobody gave that it was most likely meant. Cells are parted by commas, or by semicolons or tabs if the first row has
// more of those. A quoted cell may hold line ends. One whose quotation mark is not closed spoils its own line only.
//
// # What comes out
//
// The cells of the row as they came, then a column for each answer, then notes, cautions and fault. The unit of an
// answer is in the name of its column, so that the file can be the input of another calculation. A range is written
// "28 to 42", as it is read. Byte order mark, line ends and separator are those of the input.
//
// A carried cell that begins with = + - or @ is left as it is. A spreadsheet takes it for a formula, as it does in the
// input; to change it would spoil names and negative numbers. No text of ours begins so.
package rows
