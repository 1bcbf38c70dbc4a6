// Package theme holds what a page is made of besides its text: the page templates, the style sheets and the
// interface words, each a folder of plain files, embedded so that one downloaded binary is the whole tool.
//
// It owns no logic. It must not read, parse or change a file: package render parses page and words, package
// assets bundles style and script.
package theme

import "embed"

// Files holds the folders book, page, script, style and words under those names.
//
//go:embed book page script style words
var Files embed.FS
