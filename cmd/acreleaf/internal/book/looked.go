package book

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"

	"acreleaf/cmd/acreleaf/internal/media"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A looked is what was found in a file that pages show or link to. Just the bytes that were looked at are published.
type looked struct {
	sum    [sha256.Size]byte
	said   message.List
	advice message.List
}

// checkFiles looks into every file that a page shows or links to.
func (p *press) checkFiles() {
	names := *p.used
	found := make([]*looked, len(names))
	each(len(names), func(i int) {
		if found[i] = p.whole.looked[names[i]]; found[i] == nil {
			found[i] = p.lookInto(names[i])
		}
	})
	p.whole.looked = make(map[string]*looked, len(names))
	for i, name := range names {
		p.whole.looked[name] = found[i]
		p.say(found[i].said)
		if p.rules.Advice {
			p.say(found[i].advice)
		}
	}
}

// lookInto compares a file with what its kind may be. Only of a drawing all is in memory at once.
func (p *press) lookInto(name string) *looked {
	l := new(looked)
	kind, _ := media.Of(name) // no link leads to a file of another kind
	source := &message.Source{Name: p.options.called(name)}
	file, err := p.options.Content.Open(name)
	if err != nil {
		return &looked{said: message.List{p.uncopied(name, err)}}
	}
	defer func() { _ = file.Close() }() // it was only read
	h := sha256.New()
	limited := io.TeeReader(io.LimitReader(file, kind.Most+1), h)
	var damage message.List
	head, err := io.ReadAll(io.LimitReader(limited, media.Head))
	size := int64(len(head))
	if err == nil && kind.IsSVG() {
		var rest []byte
		rest, err = io.ReadAll(limited)
		size += int64(len(rest))
		source.Text = bytes.Join([][]byte{head, rest}, nil)
	} else if err == nil {
		rest := &counting{Reader: limited}
		damage, err = kind.CheckWhole(io.MultiReader(bytes.NewReader(head), rest))
		size += rest.read
	}
	switch {
	case err != nil:
		l.said = message.List{p.uncopied(name, err)}
	case size > kind.Most:
		source.Text = nil
		l.said = message.List{kind.TooLarge()}
	case kind.IsSVG():
		l.said = media.CheckSVG(source)
	default:
		if l.said = kind.CheckHead(head); len(l.said) == 0 {
			l.said = damage
		}
	}
	l.advice = kind.IsHeavy(size)
	for _, list := range []message.List{l.said, l.advice} {
		for i := range list {
			list[i].Source = source
		}
	}
	if len(l.said) == 0 {
		source.Text = nil // no message shows a line of it
	}
	l.sum = [sha256.Size]byte(h.Sum(nil))
	return l
}

// A counting reader counts the bytes that were read.
type counting struct {
	io.Reader
	read int64
}

func (c *counting) Read(p []byte) (int, error) {
	n, err := c.Reader.Read(p)
	c.read += int64(n)
	return n, err
}

// uncopied reports a file that cannot become part of the book.
func (p *press) uncopied(name string, err error) message.Message {
	return message.Message{ID: "file-unreadable", Text: fmt.Sprintf("%s cannot be read: %v",
		p.options.called(name), cause(err)), Note: "see that you may read it, or move it out of the content folder"}
}
