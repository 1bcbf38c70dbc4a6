package epub

import (
	"bytes"
	"crypto/sha1"
	"encoding/hex"
	"fmt"
	"slices"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/nodes"
	"acreleaf/cmd/acreleaf/internal/page"
)

// Where the files of a book are, beside the pictures.
const (
	inBook   = "book/"
	opfFile  = "package.opf"
	textFile = "text.xhtml"
	navFile  = "nav.xhtml"
	cssFile  = "style.css"
	pictures = "pictures"
)

const container = `<?xml version="1.0" encoding="utf-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="` + inBook + opfFile + `" media-type="application/oebps-package+xml"/></rootfiles>
</container>
`

// names is the space of our UUIDs, drawn once.
var names = []byte{0x5b, 0x1e, 0x0c, 0x8a, 0x2f, 0x6d, 0x4e, 0x93, 0x9a, 0x41, 0xd7, 0x36, 0x20, 0xc4, 0x7f, 0x15}

// identifier is by what a reading system knows the book again, whatever is written in it: the address of its page, or,
// where that is not known, a UUID made from the name of the office and the way in the site (RFC 9562, version 5).
func identifier(address, office string, a page.Address) string {
	if address != "" {
		return address
	}
	sum := sha1.Sum(append(names[:len(names):len(names)], office+"\n"+a.String()...))
	id := sum[:16]
	id[6], id[8] = id[6]&0x0f|0x50, id[8]&0x3f|0x80
	h := hex.EncodeToString(id)
	return fmt.Sprintf("urn:uuid:%s-%s-%s-%s-%s", h[:8], h[8:12], h[12:16], h[16:20], h[20:])
}

// begin writes the beginning of a file of XHTML, up to its title.
func (v *volume) begin(w *bytes.Buffer, title string) {
	fmt.Fprintf(w, "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<!DOCTYPE html>\n"+
		"<html xmlns=%q xmlns:epub=\"http://www.idpf.org/2007/ops\" lang=%q xml:lang=%q>\n<head>\n"+
		"<meta charset=\"utf-8\"/>\n<title>%s</title>\n<link rel=\"stylesheet\" type=\"text/css\" href=%q/>\n</head>\n",
		xhtmlSpace, v.language, v.language, escape(title), cssFile)
}

// text writes a chapter.
func (v *volume) text(w *bytes.Buffer, c *chapter) {
	v.begin(w, c.title)
	write(w, c.body)
	w.WriteString("\n</html>\n")
}

// nav writes the table of contents: each chapter and its parts.
func (v *volume) nav(w *bytes.Buffer) {
	v.begin(w, v.title)
	fmt.Fprintf(w, "<body>\n<nav epub:type=\"toc\" role=\"doc-toc\" aria-labelledby=\"toc\">\n"+
		"<h1 id=\"toc\">%s</h1>\n<ol>\n", escape(v.words.Book.Contents))
	for _, c := range v.chapters {
		fmt.Fprintf(w, "<li><a href=%q>%s</a>", c.file, escape(c.title))
		parts := all(c.body, func(n *html.Node) bool { return n.Data == "h2" && nodes.Attribute(n, "id") != "" })
		if len(parts) > 0 {
			w.WriteString("\n<ol>\n")
			for _, h := range parts {
				fmt.Fprintf(w, "<li><a href=\"%s#%s\">%s</a></li>\n", c.file, escape(nodes.Attribute(h, "id")), escape(textOf(h)))
			}
			w.WriteString("</ol>\n")
		}
		w.WriteString("</li>\n")
	}
	w.WriteString("</ol>\n</nav>\n</body>\n</html>\n")
}

// opf writes what the book is and which files it has.
func (v *volume) opf(w *bytes.Buffer) {
	fmt.Fprintf(w, "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n"+
		"<package xmlns=\"http://www.idpf.org/2007/opf\" version=\"3.0\" unique-identifier=\"id\" xml:lang=%q>\n"+
		"<metadata xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n", v.language)
	fmt.Fprintf(w, "<dc:identifier id=\"id\">%s</dc:identifier>\n", escape(v.identifier))
	for _, stated := range [][2]string{
		{"title", v.title}, {"creator", v.office}, {"publisher", v.office}, {"language", v.language},
		{"description", v.summary}, {"date", v.reviewed}, {"rights", v.licence}, {"source", v.address},
	} {
		if stated[1] != "" {
			fmt.Fprintf(w, "<dc:%s>%s</dc:%s>\n", stated[0], escape(stated[1]), stated[0])
		}
	}
	for _, m := range v.properties() {
		fmt.Fprintf(w, "<meta property=%q>%s</meta>\n", m[0], escape(m[1]))
	}
	w.WriteString("</metadata>\n<manifest>\n")
	item := func(id, path, media, properties string) {
		fmt.Fprintf(w, "<item id=%q href=\"%s\" media-type=%q%s/>\n", id, escape(path), media, properties)
	}
	for i, c := range v.chapters {
		item(fmt.Sprintf("text-%d", i+1), c.file, "application/xhtml+xml", c.used())
	}
	item("nav", navFile, "application/xhtml+xml", ` properties="nav"`)
	item("style", cssFile, "text/css", "")
	for i, p := range v.pictures {
		item(fmt.Sprintf("picture-%d", i+1), wayTo(p.path), p.media, "")
	}
	w.WriteString("</manifest>\n<spine>\n")
	for i := range v.chapters {
		fmt.Fprintf(w, "<itemref idref=\"text-%d\"/>\n", i+1)
	}
	w.WriteString("</spine>\n</package>\n")
}

// used says what a chapter has that a reading system must know of.
func (c *chapter) used() string {
	mathematical, drawn := c.has("math"), c.has("svg")
	switch {
	case mathematical && drawn:
		return ` properties="mathml svg"`
	case mathematical:
		return ` properties="mathml"`
	case drawn:
		return ` properties="svg"`
	}
	return ""
}

func (c *chapter) has(name string) bool { return find(c.body, isElement(name)) != nil }

func (v *volume) has(name string) bool {
	return slices.ContainsFunc(v.chapters, func(c *chapter) bool { return c.has(name) })
}

// properties are the day of the text, and what EPUB Accessibility 1.1 asks a book to tell. It claims no conformance:
// somebody who looked the book through would have to sign for that.
func (v *volume) properties() [][2]string {
	list := [][2]string{{"dcterms:modified", v.reviewed + "T00:00:00Z"}, {"schema:accessMode", "textual"}}
	if len(v.pictures) > 0 || v.has("svg") {
		list = append(list, [2]string{"schema:accessMode", "visual"})
	}
	features := []string{"tableOfContents", "structuralNavigation", "readingOrder", "displayTransformability"}
	if v.has("math") {
		features = append(features, "MathML")
	}
	if len(v.pictures) > 0 {
		features = append(features, "alternativeText")
	}
	list = append(list, [2]string{"schema:accessModeSufficient", "textual"})
	for _, f := range features {
		list = append(list, [2]string{"schema:accessibilityFeature", f})
	}
	return append(list, [2]string{"schema:accessibilityHazard", "none"},
		[2]string{"schema:accessibilitySummary", v.words.Book.Accessible})
}
