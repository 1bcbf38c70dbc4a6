package packet

import (
	"bytes"
	"slices"

	"golang.org/x/net/html"
)

// elements lists the elements below a node, in the order of the text.
func elements(n *html.Node) []*html.Node {
	var list []*html.Node
	for below := range n.Descendants() {
		if below.Type == html.ElementNode {
			list = append(list, below)
		}
	}
	return list
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name && a.Namespace == "" {
			return a.Val
		}
	}
	return ""
}

func has(n *html.Node, name string) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == name })
}

// set gives an attribute a value.
func set(n *html.Node, name, value string) {
	unset(n, name)
	n.Attr = append(n.Attr, html.Attribute{Key: name, Val: value})
}

// unset takes attributes off a node.
func unset(n *html.Node, names ...string) {
	n.Attr = slices.DeleteFunc(n.Attr, func(a html.Attribute) bool { return slices.Contains(names, a.Key) })
}

// element makes an element with a text in it.
func element(name, inside string) *html.Node {
	n := &html.Node{Type: html.ElementNode, Data: name}
	n.AppendChild(text(inside))
	return n
}

func text(of string) *html.Node { return &html.Node{Type: html.TextNode, Data: of} }

func remove(n *html.Node) { n.Parent.RemoveChild(n) }

func printed(document *html.Node) []byte {
	var w bytes.Buffer
	if err := html.Render(&w, document); err != nil {
		panic(err) // nothing fails in memory
	}
	return w.Bytes()
}
