package packet

import (
	"bytes"
	"maps"
	"path"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/edition/site"
	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/nodes"
)

const home = "index.html"

// holds says whether the one file of the site has a page. Those for authors would make it twice as long for readers
// who have no use for them.
func (m *maker) holds(name string) bool {
	if m.files[name] == nil || path.Base(name) != home {
		return false
	}
	for _, folder := range strings.Split(name, "/") {
		if of, known := kind.Of(folder); known {
			return of.Row().Reader != kind.Author
		}
	}
	return true
}

// A binding is the one file while it is made.
type binding struct {
	*maker
	scripts []string // the files of the scripts, each once; a page names them by their places here
	styles  []string // the texts of the styles, each once
}

// whole is the site in one file: the home page, and each other page in a template, out of which a script takes it
// (theme/script/opener.ts). So ids do not clash, and what is not read is not laid out.
func (m *maker) whole() []byte {
	b := &binding{maker: m}
	front := m.leaf(home)
	style := m.text(front.styles[:1]) // that of every page comes first
	b.styles = append(b.styles, style)
	front.head.AppendChild(nodes.Element("style", "", nodes.Text(style)))
	var templates []*html.Node
	for _, name := range slices.Sorted(maps.Keys(m.files)) {
		if m.holds(name) && name != home {
			templates = append(templates, b.template(m.leaf(name)))
		}
	}
	b.settle(front)
	front.root(WholeFile)
	nodes.Set(front.body, "data-run", b.places(front.scripts))
	for _, t := range templates {
		front.body.AppendChild(nodes.Text("\n"))
		front.body.AppendChild(t)
	}
	without := &html.Node{Type: html.ElementNode, Data: "noscript"}
	without.AppendChild(nodes.Element("p", "", nodes.Text(m.words[front.language].Packet.NoScript)))
	front.body.InsertBefore(without, front.body.FirstChild)
	opener, scripts := string(site.Opener().Bytes), b.all()
	front.head.AppendChild(nodes.Element("script", "", nodes.Text(opener)))
	front.body.AppendChild(nodes.Element("script", "", nodes.Text(scripts)))
	front.allow([]string{opener, scripts}, b.styles)
	return printed(front.document)
}

func (b *binding) settle(l *leaf) {
	(&ways{maker: b.maker, leaf: l, file: WholeFile}).settle()
}

// template has a page wait in it, with the styles that not every page has.
func (b *binding) template(l *leaf) *html.Node {
	b.settle(l)
	t := &html.Node{Type: html.ElementNode, Data: "template"}
	nodes.Set(t, "id", "/"+l.at)
	nodes.Set(t, "lang", l.language)
	nodes.Set(t, "data-title", titleOf(l.head))
	nodes.Set(t, "data-run", b.places(l.scripts))
	for _, name := range l.styles[1:] {
		style := string(b.files[name]())
		if !slices.Contains(b.styles, style) {
			b.styles = append(b.styles, style)
		}
		t.AppendChild(nodes.Element("style", "", nodes.Text(style)))
	}
	for _, n := range slices.Collect(l.body.ChildNodes()) {
		nodes.Remove(n)
		t.AppendChild(n)
	}
	return t
}

func titleOf(head *html.Node) string {
	for _, n := range nodes.Elements(head) {
		if n.Data == "title" {
			return n.FirstChild.Data
		}
	}
	return ""
}

// places names scripts by their places in the list of all.
func (b *binding) places(names []string) string {
	var places []string
	for _, name := range names {
		at := slices.Index(b.scripts, name)
		if at < 0 {
			at = len(b.scripts)
			b.scripts = append(b.scripts, name)
		}
		places = append(places, strconv.Itoa(at))
	}
	return strings.Join(places, " ")
}

// all gives the scripts of all pages as functions, to the script that runs those of the page that is read.
func (b *binding) all() string {
	var w bytes.Buffer
	w.WriteString("openPage([")
	for _, name := range b.scripts {
		w.WriteString("()=>{")
		w.Write(b.files[name]())
		w.WriteString("},\n")
	}
	w.WriteString("]);")
	return w.String()
}
