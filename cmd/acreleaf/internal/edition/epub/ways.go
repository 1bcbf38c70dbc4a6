package epub

import (
	"io/fs"
	"net/url"
	"path"
	"slices"
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/page"
)

// ways makes the links of a page those of a book: inside it they stay, other pages of the site are at its address, and
// what is nowhere becomes text.
type ways struct {
	edition *edition
	from    page.Address
	volume  *volume
	inside  map[string]*chapter // by the way of their pages in the site
	ids     map[string]bool
}

// A picture is a file that the text shows.
type picture struct {
	path, media string
	bytes       []byte
}

// media are the kinds of pictures that every reading system shows.
var media = map[string]string{
	".svg": "image/svg+xml", ".png": "image/png", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".gif": "image/gif",
}

// settle settles every way of the body, and takes off the attributes that a script reads.
func (w *ways) settle(body *html.Node) error {
	w.ids = map[string]bool{}
	for _, n := range all(body, func(n *html.Node) bool { return nodes.Has(n, "id") }) {
		w.ids[nodes.Attribute(n, "id")] = true
	}
	for _, n := range all(body, func(n *html.Node) bool { return n.Type == html.ElementNode }) {
		nodes.UnsetAll(n, func(name string) bool {
			return strings.HasPrefix(name, "data-") || name == "tabindex" || name == "rel" || name == "hreflang"
		})
		if nodes.Attribute(n, "role") == "group" { // a box that scrolls
			nodes.UnsetAll(n, func(name string) bool { return name == "role" || strings.HasPrefix(name, "aria-") })
		}
		for _, name := range []string{"aria-labelledby", "aria-describedby"} {
			if id := nodes.Attribute(n, name); id != "" && !w.ids[id] {
				nodes.Unset(n, name)
			}
		}
		switch {
		case n.Data == "a":
			w.link(n)
		case n.Data == "img":
			nodes.Unset(n, "loading") // EPUB 3.2 does not know it
			if err := w.show(n); err != nil {
				return err
			}
		}
	}
	return nil
}

func (w *ways) link(n *html.Node) {
	href := nodes.Attribute(n, "href")
	if id, inside := strings.CutPrefix(href, "#"); inside {
		if !w.ids[id] {
			unwrap(n)
		}
		return
	}
	to, err := url.Parse(href)
	switch {
	case err != nil:
		unwrap(n)
	case to.IsAbs():
	case w.volume.holds(to.Path): // answers and exercises lead to each other
	default:
		if way := w.outside(to); way != "" {
			nodes.Set(n, "href", way)
		} else {
			unwrap(n)
		}
	}
}

// outside is the whole address of a place of the site; "" where that is not known. A source that has an address of its
// own is there: a reader may be far from the site.
func (w *ways) outside(to *url.URL) string {
	sources := page.Address{Kind: kind.Sources, Language: w.from.Language, Name: "sources"}
	if to.Path == w.from.To(sources) {
		if source := w.edition.Sources[to.Fragment]; source.Address != "" {
			return source.Address
		}
	}
	if c := w.inside[path.Join("/", w.from.String(), to.Path)]; c != nil {
		part := func(n *html.Node) bool { return nodes.Attribute(n, "id") == to.Fragment }
		if to.Fragment != "" && find(c.body, part) != nil {
			return c.file + "#" + to.Fragment
		}
		return c.file
	}
	here, err := url.Parse(w.edition.Site.Address)
	if err != nil || w.edition.Site.Address == "" {
		return ""
	}
	return here.JoinPath(w.from.String()).ResolveReference(to).String()
}

// holds says whether a file is one of the text.
func (v *volume) holds(file string) bool {
	return slices.ContainsFunc(v.chapters, func(c *chapter) bool { return c.file == file })
}

// show takes a picture into the book. Of one that not every reading system shows, and of one that is elsewhere, the
// text stays.
func (w *ways) show(n *html.Node) error {
	name := path.Join(w.from.String(), nodes.Attribute(n, "src"))
	kind := media[strings.ToLower(path.Ext(name))]
	if to, err := url.Parse(nodes.Attribute(n, "src")); err != nil || to.IsAbs() || kind == "" {
		replace(n, nodes.Text(nodes.Attribute(n, "alt")))
		return nil
	}
	name, err := url.PathUnescape(name)
	if err != nil {
		return err
	}
	place := pictures + "/" + name
	nodes.Set(n, "src", (&url.URL{Path: place}).EscapedPath())
	if slices.ContainsFunc(w.volume.pictures, func(p picture) bool { return p.path == place }) {
		return nil
	}
	content, err := fs.ReadFile(w.edition.content, name)
	if err != nil {
		return err
	}
	w.volume.pictures = append(w.volume.pictures, picture{place, kind, content})
	return nil
}
