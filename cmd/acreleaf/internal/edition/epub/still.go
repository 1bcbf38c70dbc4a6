package epub

import (
	"strings"

	"golang.org/x/net/html"
)

// still makes the body of a page into that of a book: the title and text, then the answers, then what is at the foot.
func still(page *html.Node, v *volume) *html.Node {
	exercises := all(page, isOf("exercise"))
	for _, live := range all(page, isLive) {
		remove(live)
	}
	answers := answersOf(exercises, v)
	for _, field := range all(page, isOf("field")) {
		stillField(field, v)
	}
	for _, more := range all(page, isOf("more")) {
		if find(more, isOf("field")) == nil {
			remove(more)
		}
	}
	for _, folded := range all(page, isElement("details")) {
		folded.Data = "div"
		unset(folded, func(name string) bool { return name == "open" })
	}
	for _, summary := range all(page, isElement("summary")) {
		summary.Data = "div"
		set(summary, "class", "summary")
	}
	body := element("body", "")
	if office := find(page, isOf("office")); office != nil {
		remove(office)
		body.AppendChild(office)
	}
	move(find(page, isElement("main")), body)
	breakLines(body)
	if head := find(body, isOf("head")); head != nil {
		head.AppendChild(example(v))
	}
	if answers != nil {
		body.AppendChild(answers)
	}
	if foot := find(page, isOf("foot")); foot != nil {
		remove(foot)
		body.AppendChild(foot)
	}
	return body
}

// isLive asks for what is of no use in a book: what a script or a person puts something into, ways between the pages of
// the site, and what does not hold for the example.
func isLive(n *html.Node) bool {
	if n.Type == html.CommentNode {
		return true
	}
	if n.Type != html.ElementNode {
		return false
	}
	switch n.Data {
	case "script", "template", "button", "nav", "fieldset":
		return true
	}
	hint := isOf("hint")(n) && !isOf("below")(n) && n.Data == "p" // how to fill in the field
	code := n.Data == "a" && isOf("work")(n.Parent)               // it is on a page of the site
	foot := n.Data == "footer" && isOf("worksheet")(n.Parent)     // it has the buttons
	told := attribute(n, "role") == "status"
	return has(n, "hidden") || hint || code || foot || told || isOf("self")(n) || isOf("state")(n) || isOf("card")(n)
}

// example is the sentence that the numbers are those of the example, with the way to the page that takes others.
func example(v *volume) *html.Node {
	sentence := element("p", "example", text(v.words.Book.Still))
	if v.address != "" {
		way := element("a", "", text(v.address))
		set(way, "href", v.address)
		sentence.AppendChild(text(" " + v.words.Book.Live + " "))
		sentence.AppendChild(way)
	}
	return sentence
}

// stillField writes what is in a field. One that is empty in the example is left out.
func stillField(field *html.Node, v *volume) {
	label := find(field, isElement("label"))
	if label == nil {
		return // it takes its number from another worksheet, and is text
	}
	value := ""
	if input := find(field, isElement("input")); input != nil {
		value = attribute(input, "value")
		if value == "" {
			remove(field)
			return
		}
		if attribute(input, "type") == "date" {
			value = v.words.Date.InWords(value)
		}
	}
	unit := ""
	if list := find(field, isElement("select")); list != nil {
		unit = chosen(list)
	} else if span := find(field, isOf("unit")); span != nil {
		unit = textOf(span)
	}
	if optional := find(label, isElement("small")); optional != nil {
		remove(optional)
	}
	inside := element("p", "field")
	inside.AppendChild(element("span", "", text(textOf(label))))
	inside.AppendChild(text(" "))
	inside.AppendChild(element("b", "", text(together(value, unit))))
	replace(field, inside)
}

// together is a number with its unit, which may be written before it.
func together(value, unit string) string {
	if money, per, is := strings.Cut(unit, "$"); is && money == "" {
		return "$" + value + per
	}
	return strings.TrimSpace(value + " " + unit)
}

// chosen is the text of the option that is chosen in a list.
func chosen(list *html.Node) string {
	options := all(list, isElement("option"))
	for _, o := range options {
		if has(o, "selected") {
			return textOf(o)
		}
	}
	if len(options) == 0 {
		return ""
	}
	return textOf(options[0])
}

// answersOf takes the answers and the work out of the exercises, and gives them as a part of their own; nil for none.
func answersOf(exercises []*html.Node, v *volume) *html.Node {
	part := element("section", "answers", element("h2", "", text(v.words.Book.Answers)))
	for _, exercise := range exercises {
		for _, entry := range all(exercise, isOf("entry")) {
			remove(entry)
		}
		for _, options := range all(exercise, isOf("options")) {
			stillOptions(options)
		}
		for _, label := range all(exercise, isElement("label")) {
			unwrap(label)
		}
		solution, title := find(exercise, isOf("solution")), find(exercise, isElement("h2"))
		if solution == nil || title == nil {
			continue
		}
		anchor := attribute(exercise, "id")
		forth := element("a", "", text(textOf(find(solution, isElement("summary")))))
		set(forth, "href", "#"+anchor+"-answer")
		replace(solution, element("p", "", forth))
		remove(find(solution, isElement("summary")))
		back := element("a", "", text(textOf(title)))
		set(back, "href", "#"+anchor)
		for _, below := range all(solution, isElement("h3")) {
			below.Data = "h4"
		}
		answer := element("section", "answer-of", element("h3", "", back))
		set(answer, "id", anchor+"-answer")
		move(solution, answer)
		part.AppendChild(answer)
	}
	if find(part, isElement("section")) == nil {
		return nil
	}
	set(part.FirstChild, "id", "exercise--answers") // no exercise can have that name
	return part
}

// stillOptions makes a list of texts of what a reader chooses from.
func stillOptions(options *html.Node) {
	for _, control := range []string{"input", "select"} {
		for _, one := range all(options, isElement(control)) {
			remove(one)
		}
	}
	unset(options.Parent, func(name string) bool { return name == "role" || strings.HasPrefix(name, "aria-") })
}
