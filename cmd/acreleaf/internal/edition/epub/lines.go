package epub

import (
	"slices"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/nodes"
)

// breakLines parts the lines of the work before each sign, so that a line that is wider than a side goes on below. A
// page of the site scrolls there, which a book cannot, and no reading system breaks a formula by itself.
func breakLines(body *html.Node) {
	for _, work := range all(body, isOf("work")) {
		for _, math := range all(work, isElement("math")) {
			breakLine(math)
		}
	}
}

func breakLine(math *html.Node) {
	row := math.FirstChild
	if row == nil || row.NextSibling != nil || row.Data != "mrow" {
		return
	}
	var parts [][]*html.Node
	for _, one := range slices.Collect(row.ChildNodes()) {
		if len(parts) == 0 || opens(one) && !isOpening(one.PrevSibling) {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], one)
	}
	for i, part := range parts {
		shell := &html.Node{Type: html.ElementNode, Data: "math", Namespace: math.Namespace, Attr: slices.Clone(math.Attr)}
		inside := &html.Node{Type: html.ElementNode, Data: "mrow", Namespace: math.Namespace}
		shell.AppendChild(inside)
		for _, one := range part {
			row.RemoveChild(one)
			inside.AppendChild(one)
		}
		if first := part[0]; first.Data == "mo" && !isBracket(first) {
			nodes.Set(first, "form", "infix") // at the beginning it would be the sign of a number
		}
		if i > 0 {
			math.Parent.InsertBefore(nodes.Text(" "), math)
		}
		math.Parent.InsertBefore(shell, math)
	}
	nodes.Remove(math)
}

// opens says whether a line may go on below before a part of it: a sign between two numbers, or a word.
func opens(n *html.Node) bool { return n.Data == "mtext" || n.Data == "mo" && !isBracket(n) }

func isOpening(n *html.Node) bool { return n != nil && n.Data == "mo" && textOf(n) == "(" }

func isBracket(n *html.Node) bool {
	return n != nil && n.Data == "mo" && slices.Contains([]string{"(", ")", ","}, textOf(n))
}
