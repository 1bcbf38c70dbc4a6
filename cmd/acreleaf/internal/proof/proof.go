// Package proof checks what a proof-reader and a second calculator would check, without making a site: every worked
// figure against its worksheet, every sourced figure against the bibliography, links and anchors, units, names.
//
// It owns the account of what was checked. The checks themselves stand with what they check: worksheet, markdown,
// page and site.
package proof

import (
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/site"
)

// A Reading is what a proof found.
type Reading struct {
	Messages               message.List
	Pages, Worked, Sourced int // how many pages and figures were read
}

// Read proofs a content folder.
func Read(o site.Options) Reading {
	checked := site.Check(o)
	return Reading{
		Messages: checked.Messages, Pages: checked.Pages, Worked: checked.Worked, Sourced: checked.Sourced,
	}
}
