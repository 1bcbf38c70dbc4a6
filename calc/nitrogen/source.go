package nitrogen

import "embed"

// Files is the source of this package, so that a page can show the code behind an answer. Only the subject files are
// wanted; tests are left out by their names when they are looked up.
//
//go:embed *.go
var Files embed.FS
