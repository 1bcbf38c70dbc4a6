package packet

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"path"
	"slices"
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/media"
	"acreleaf/cmd/acreleaf/internal/nodes"
)

// A leaf is a page of the site, taken apart.
type leaf struct {
	at         string // its folder in the site: "guides/soil/"
	language   string
	head, body *html.Node
	styles     []string // the files of its styles, and
	scripts    []string // of its scripts, in the order in which they run
	document   *html.Node
}

// root tells the scripts by which way they find what all packets keep on a device together.
func (l *leaf) root(way string) { nodes.Set(l.head.Parent, "data-root", way) }

// leaf takes a page apart: what it has in files of their own comes out of its head.
func (m *maker) leaf(name string) *leaf {
	document, err := html.Parse(bytes.NewReader(m.files[name]()))
	if err != nil {
		panic(err) // nothing fails in memory
	}
	l := &leaf{at: strings.TrimSuffix(name, "index.html"), document: document}
	for n := range document.Descendants() {
		switch n.Data {
		case "html":
			l.language = nodes.Attribute(n, "lang")
		case "head":
			l.head = n
		case "body":
			l.body = n
		}
	}
	var live []string // what makes the page live, after what it would load later
	for _, n := range nodes.Elements(l.head) {
		switch href := nodes.Attribute(n, "href"); {
		case n.Data == "script" && n.Parent != l.head: // in the template of what is loaded later
			l.scripts = append(l.scripts, l.resolve(nodes.Attribute(n, "src")))
		case n.Data == "script":
			if script := l.resolve(nodes.Attribute(n, "src")); !ofServer(script) {
				live = append(live, script)
			}
			nodes.Remove(n)
		case n.Data == "template":
			nodes.Remove(n)
		case n.Data != "link" || strings.Contains(href, ":"):
		case nodes.Attribute(n, "rel") == "stylesheet":
			l.styles = append(l.styles, l.resolve(href))
			nodes.Remove(n)
		case nodes.Attribute(n, "rel") == "icon":
			nodes.Set(n, "href", m.within(l.resolve(href)))
		default:
			nodes.Remove(n) // it is of use on a server alone
		}
	}
	l.scripts = append(l.scripts, live...)
	m.still(l)
	return l
}

// ofServer says whether a script is of use only for a page that comes from a server: the one that keeps pages on the
// device, and the one that chooses the language of a first visit.
func ofServer(script string) bool {
	name := path.Base(script)
	return strings.HasPrefix(name, "offline.") || strings.HasPrefix(name, "language.")
}

// still brings the pictures into a page, and takes out what leads to this address of the page: it is one of a computer.
func (m *maker) still(l *leaf) {
	for _, n := range nodes.Elements(l.body) {
		switch {
		case n.Data == "img":
			nodes.Set(n, "src", m.within(l.resolve(nodes.Attribute(n, "src"))))
		case n.Data == "button" && nodes.Has(n, "data-link"):
			nodes.Remove(n)
		}
	}
}

// resolve gives the path of a file of the site to which a page leads.
func (l *leaf) resolve(href string) string {
	to, err := l.target(href)
	if err != nil {
		panic(err) // the site writes no such address
	}
	return strings.TrimPrefix(to.Path, "/")
}

// within gives a file of the site as an address that has its bytes.
func (m *maker) within(name string) string {
	ending := strings.ToLower(path.Ext(name))
	at := slices.IndexFunc(media.Kinds, func(k media.Kind) bool { return k.Ending == ending })
	return "data:" + media.Kinds[at].Type + ";base64," + base64.StdEncoding.EncodeToString(m.files[name]())
}

// text puts files of the site together.
func (m *maker) text(names []string) string {
	var b strings.Builder
	for _, name := range names {
		b.Write(m.files[name]())
	}
	return b.String()
}

// single is a page in one file.
func (m *maker) single(name string) []byte {
	l := m.leaf(name)
	w := &ways{maker: m, leaf: l, file: m.own[name]}
	w.settle()
	l.root(w.wayTo(""))
	m.note(l, w.elsewhere)
	style := m.text(l.styles)
	l.head.AppendChild(nodes.Element("style", "", nodes.Text(style)))
	var scripts []string
	if len(l.scripts) > 0 {
		script := m.text(l.scripts)
		l.body.AppendChild(nodes.Element("script", "", nodes.Text(script)))
		scripts = append(scripts, script)
	}
	l.allow(scripts, []string{style})
	return printed(l.document)
}

// allow has the policy of a page allow what is in it, by hashes, and nothing else.
func (l *leaf) allow(scripts, styles []string) {
	policy := "default-src 'none'; "
	if len(scripts) > 0 {
		policy += "script-src " + hashes(scripts) + "'wasm-unsafe-eval'; "
	}
	policy += "style-src " + strings.TrimSpace(hashes(styles)) + "; img-src data:; base-uri 'none'; form-action 'none'; " +
		"require-trusted-types-for 'script'; trusted-types 'none'"
	for _, n := range nodes.Elements(l.head) {
		if nodes.Attribute(n, "http-equiv") == "Content-Security-Policy" {
			nodes.Set(n, "content", policy)
			return
		}
	}
	panic("the page has no policy")
}

func hashes(texts []string) string {
	var b strings.Builder
	for _, text := range texts {
		sum := sha256.Sum256([]byte(text))
		b.WriteString("'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "' ")
	}
	return b.String()
}

func printed(document *html.Node) []byte {
	var w bytes.Buffer
	if err := html.Render(&w, document); err != nil {
		panic(err) // nothing fails in memory
	}
	return w.Bytes()
}
