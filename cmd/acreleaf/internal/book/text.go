package book

import (
	"sync/atomic"

	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
)

// mostText is how many bytes of text a press keeps from when the pages are read until they are worked. The other pages
// of a large site are read again: their text would be half of the memory that the press takes.
const mostText = 128 << 20

// A textRoom is what is left of that. A nil one keeps all texts, as a desk does.
type textRoom struct{ left atomic.Int64 }

func newTextRoom(bytes int64) *textRoom {
	r := new(textRoom)
	r.left.Store(bytes)
	return r
}

// rest lets go of the text of a page, if there is no room for it. A message in a page needs its text.
func (r *textRoom) rest(d *draft) {
	if r == nil || len(d.read) > 0 || r.left.Add(-int64(len(d.source.Text))) >= 0 {
		return
	}
	d.resting, d.source.Text = hashOf(d.source.Text), nil
}

// parse parses the text of a page, which is read again if it was let go.
func (p *press) parse(d *draft) {
	if d.doc == nil && d.resting != 0 && d.source.Text == nil {
		again, said := page.Load(p.options.Content, d.name)
		if hashOf(again.Text) != d.resting {
			said = append(said, message.Changing(d.source))
			_, d.start, _ = page.Split(again)
		}
		d.source.Text = again.Text
		d.read = append(d.read, said...)
	}
	d.parse()
}
