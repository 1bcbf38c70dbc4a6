package nodes

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

func TestChange(t *testing.T) {
	page, err := html.Parse(strings.NewReader(`<p id="a" class="" aria-label="b" role="note">text<br><i>more</i></p>`))
	if err != nil {
		t.Fatal(err)
	}
	var p, i *html.Node
	for _, n := range Elements(page) {
		switch n.Data {
		case "p":
			p = n
		case "i":
			i = n
		}
	}
	if !Has(p, "class") || Attribute(p, "class") != "" || Attribute(p, "id") != "a" || Has(p, "lang") {
		t.Errorf("the attributes are %v", p.Attr)
	}
	Set(p, "id", "c")
	Set(p, "lang", "es")
	Unset(p, "class", "none")
	UnsetAll(p, func(name string) bool { return strings.HasPrefix(name, "aria-") })
	p.AppendChild(Element("b", "short", Text("<"), Element("u", "")))
	Remove(i)
	Remove(i) // is in no page any more
	Remove(nil)
	var w bytes.Buffer
	if err := html.Render(&w, p); err != nil {
		t.Fatal(err)
	}
	if want := `<p id="c" role="note" lang="es">text<br/><b class="short">&lt;<u></u></b></p>`; w.String() != want {
		t.Errorf("got %s, want %s", w.String(), want)
	}
}
