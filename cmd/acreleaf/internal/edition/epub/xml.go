package epub

import (
	"bytes"
	"strings"

	"golang.org/x/net/html"
)

const (
	xhtmlSpace  = "http://www.w3.org/1999/xhtml"
	mathMLSpace = "http://www.w3.org/1998/Math/MathML"
	svgSpace    = "http://www.w3.org/2000/svg"
)

// spaces are the names of elements that begin another language of marks.
var spaces = map[string]string{"math": mathMLSpace, "svg": svgSpace}

// write writes a node as XML.
func write(w *bytes.Buffer, n *html.Node) {
	switch n.Type {
	case html.TextNode:
		w.WriteString(escape(n.Data))
		return
	case html.ElementNode:
	default:
		return
	}
	w.WriteString("<" + n.Data)
	if space := spaces[n.Data]; space != "" {
		writeAttribute(w, "xmlns", space)
	}
	for _, a := range n.Attr {
		if a.Key == "xmlns" || a.Namespace != "" {
			continue // said above; those of links in drawings are of an older kind
		}
		writeAttribute(w, a.Key, a.Val)
		if a.Key == "lang" {
			writeAttribute(w, "xml:lang", a.Val)
		}
	}
	if n.FirstChild == nil && empty[n.Data] {
		w.WriteString("/>")
		return
	}
	w.WriteByte('>')
	for below := range n.ChildNodes() {
		write(w, below)
	}
	w.WriteString("</" + n.Data + ">")
}

// empty are the elements of HTML that end where they begin. Any other is ended by a mark of its own, since readers that
// take the text for HTML would not see it end.
var empty = map[string]bool{"br": true, "hr": true, "img": true, "col": true, "wbr": true}

func writeAttribute(w *bytes.Buffer, name, value string) {
	w.WriteString(" " + name + `="` + escape(value) + `"`)
}

var escapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// escape writes a text as XML has it. What XML has no place for is left out.
func escape(s string) string {
	return escapes.Replace(strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == '\uFFFE' || r == '\uFFFF' {
			return -1
		}
		return r
	}, s))
}
