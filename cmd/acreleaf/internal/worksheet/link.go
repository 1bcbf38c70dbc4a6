package worksheet

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A linkEntry is "from soil.nitrogen" as an author wrote it.
type linkEntry struct {
	sheet.Link
	span    message.Span
	follows bool // not written for this given: the reckoner follows the worksheet
}

// parseLink reads "from soil.nitrogen". False if the value does not start with from.
func parseLink(entry markdown.Entry) (linkEntry, bool) {
	rest, is := strings.CutPrefix(entry.Value, "from ")
	if !is {
		return linkEntry{}, false
	}
	use, name, _ := strings.Cut(strings.TrimSpace(rest), ".")
	return linkEntry{Link: sheet.Link{Use: use, Name: name}, span: entry.ValueSpan}, true
}

// link makes the graph of the blocks that have no fault and take nothing from one that has.
func (b *binder) link() {
	b.checkNames()
	b.dropDependents()
	for {
		graph := &sheet.Graph{Language: b.tag}
		for _, bound := range b.bound {
			links := map[string]sheet.Link{}
			for given, l := range bound.links {
				links[given] = l.Link
			}
			bound.Use = graph.Add(bound.name, bound.Sheet, links)
		}
		b.placeExercises(graph)
		if !b.checkUnits(graph) {
			b.dropDependents()
			continue
		}
		err := graph.Order()
		switch {
		case err != nil:
			b.reportCircle(err)
		case b.checkBelonging():
			b.page.Graph = graph
			b.bindPassages(graph)
			if err := graph.Close(); err != nil {
				panic(err) // its order and its links were checked
			}
			return
		}
		b.dropDependents()
	}
}

// checkNames reports links to what is not there.
func (b *binder) checkNames() {
	for _, bound := range b.bound {
		b.checkFollow(bound)
		for _, given := range bound.Sheet.Givens {
			link, is := bound.links[given.Name]
			if !is || b.faulty[link.Use] || b.faulty[bound.name] && link.follows {
				continue
			}
			from := b.named(link.Use)
			switch {
			case from == nil:
				b.unknownWorksheet(bound, link)
			case !hasName(from.Sheet, link.Name):
				b.unknownNumber(bound, given, link, from)
			}
		}
	}
}

// checkFollow reports a reckoner that follows a worksheet that is not there.
func (b *binder) checkFollow(bound *Bound) {
	if bound.Kind == construct.Worksheet || bound.Table.Follow == "" {
		return
	}
	use := bound.Table.Follow
	if !b.faulty[use] && b.named(use) == nil {
		link := linkEntry{Link: sheet.Link{Use: use}, span: bound.Table.followSpan, follows: true}
		b.unknownWorksheet(bound, link)
	}
}

func (b *binder) unknownWorksheet(bound *Bound, link linkEntry) {
	names, before, wanted := b.worksheetNames(), "from ", link.Use
	if link.follows {
		before = "follow: "
	} else if link.Name != "" {
		names, wanted = figuresOf(names, link.Name), link.Use+"."+link.Name
	}
	note := "write a worksheet of that name first, or the quantity itself"
	if len(names) > 0 {
		note = write(before, wanted, names)
	}
	b.drop(bound, link.span, "link-unknown", fmt.Sprintf("there is no worksheet %q in this page", link.Use), note)
}

func (b *binder) unknownNumber(bound *Bound, given *sheet.Given, link linkEntry, from *Bound) {
	fitting := b.fitting(bound.Sheet, given, from)
	switch {
	case link.follows && given.Optional:
		delete(bound.links, given.Name)
	case link.follows:
		b.drop(bound, bound.Block.Span, "given-missing",
			fmt.Sprintf("this reckoner does not say %s, and worksheet %q has none", given.Name, link.Use),
			fmt.Sprintf("add a line such as: %s: %s", given.Name, given.Example()))
	case len(fitting) == 0:
		b.drop(bound, link.span, "link-unknown", fmt.Sprintf("worksheet %q has nothing to take for %s", link.Use, given.Name),
			"write the quantity itself: "+given.Name+": "+given.Example())
	case link.Name == "":
		b.drop(bound, link.span, "link-unknown",
			fmt.Sprintf("this does not say which number of worksheet %q it takes", link.Use),
			write("from "+link.Use+".", link.Name, fitting))
	default:
		b.drop(bound, link.span, "link-unknown", fmt.Sprintf("worksheet %q has no %q", link.Use, link.Name),
			write("from "+link.Use+".", link.Name, fitting))
	}
}

// fitting lists what a given can take from a worksheet.
func (b *binder) fitting(s *sheet.Sheet, given *sheet.Given, from *Bound) []string {
	trial := &sheet.Graph{}
	trial.Add(from.name, from.Sheet, nil)
	var names []string
	for _, name := range from.Sheet.Names() {
		link := sheet.Link{Use: from.name, Name: name}
		if trial.CheckLink(s, given.Name, link) == nil {
			names = append(names, name)
		}
	}
	return names
}

func hasName(s *sheet.Sheet, name string) bool {
	_, ok := s.UnitOf(name)
	return ok
}

// checkUnits reports links whose dimensions do not agree. False if there was one.
func (b *binder) checkUnits(graph *sheet.Graph) bool {
	good := true
	for _, bound := range b.bound {
		for _, given := range bound.Sheet.Givens {
			link, is := bound.links[given.Name]
			if !is {
				continue
			}
			if err := graph.CheckLink(bound.Sheet, given.Name, link.Link); err != nil {
				b.drop(bound, link.span, "link-unfit", b.unfit(given, link, err), b.instead(bound, given, link))
				good = false
			}
		}
	}
	return good
}

// unfit says what the two ends of a link are, or what else is wrong with it.
func (b *binder) unfit(given *sheet.Given, link linkEntry, err error) string {
	from := b.named(link.Use).Sheet
	source := from.FindGiven(link.Name)
	own, _ := from.UnitOf(link.Name)
	switch fromList := source != nil && len(source.Choices) > 0; {
	case len(given.Choices) > 0:
		return fmt.Sprintf("%s is chosen from a list that %s.%s does not choose from", given.Name, link.Use, link.Name)
	case fromList:
		return fmt.Sprintf("%s.%s is chosen from a list, and %s is a number", link.Use, link.Name, given.Name)
	}
	if _, other := own.For(given.Unit); other == nil {
		return err.Error()
	}
	return fmt.Sprintf("%s.%s is %s (%s); %s is %s (%s)", link.Use, link.Name, own.Dimension(), own,
		given.Name, given.Unit.Dimension(), given.Unit)
}

// instead is what to write in place of a link that does not fit.
func (b *binder) instead(bound *Bound, given *sheet.Given, link linkEntry) string {
	quantity := given.Name + ": " + b.typed(given, link)
	if fitting := b.fitting(bound.Sheet, given, b.named(link.Use)); len(fitting) > 0 {
		return write("from "+link.Use+".", link.Name, fitting) + ", or the quantity itself: " + quantity
	}
	return "write the quantity itself: " + quantity
}

// typed is what the author wrote at the other end of a link, if the given takes that, and else an ordinary quantity.
func (b *binder) typed(given *sheet.Given, link linkEntry) string {
	for _, entry := range b.named(link.Use).Block.Entries {
		if entry.Key != link.Name {
			continue
		}
		if _, err := given.Read(b.language.PointDecimals(entry.Value)); err == nil {
			return entry.Value
		}
	}
	return given.Example()
}

func (b *binder) reportCircle(err error) {
	var circle *sheet.CircleError
	if !errors.As(err, &circle) {
		panic(err) // every link was checked
	}
	first := b.named(circle.Members[0])
	span := first.Block.Span
	for _, given := range first.Sheet.Givens {
		if l, is := first.links[given.Name]; is && l.Use == circle.Members[1] {
			span = l.span
			break
		}
	}
	b.drop(first, span, "worksheet-circle", circle.Error(),
		"write the quantity itself in one of them, so that there is a place to start")
}

// drop reports a fault of a block that was bound, and marks it as left out.
func (b *binder) drop(bound *Bound, span message.Span, id, text, note string) {
	b.fault(span, id, text, note)
	b.faulty[bound.name] = true
}

// dropDependents leaves out the faulty blocks, and all that take numbers from them.
func (b *binder) dropDependents() {
	for again := true; again; {
		again = false
		var kept []*Bound
		for _, bound := range b.bound {
			if b.faulty[bound.name] || b.takesFromFaulty(bound) {
				b.faulty[bound.name] = true
				again = true
				continue
			}
			kept = append(kept, bound)
		}
		b.bound = kept
	}
}

func (b *binder) takesFromFaulty(bound *Bound) bool {
	for _, l := range bound.links {
		if b.faulty[l.Use] {
			return true
		}
	}
	return false
}

// From is where a given takes its value from. False if it is filled in, or left out.
func (b *Bound) From(given string) (sheet.Link, bool) {
	l, ok := b.links[given]
	return l.Link, ok
}
