package desk

import (
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/book"
	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/output"
)

// A fragile edition is a site that fails on a page, or on the files of no page, by name.
type fragile struct {
	book.Edition
	on *string
}

func (f fragile) Page(p *book.Page) ([]output.File, message.List) {
	if p.Name == *f.on {
		panic("planted")
	}
	return f.Edition.Page(p)
}

func (f fragile) Common(b *book.Book) ([]book.Part, message.List) {
	if *f.on == "common" {
		panic("planted")
	}
	return f.Edition.Common(b)
}

// When the program fails on a page, the desk names the page on the screen and in the browser, and goes on: the good site
// that it has stays up, and the next save is seen.
func TestAPanicIsToldAtTheDesk(t *testing.T) {
	var o office
	o.content = filepath.Join(t.TempDir(), "content")
	o.fill(t, goodGuide)
	on := "guides/soil.md"
	d := New(Options{Site: book.Options{Name: "content"}, Folder: o.content, Out: &o.out, Err: &o.err})
	t.Cleanup(d.closeRoot)
	d.maker = book.NewMaker(book.Options{Name: "content"}, func(s *book.Settings) book.Edition {
		return fragile{site.New(s), &on}
	})
	shown := func() string {
		r := httptest.NewRecorder()
		ask := httptest.NewRequest("GET", "/guides/soil/", nil)
		ask.Host = "localhost"
		d.Handler().ServeHTTP(r, ask)
		return r.Body.String()
	}
	d.remake(book.Changes{Everything: true})
	const told = "the program failed on this file: planted (desk.fragile."
	if !strings.Contains(o.err.String(), "content/guides/soil.md:1:1: error: "+told+"Page, line ") {
		t.Errorf("the screen shows\n%s", &o.err)
	}
	if page := shown(); !strings.Contains(page, "content/guides/soil.md:1:1") || !strings.Contains(page, told) {
		t.Errorf("the browser shows\n%s", page)
	}
	on = ""
	o.save(t, goodGuide)
	saved := book.Changes{Names: []string{"guides/soil.md"}}
	d.follow(saved)
	if page := shown(); !strings.Contains(page, "Deep.") {
		t.Errorf("the browser shows\n%s", page)
	}
	on = "common"
	save(t, filepath.Join(o.content, "guides", "new.md"), strings.Replace(guideHead, "Soil", "New", 1))
	d.follow(book.Changes{Names: []string{"guides/new.md"}})
	if page := shown(); !strings.Contains(page, "Deep.") || !strings.Contains(o.err.String(), "\ncontent:1:1: error: "+told) {
		t.Errorf("the browser shows\n%s\nthe screen shows\n%s", page, &o.err)
	}
}
