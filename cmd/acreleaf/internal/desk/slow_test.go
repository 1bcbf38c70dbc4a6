package desk

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A slow edition begins to be made, and is never done, as when a shared folder does not answer.
type slow struct {
	book.Edition
	begun chan struct{}
	held  <-chan struct{}
}

func (s slow) Common(b *book.Book) ([]book.Part, message.List) {
	close(s.begun)
	<-s.held
	return s.Edition.Common(b)
}

// The desk ends at once when it is told to, also while the first pages are made.
func TestAnEndDoesNotWaitForTheFirstMaking(t *testing.T) {
	var o office
	o.content = filepath.Join(t.TempDir(), "content")
	o.fill(t, goodGuide)
	begun, held := make(chan struct{}), make(chan struct{})
	d := New(Options{Site: book.Options{Name: "content"}, Folder: o.content, Out: &o.out, Err: &o.err})
	d.maker = book.NewMaker(book.Options{Name: "content"}, func(s *book.Settings) book.Edition {
		return slow{site.New(s), begun, held}
	})
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- d.Run(ctx) }()
	defer close(held)
	select {
	case <-begun:
	case <-time.After(patience):
		t.Fatal("nothing is made")
	}
	stop()
	select {
	case err := <-ended:
		if err != nil || o.out.String()+o.err.String() != "" {
			t.Errorf("%v\n%s%s", err, &o.out, &o.err)
		}
	case <-time.After(patience):
		t.Error("the desk waits for its pages")
	}
}
