package packet

import (
	"net/url"
	"path"
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/page"
)

// ways makes the links of a page those of a packet: to a packet beside it, to a page in the one file of the site, or
// else to the site itself, which the link then says.
type ways struct {
	*maker
	*leaf
	file      string // that the page is in
	elsewhere bool   // some link leads to the site
}

// target is where a link leads from a page, with the top of the site as "/".
func (l *leaf) target(href string) (*url.URL, error) {
	return (&url.URL{Path: "/" + l.at}).Parse(href)
}

// settle settles every link of the body.
func (w *ways) settle() {
	for _, n := range nodes.Elements(w.body) {
		if way := nodes.Attribute(n, "data-course"); way != "" && w.file != WholeFile {
			nodes.Set(n, "data-course", "./") // its course is beside it
		}
		if n.Data != "a" || !nodes.Has(n, "href") {
			continue
		}
		href := nodes.Attribute(n, "href")
		to, err := w.target(href)
		if err != nil || to.IsAbs() || strings.HasPrefix(href, "#") {
			continue
		}
		if inside := w.inside(to); inside != "" {
			nodes.Set(n, "href", inside)
		} else {
			w.outside(n, to)
		}
	}
	w.emptied()
}

// inside is the way to a page that is in a packet; "" for one that is not.
func (w *ways) inside(to *url.URL) string {
	name := strings.TrimPrefix(to.Path, "/")
	file := w.own[name+"index.html"]
	switch {
	case w.file == WholeFile && w.holds(name+"index.html"):
		return "#/" + name + to.EscapedFragment()
	case w.file == WholeFile:
		return ""
	case file != "" && to.Fragment != "":
		return w.wayTo(file) + "#" + to.EscapedFragment()
	case file != "":
		return w.wayTo(file)
	case len(w.only) == 0 && w.holds(name+"index.html"):
		return w.wayTo(WholeFile) + "#/" + name + to.EscapedFragment()
	}
	return ""
}

// wayTo is the way from the file of the page to another packet.
func (w *ways) wayTo(file string) string {
	folder := strings.TrimPrefix(path.Dir(w.file), ".")
	return page.Address{Name: folder}.ToPath(file)
}

// outside has a link lead to the site, where its address is known. A source that has an address of its own is there.
func (w *ways) outside(n *html.Node, to *url.URL) {
	sources := page.Address{Kind: kind.Sources, Language: w.code(), Name: "sources"}.String()
	cited := to.Path == "/"+sources
	if source := w.Sources[to.Fragment]; cited && source.Address != "" {
		nodes.Set(n, "href", source.Address)
		return
	}
	office := nodes.Attribute(n.Parent, "class") == "office" // the next link leads there too
	if office || w.Site.Address == "" {
		n.Data, n.DataAtom = "span", 0
		nodes.Unset(n, "href", "hreflang", "rel", "role")
		if office || cited {
			return // the source is listed on the page
		}
	} else {
		nodes.Set(n, "href", strings.TrimSuffix(w.Site.Address, "/")+to.String())
	}
	w.elsewhere = true
	n.AppendChild(nodes.Text(" (" + w.words[w.language].Packet.OnSite + ")"))
}

// code is what the language of the page is called in addresses.
func (w *ways) code() string {
	if w.language == w.Site.Languages[0] {
		return ""
	}
	return w.language
}

// emptied takes out ways between pages in which none is left: what is on the site is said below the page.
func (w *ways) emptied() {
	for _, n := range nodes.Elements(w.body) {
		if n.Data != "nav" {
			continue
		}
		links := 0
		for _, below := range nodes.Elements(n) {
			if below.Data == "a" {
				links++
			}
		}
		if links == 0 {
			nodes.Remove(n)
		}
	}
}

// note says at the foot of a page what its file is.
func (m *maker) note(l *leaf, elsewhere bool) {
	words := &m.words[l.language].Packet
	says := nodes.Element("dd", "", nodes.Text(words.Together))
	switch {
	case len(m.only) == 0:
	case !elsewhere:
		return
	case m.Site.Address != "":
		says = nodes.Element("dd", "", nodes.Text(words.OnePage+" "+words.There+" "))
		way := nodes.Element("a", "", nodes.Text(m.Site.Address))
		nodes.Set(way, "href", m.Site.Address)
		says.AppendChild(way)
	default:
		says = nodes.Element("dd", "", nodes.Text(words.OnePage+" "+words.Ask))
	}
	for _, n := range nodes.Elements(l.body) {
		if n.Data != "footer" || nodes.Attribute(n, "class") != "foot" {
			continue
		}
		for list := range n.ChildNodes() {
			if list.Data == "dl" {
				row := &html.Node{Type: html.ElementNode, Data: "div"}
				row.AppendChild(nodes.Element("dt", "", nodes.Text(words.File)))
				row.AppendChild(says)
				list.AppendChild(row)
			}
		}
	}
}
