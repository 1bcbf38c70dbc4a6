package epub

import (
	"strings"

	"golang.org/x/net/html"

	"acreleaf/cmd/acreleaf/internal/nodes"
)

// A stilled page is one in which nothing is live: its text, the answers to its exercises, and what is at its foot.
type stilled struct {
	body    *html.Node
	answers []*html.Node // a section each
	foot    *html.Node
	fields  bool // the page takes numbers
	cards   bool // it has exercises
}

// A place is where a page and the answers to its exercises are: both in one file, or in two. The id of an answer begins
// with the prefix.
type place struct{ text, answers, prefix string }

// still makes the body of a page into that of a book.
func still(page *html.Node, v *volume, at place) *stilled {
	exercises := all(page, isOf("exercise"))
	s := &stilled{cards: len(exercises) > 0}
	for _, live := range all(page, isLive) {
		nodes.Remove(live)
	}
	for _, last := range all(page, isOf("last")) {
		joinLists(last)
	}
	s.answers = answersOf(exercises, at)
	for _, field := range all(page, isOf("field")) {
		s.fields = s.fields || find(field, isElement("input")) != nil || find(field, isElement("select")) != nil
		stillField(field, v)
	}
	for _, more := range all(page, isOf("more")) {
		if find(more, isOf("field")) == nil {
			nodes.Remove(more)
		}
	}
	for _, folded := range all(page, isElement("details")) {
		folded.Data = "div"
		nodes.Unset(folded, "open")
	}
	for _, summary := range all(page, isElement("summary")) {
		summary.Data = "div"
		nodes.Set(summary, "class", "summary")
	}
	s.body = nodes.Element("body", "")
	if office := find(page, isOf("office")); office != nil {
		nodes.Remove(office)
		s.body.AppendChild(office)
	}
	move(find(page, isElement("main")), s.body)
	breakLines(s.body)
	for _, answer := range s.answers {
		breakLines(answer)
	}
	if s.foot = find(page, isOf("foot")); s.foot != nil {
		nodes.Remove(s.foot)
	}
	return s
}

// end puts what is at the foot of the page at the end of a body.
func (s *stilled) end(body *html.Node) {
	if s.foot != nil {
		body.AppendChild(s.foot)
	}
}

// joinLists puts the last step of the work, which a page folds by itself, into the list of the others.
func joinLists(last *html.Node) {
	for before := last.PrevSibling; before != nil; before = before.PrevSibling {
		if before.Data == last.Data {
			move(last, before)
			nodes.Remove(last)
			return
		}
	}
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
	told := nodes.Attribute(n, "role") == "status"
	undrawn := nodes.Attribute(n, "display") == "none" // a shape of a picture, without a place
	return nodes.Has(n, "hidden") || undrawn || hint || code || foot || told ||
		isOf("self")(n) || isOf("state")(n) || isOf("card")(n)
}

// example says below the title what the numbers are: those of the example or of one card, with the way to the page
// that takes others. A page that takes none says nothing.
func (s *stilled) example(v *volume) {
	words := &v.words.Book
	still, live := words.Still, words.Live
	switch {
	case s.fields:
	case s.cards:
		still, live = words.OneCard, words.Cards
	default:
		return
	}
	sentence := nodes.Element("p", "example", nodes.Text(still))
	if v.address != "" {
		way := nodes.Element("a", "", nodes.Text(v.address))
		nodes.Set(way, "href", v.address)
		sentence.AppendChild(nodes.Text(" " + live + " "))
		sentence.AppendChild(way)
	}
	if head := find(s.body, isOf("head")); head != nil {
		head.AppendChild(sentence)
	}
}

// stillField writes what is in a field. One that is empty in the example is left out.
func stillField(field *html.Node, v *volume) {
	label := find(field, isElement("label"))
	if label == nil {
		return // it takes its number from another worksheet, and is text
	}
	value := ""
	if input := find(field, isElement("input")); input != nil {
		value = nodes.Attribute(input, "value")
		if value == "" {
			nodes.Remove(field)
			return
		}
		if nodes.Attribute(input, "type") == "date" {
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
		nodes.Remove(optional)
	}
	inside := nodes.Element("p", "field")
	inside.AppendChild(nodes.Element("span", "", nodes.Text(textOf(label))))
	inside.AppendChild(nodes.Text(" "))
	inside.AppendChild(nodes.Element("b", "", nodes.Text(together(value, unit))))
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
		if nodes.Has(o, "selected") {
			return textOf(o)
		}
	}
	if len(options) == 0 {
		return ""
	}
	return textOf(options[0])
}

// answersOf takes the answers and the work out of the exercises, and gives a section for each.
func answersOf(exercises []*html.Node, at place) []*html.Node {
	var list []*html.Node
	for _, exercise := range exercises {
		for _, entry := range all(exercise, isOf("entry")) {
			nodes.Remove(entry)
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
		anchor := nodes.Attribute(exercise, "id")
		forth := nodes.Element("a", "", nodes.Text(textOf(find(solution, isElement("summary")))))
		nodes.Set(forth, "href", at.answers+"#"+at.prefix+anchor+"-answer")
		replace(solution, nodes.Element("p", "", forth))
		nodes.Remove(find(solution, isElement("summary")))
		for _, named := range all(solution, func(n *html.Node) bool { return nodes.Has(n, "id") }) {
			nodes.Set(named, "id", at.prefix+nodes.Attribute(named, "id"))
		}
		back := nodes.Element("a", "", nodes.Text(textOf(title)))
		nodes.Set(back, "href", at.text+"#"+anchor)
		for _, below := range all(solution, isElement("h3")) {
			below.Data = "h4"
		}
		answer := nodes.Element("section", "answer-of", nodes.Element("h3", "", back))
		nodes.Set(answer, "id", at.prefix+anchor+"-answer")
		move(solution, answer)
		list = append(list, answer)
	}
	return list
}

// answerPart puts answers below their title, which is a heading of the level.
func answerPart(v *volume, heading string, answers []*html.Node) *html.Node {
	title := nodes.Element(heading, "", nodes.Text(v.words.Book.Answers))
	nodes.Set(title, "id", "exercise--answers") // no exercise can have that name
	part := nodes.Element("section", "answers", title)
	for _, answer := range answers {
		part.AppendChild(answer)
	}
	return part
}

// stillOptions makes a list of texts of what a reader chooses from.
func stillOptions(options *html.Node) {
	for _, control := range []string{"input", "select"} {
		for _, one := range all(options, isElement(control)) {
			nodes.Remove(one)
		}
	}
	nodes.UnsetAll(options.Parent, func(name string) bool { return name == "role" || strings.HasPrefix(name, "aria-") })
}
