package practice

import (
	"fmt"

	"acreleaf/calc/sheet"
)

// Place puts the exercise to work in a graph. Names in the graph begin with prefix, which no other use begins with. What
// a page or a card needs of it is known once the graph is closed.
func (e *Exercise) Place(g *sheet.Graph, prefix string) error {
	if err := e.resolve(); err != nil {
		return err
	}
	for _, u := range e.Uses {
		u.at = g.Add(prefix+u.Name, u.Sheet, e.linksOf(u, prefix))
	}
	for i, p := range e.Parts {
		s, err := heardSheet(p)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Result, err)
		}
		p.heard = g.Add(fmt.Sprintf("%sheard %d", prefix, i+1), s, nil)
	}
	for _, u := range e.Uses {
		e.placeTwin(g, u, prefix)
	}
	for _, p := range e.Parts {
		p.ask(g)
	}
	return nil
}

// linksOf are the links of a use as the graph knows them.
func (e *Exercise) linksOf(u *Use, prefix string) map[string]sheet.Link {
	links := map[string]sheet.Link{}
	for given, link := range u.Links {
		links[given] = sheet.Link{Use: prefix + link.Use, Name: link.Name}
	}
	return links
}

// placeTwin works a use once more with the answers that were heard for the parts before it, so that a wrong first
// answer costs one part and not all that follow from it.
func (e *Exercise) placeTwin(g *sheet.Graph, u *Use, prefix string) {
	links, differs := e.linksOf(u, prefix), false
	for given, link := range u.Links {
		if p := e.partFor(link); p != nil {
			links[given] = sheet.Link{Use: p.heard.Name, Name: heardAnswer}
			differs = true
		} else if from := e.find(link.Use); from != nil && from.twin != nil {
			links[given] = sheet.Link{Use: from.twin.Name, Name: link.Name}
			differs = true
		}
	}
	if differs {
		u.twin = g.Add(prefix+u.Name+" again", u.Sheet, links)
	}
}

// partFor is the part that asks for just what a link takes; nil if none does.
func (e *Exercise) partFor(link sheet.Link) *Part {
	for _, p := range e.Parts {
		if p.Use == link.Use && p.Result == link.Name {
			return p
		}
	}
	return nil
}

// The givens of the sheet that an answer is put into.
const (
	heardAnswer = "answer" // in the unit that is asked for, or as it stands where it has no unit that fits
	heardBare   = "bare"   // as it is written, without its unit
	heardTold   = "told"   // one of the Told
)

// heardSheet is where the answer to a part is put.
func heardSheet(p *Part) (*sheet.Sheet, error) {
	any := sheet.Field{Label: "answer", Typical: 1, Low: -mostAnswer, High: mostAnswer}
	return sheet.Build("heard", func(s *sheet.Sheet) {
		s.Head("Heard", "An answer that somebody gave.")
		answer := s.Given(heardAnswer, p.result.Unit.String(), any)
		s.Given(heardBare, "", any)
		s.Given(heardTold, "", any)
		s.Answer("given", p.result.Unit.String(), answer, sheet.Says{Label: "answer"})
	})
}

// mostAnswer is more than any answer of a calculation here.
const mostAnswer = 1e15
