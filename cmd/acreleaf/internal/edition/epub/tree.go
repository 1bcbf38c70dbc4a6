package epub

import (
	"bytes"
	"slices"
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/nodes"
)

// read reads a page as a browser does, and gives its body.
func read(page []byte) (*html.Node, error) {
	document, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		return nil, err
	}
	return find(document, isElement("body")), nil
}

// A question is one that is asked of a node.
type question func(*html.Node) bool

func isElement(name string) question {
	return func(n *html.Node) bool { return n.Type == html.ElementNode && n.Data == name }
}

// isOf asks for an element of a class.
func isOf(class string) question {
	return func(n *html.Node) bool { return slices.Contains(strings.Fields(nodes.Attribute(n, "class")), class) }
}

// find is the first node below n for which the answer is yes; nil for none.
func find(n *html.Node, is question) *html.Node {
	for below := range n.Descendants() {
		if is(below) {
			return below
		}
	}
	return nil
}

// all lists the nodes below n for which the answer is yes, in the order of the text.
func all(n *html.Node, is question) []*html.Node {
	var list []*html.Node
	for below := range n.Descendants() {
		if is(below) {
			list = append(list, below)
		}
	}
	return list
}

func textOf(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var b strings.Builder
	for below := range n.Descendants() {
		if below.Type == html.TextNode {
			b.WriteString(below.Data)
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// replace puts a node in the place of another.
func replace(old, by *html.Node) {
	old.Parent.InsertBefore(by, old)
	nodes.Remove(old)
}

// unwrap leaves what is in a node in its place.
func unwrap(n *html.Node) {
	for _, below := range slices.Collect(n.ChildNodes()) {
		n.RemoveChild(below)
		n.Parent.InsertBefore(below, n)
	}
	nodes.Remove(n)
}

// move puts all that is in a node at the end of another.
func move(from, to *html.Node) {
	for _, below := range slices.Collect(from.ChildNodes()) {
		from.RemoveChild(below)
		to.AppendChild(below)
	}
}
