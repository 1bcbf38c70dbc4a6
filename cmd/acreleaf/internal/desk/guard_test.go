package desk

import (
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A fragile edition is a site on which the program fails while it is to.
type fragile struct {
	book.Edition
	fails *bool
}

func (f fragile) Common(b *book.Book) ([]book.Part, message.List) {
	if *f.fails {
		panic("planted")
	}
	return f.Edition.Common(b)
}

// When the program fails, the desk says where on the screen and in the browser, and goes on: the next save is seen, and
// a good site that it has stays up. What a failure on a page says of the page, the tests of the maker hold.
func TestAPanicIsToldAtTheDesk(t *testing.T) {
	var o office
	o.content = filepath.Join(t.TempDir(), "content")
	o.fill(t, goodGuide)
	fails := true
	d := New(Options{Site: book.Options{Name: "content"}, Folder: o.content, Out: &o.out, Err: &o.err})
	t.Cleanup(d.closeRoot)
	d.maker = book.NewMaker(book.Options{Name: "content"}, func(s *book.Settings) book.Edition {
		return fragile{site.New(s), &fails}
	})
	shown := func() string {
		r := httptest.NewRecorder()
		ask := httptest.NewRequest("GET", "/guides/soil/", nil)
		ask.Host = "localhost"
		d.Handler().ServeHTTP(r, ask)
		return r.Body.String()
	}
	const told = "the program failed between the pages: planted (desk.fragile.Common, line "
	d.remake(book.Changes{Everything: true})
	if !strings.Contains(o.err.String(), "error: "+told) || !strings.Contains(shown(), told) {
		t.Errorf("the screen shows\n%s\nand the browser\n%s", &o.err, shown())
	}
	fails = false
	o.save(t, goodGuide)
	d.follow(book.Changes{Names: []string{"guides/soil.md"}})
	if page := shown(); !strings.Contains(page, "Deep.") {
		t.Errorf("the browser shows\n%s", page)
	}
	fails = true
	save(t, filepath.Join(o.content, "guides", "new.md"), strings.Replace(guideHead, "Soil", "New", 1))
	d.follow(book.Changes{Names: []string{"guides/new.md"}})
	if page := shown(); !strings.Contains(page, "Deep.") || strings.Count(o.err.String(), told) != 2 {
		t.Errorf("the browser shows\n%s\nthe screen shows\n%s", page, &o.err)
	}
}
