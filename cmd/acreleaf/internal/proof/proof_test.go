package proof

import (
	"path"
	"strings"
	"testing"
	"time"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/config"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
	"acreleaf/cmd/acreleaf/internal/page"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// thorough are the rules of a proof on a certain day.
var thorough = Rules{Advice: true, Today: time.Date(2026, 11, 2, 0, 0, 0, 0, time.UTC)}

// read makes a page of a file as site does. Its metadata has a title, a summary and a review, if the text has none. A
// page whose name begins with "es-" is the translation of the page with the rest of that name.
func read(t *testing.T, name, text string) *Page {
	t.Helper()
	if !strings.HasPrefix(text, "---\n") {
		text = "---\ntitle: A row of trees\nsummary: What to do.\nreviewed: 2026-09-14\n---\n\n" + text
	}
	if original, translates := strings.CutPrefix(path.Base(name), "es-"); translates {
		text = strings.Replace(text, "reviewed:", "language: es\ntranslates: "+original+"\nreviewed:", 1)
	}
	source := &message.Source{Name: "content/" + name, Text: []byte(text)}
	metadata, start, faults := page.Split(source)
	address, err := page.AddressOf(name, metadata, "en")
	if err != nil {
		t.Fatal(err)
	}
	document, more := markdown.Parse(source, start)
	work, rest := worksheet.Bind(document, calc.Standard(), "en")
	for _, m := range append(append(faults, more...), rest...) {
		t.Fatalf("%s: %s", name, m.Text)
	}
	language := address.Language
	if language == "" {
		language = "en"
	}
	return &Page{Name: name, Source: source, Address: address, Language: language, Metadata: metadata,
		Document: document, Work: work}
}

// ids lists the ids of messages, by their order.
func ids(l message.List) string {
	var list []string
	for _, m := range l {
		list = append(list, m.ID)
	}
	return strings.Join(list, " ")
}

var twoLanguages = &Site{Config: config.Site{Languages: []string{"en", "es"}}}

func alone(t *testing.T, name, text string) string {
	t.Helper()
	return ids(Alone(read(t, name, text), twoLanguages, thorough))
}
