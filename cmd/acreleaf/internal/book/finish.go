package book

import (
	"fmt"
	"io/fs"
	"slices"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// A finished is what Finish gives.
type finished struct {
	book   *Book // of the last whole edition
	common *common
	copied map[string][]byte // the files of the content folder that were read
	made   []File            // the whole edition
}

// A common is the files that are of no page alone, with the book that they are made from.
type common struct {
	book   *Book
	copies []Part
	files  []File // that are made
}

// finish makes the files of the pages that show something of others, and what else is left.
func (p *press) finish() {
	p.book = p.now
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
		if d.failed {
			p.say(d.said.failing)
			continue
		}
		p.say(d.set.said)
		p.made = append(p.made, d.set.files...)
	}
	if p.common == nil || p.common.book != p.book {
		p.common = p.makeCommon()
	}
	if p.common != nil {
		p.made = append(p.made, p.common.files...)
		p.made = append(p.made, p.copies(p.common.copies)...)
	}
}

// makeCommon makes the files that are of no page alone. It gives nil when the program fails on one.
func (p *press) makeCommon() *common {
	var parts []Part
	if failed := guard(&message.Source{Name: p.options.Name}, func() {
		listed, said := p.edition.Common(p.book)
		parts = listed
		p.say(said)
	}); failed != nil {
		p.say(failed)
		return nil
	}
	c := &common{book: p.book}
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
		failed[i] = guard(&message.Source{Name: part.Path}, func() {
			c.files[i] = p.out.take(output.File{Path: part.Path, Bytes: part.Make()}, part.Make)
		})
	})
	if failed := slices.Concat(failed...); len(failed) > 0 {
		p.say(failed)
		return nil
	}
	return c
}

// copies are files of the content folder as they are.
func (p *press) copies(parts []Part) []File {
	var files []File
	copied := map[string][]byte{}
	for _, part := range parts {
		content, err := p.copyOf(part.Copies)
		if err != nil {
			p.say(message.List{{ID: "file-unreadable", Text: fmt.Sprintf("%s cannot be read: %v",
				p.options.called(part.Copies), cause(err)),
				Note: "see that you may read it, or move it out of the content folder"}})
			continue
		}
		files = append(files, p.out.take(output.File{Path: part.Path, Bytes: content}, func() []byte { return content }))
		if !p.out.once() {
			copied[part.Copies] = content
		}
	}
	p.copied = copied
	return files
}

// copyOf reads a file, if it was not read before or may have changed.
func (p *press) copyOf(name string) ([]byte, error) {
	if content, kept := p.copied[name]; kept {
		return content, nil
	}
	return fs.ReadFile(p.options.Content, name)
}
