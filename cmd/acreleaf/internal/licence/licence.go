// Package licence has the licences of all that the program is made of, word for word.
//
// It owns that text, which its test makes from the modules that are linked in and from Go itself, and compares with
// them: go test ./cmd/acreleaf/internal/licence -update. It must not know who prints it.
package licence

import _ "embed"

// Text is the licences, one after another, each under the name and the version of what it is for.
//
//go:embed licences.txt
var Text string
