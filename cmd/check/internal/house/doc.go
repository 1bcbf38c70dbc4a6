// Package house holds the rules of the tree as tests, so that go test ./... keeps them: which package may import
// which, who alone may use a library, that calc does nothing but arithmetic, how long files, functions and lines may
// be, and what no file may hold.
//
// It owns the rules and the tables of what is allowed; a change of the house is a change of a table here. It must not
// be imported: there is nothing in it but tests.
package house
