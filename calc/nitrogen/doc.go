// Package nitrogen holds the nitrogen calculations of a young orchard, a subject a file. Each one is a sheet with the
// source of every constant, how sure it is, the cautions that go with the answer, and the known slips.
//
// It owns the agronomy; the words are in calc/words. It must not read files, know of pages, or do arithmetic outside a
// sheet: what is not in a sheet is not shown to the reader and not checked for dimensions.
package nitrogen
