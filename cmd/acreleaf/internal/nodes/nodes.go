// Package nodes asks and changes the nodes of a page that was read as a browser reads it (golang.org/x/net/html).
//
// It owns what every edition needs that changes finished pages of the site. It must not know what is on a page.
package nodes

import (
	"slices"

	"golang.org/x/net/html"
)

// Elements lists the elements below a node, in the order of the text.
func Elements(n *html.Node) []*html.Node {
	var list []*html.Node
	for below := range n.Descendants() {
		if below.Type == html.ElementNode {
			list = append(list, below)
		}
	}
	return list
}

// Attribute is the value of an attribute, and "" for none.
func Attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name && a.Namespace == "" {
			return a.Val
		}
	}
	return ""
}

// Has says whether a node has an attribute, be it empty.
func Has(n *html.Node, name string) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == name })
}

// Set gives an attribute a value.
func Set(n *html.Node, name, value string) {
	for i := range n.Attr {
		if n.Attr[i].Key == name {
			n.Attr[i].Val = value
			return
		}
	}
	n.Attr = append(n.Attr, html.Attribute{Key: name, Val: value})
}

// Unset takes attributes off a node.
func Unset(n *html.Node, names ...string) {
	UnsetAll(n, func(name string) bool { return slices.Contains(names, name) })
}

// UnsetAll takes off a node every attribute whose name is such.
func UnsetAll(n *html.Node, such func(name string) bool) {
	n.Attr = slices.DeleteFunc(n.Attr, func(a html.Attribute) bool { return such(a.Key) })
}

// Element makes an element of a class, "" for none, with what is in it.
func Element(name, class string, inside ...*html.Node) *html.Node {
	n := &html.Node{Type: html.ElementNode, Data: name}
	if class != "" {
		Set(n, "class", class)
	}
	for _, one := range inside {
		n.AppendChild(one)
	}
	return n
}

// Text makes a text.
func Text(of string) *html.Node { return &html.Node{Type: html.TextNode, Data: of} }

// Remove takes a node out of the page, if it is in one.
func Remove(n *html.Node) {
	if n != nil && n.Parent != nil {
		n.Parent.RemoveChild(n)
	}
}
