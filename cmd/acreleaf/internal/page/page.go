// Package page knows where pages are and what their metadata says, not what is in them.
//
// It owns page metadata, the addresses that file names give, links between addresses, the order of pages and their
// languages. It must not read Markdown, and it does not decide how a page looks.
package page

import (
	"io/fs"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Load reads the text of a page. A file over message.MaxSize is refused by its size before it is read; text that is
// not UTF-8 and NUL bytes are faults with the place of the first. The source is never nil.
func Load(fsys fs.FS, name string) (*message.Source, message.List) { return message.Load(fsys, name) }
