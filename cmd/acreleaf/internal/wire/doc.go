// Package wire is the contract between a printed page and its script: the names of the attributes that the script
// reads, the words that it may ask for, and the data block.
//
// It owns those names and the JSON of the block. The script's types (theme/script/wire.ts) and the list that the check
// reads (cmd/check/internal/pressed/wire.json) are made from it, and its tests see that no side knows a name that
// another does not. It must not know HTML, worksheets or calculations.
package wire
