package book

import (
	"crypto/sha256"
	"io/fs"
	"maps"
	"slices"

	"acreleaf/cmd/acreleaf/internal/memo"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// A whole is what an edition made of the whole book. It stays through a press that stops at a fault.
type whole struct {
	book    *Book // of the last whole edition
	edition memo.Result[*Settings, Edition]
	checked memo.Result[checkedFrom, message.List]
	common  memo.Result[*Book, common]
	looked  map[string]*looked // the files of the content folder that pages show or link to
	copied  map[string][]byte  // those whose bytes are kept
}

// A common is the files that are of no page alone.
type common struct {
	copies []Part
	files  []File // that are made
	said   message.List
}

// finish makes the files of the pages that show something of others, and what else is left.
func (p *press) finish() (made []File) {
	p.whole.book = p.book
	each(len(p.pages), func(i int) {
		d := p.pages[i]
		d.guarded(func() {
			if !p.stands(d) {
				p.finishPage(d)
			}
		})
		d.rest()
	})
	for _, d := range p.pages {
		if d.failed != nil {
			p.say(d.failed)
			continue
		}
		p.say(d.set.said)
		made = append(made, d.set.files...)
	}
	if p.out.once() {
		p.keepBook()
	}
	c := p.whole.common.Get(p.book, p.makeCommon)
	if p.say(c.said); message.HasFault(c.said) {
		p.whole.common = memo.Result[*Book, common]{} // what it failed on need not be in the book
	}
	return slices.Concat(made, c.files, p.copies(c.copies))
}

// makeCommon makes the files that are of no page alone.
func (p *press) makeCommon() common {
	var c common
	parts, said := p.edition().Common(p.book)
	var made []Part
	for _, part := range parts {
		if part.Copies != "" {
			c.copies = append(c.copies, part)
		} else {
			made = append(made, part)
		}
	}
	c.files = make([]File, len(made))
	failed := make([]message.List, len(made))
	each(len(made), func(i int) { // to color the code of calculations is a quarter of the time that a small site takes
		part := made[i]
		if f := guard(func() {
			c.files[i] = p.out.take(output.File{Path: part.Path, Bytes: part.Make()}, part.Make)
		}); f != nil {
			failed[i] = f.on(&message.Source{Name: part.Path})
		}
	})
	c.said = append(said, slices.Concat(failed...)...)
	return c
}

// forget lets go of the files that were read and may have changed.
func (w *whole) forget(c changes) {
	maps.DeleteFunc(w.looked, func(name string, _ *looked) bool { return c.stale(name) })
	maps.DeleteFunc(w.copied, func(name string, _ []byte) bool { return c.stale(name) })
}

// copies are files of the content folder as they are.
func (p *press) copies(parts []Part) []File {
	var files []File
	copied := map[string][]byte{}
	for _, part := range parts {
		content, err := p.copyOf(part.Copies)
		if err != nil {
			p.say(message.List{p.uncopied(part.Copies, err)})
			continue
		}
		if l := p.whole.looked[part.Copies]; l != nil && l.sum != sha256.Sum256(content) {
			p.say(message.List{message.Changing(&message.Source{Name: p.options.called(part.Copies)})})
			continue
		}
		files = append(files, p.out.take(output.File{Path: part.Path, Bytes: content}, func() []byte { return content }))
		if !p.out.once() {
			copied[part.Copies] = content
		}
	}
	p.whole.copied = copied
	return files
}

// copyOf reads a file, if it was not read before or may have changed.
func (p *press) copyOf(name string) ([]byte, error) {
	if content, kept := p.whole.copied[name]; kept {
		return content, nil
	}
	return fs.ReadFile(p.options.Content, name)
}
