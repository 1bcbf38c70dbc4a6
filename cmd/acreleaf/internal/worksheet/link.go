package worksheet

import (
	"errors"
	"fmt"
	"strings"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

// A linkEntry is "from soil.nitrogen" as an author wrote it.
type linkEntry struct {
	sheet.Link
	span message.Span
}

// parseLink reads "from soil.nitrogen". False if the value does not start with from.
func parseLink(entry markdown.Entry) (linkEntry, bool) {
	rest, is := strings.CutPrefix(entry.Value, "from ")
	if !is {
		return linkEntry{}, false
	}
	use, name, _ := strings.Cut(strings.TrimSpace(rest), ".")
	return linkEntry{sheet.Link{Use: use, Name: name}, entry.ValueSpan}, true
}

// link makes the graph of the blocks that have no fault and take nothing from one that has.
func (b *binder) link() {
	b.checkNames()
	b.dropDependents()
	for {
		graph := &sheet.Graph{}
		for _, bound := range b.bound {
			links := map[string]sheet.Link{}
			for given, l := range bound.links {
				links[given] = l.Link
			}
			bound.Use = graph.Add(bound.name, bound.Sheet, links)
		}
		if !b.checkUnits(graph) {
			b.dropDependents()
			continue
		}
		err := graph.Close()
		if err == nil {
			b.page.Graph = graph
			return
		}
		b.reportCircle(err)
		b.dropDependents()
	}
}

// checkNames reports links to what is not there.
func (b *binder) checkNames() {
	for _, bound := range b.bound {
		for _, given := range bound.Sheet.Givens {
			link, is := bound.links[given.Name]
			if !is || b.faulty[link.Use] {
				continue
			}
			from := b.named(link.Use)
			switch {
			case from == nil:
				b.drop(bound, link.span, "link-unknown", fmt.Sprintf("there is no worksheet %q in this page", link.Use),
					nearest("write from", link.Use, b.worksheetNames()))
			case !hasName(from.Sheet, link.Name):
				b.drop(bound, link.span, "link-unknown",
					fmt.Sprintf("worksheet %q has no %q", link.Use, link.Name),
					nearest("write from "+link.Use+".", link.Name, from.Sheet.Names()))
			}
		}
	}
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
				b.drop(bound, link.span, "link-unfit", err.Error(),
					fmt.Sprintf("take another answer of worksheet %q, or write the quantity: %s: %s",
						link.Use, given.Name, given.Example()))
				good = false
			}
		}
	}
	return good
}

func (b *binder) reportCircle(err error) {
	var circle *sheet.CircleError
	if !errors.As(err, &circle) {
		panic(err) // every link was checked
	}
	first := b.named(circle.Members[0])
	span := first.Block.Span
	for _, l := range first.links {
		if l.Use == circle.Members[1] {
			span = l.span
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
			out := b.faulty[bound.name]
			for _, l := range bound.links {
				out = out || b.faulty[l.Use]
			}
			if out {
				b.faulty[bound.name] = true
				again = true
				continue
			}
			kept = append(kept, bound)
		}
		b.bound = kept
	}
}

// From is where a given takes its value from. False if it is filled in, or left out.
func (b *Bound) From(given string) (sheet.Link, bool) {
	l, ok := b.links[given]
	return l.Link, ok
}
