package practice

import (
	"fmt"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
)

// Placed is an exercise at work in a graph.
type Placed struct {
	*Exercise
	Parts []*Part // by what is asked
	Steps []*Part // all steps of the work that lead there, in its order, with the parts among them

	uses []*placedUse // by the exercise's uses
	deal Deal
}

// A placedUse is a calculation of an exercise at work.
type placedUse struct {
	*Use
	at   *sheet.Use
	twin *sheet.Use // works with the answers that were heard before; nil where none comes before
}

// A Part is one thing that is asked, at work.
type Part struct {
	Ask
	Choice *Choice // nil for a part that is answered with a number; one that is not has no use and no result

	use    *placedUse
	result *sheet.Result
	heard  *sheet.Use
	coded  *sheet.Passage // of a choice: what is kept is the right answer, that from earlier answers, and each option
	slips  []slipAsked
}

// Label is what the answer is called to a reader.
func (p *Part) Label() string {
	if p.Choice != nil {
		return p.Choice.Question
	}
	return p.result.Label
}

// Units are those that the answer may be given in: the one it is asked in, and the other one that is shown.
func (p *Part) Units() []unit.Unit {
	if p.Choice != nil {
		return []unit.Unit{{}}
	}
	list := []unit.Unit{p.result.Unit}
	if p.result.Also != "" {
		list = append(list, unit.MustParse(p.result.Also).Like(p.result.Unit))
	}
	return list
}

// Compared is how many digits an answer is compared to; 0 for a choice, where it must be the very number.
func (p *Part) Compared() int {
	if p.Choice != nil {
		return 0
	}
	return p.Digits
}

// Slips are the known wrong ways to work the answer.
func (p *Part) Slips() []*sheet.Slip {
	var list []*sheet.Slip
	for _, s := range p.slips {
		list = append(list, s.slip)
	}
	return list
}

// Place puts the exercise to work in a graph. Names in the graph begin with prefix, which no other use begins with.
// What a page or a card needs of it is known once the graph is closed. The error is of a part that asks for what is not
// there.
func (e *Exercise) Place(g *sheet.Graph, prefix string) (*Placed, error) {
	placed := &Placed{Exercise: e, deal: e.Deal()}
	for _, u := range e.Uses {
		at := g.Add(prefix+u.Name, u.Sheet, linksOf(u, prefix))
		at.Unsaid = true // no card has numbers without an answer
		placed.uses = append(placed.uses, &placedUse{Use: u, at: at})
	}
	for i, ask := range e.Asks {
		p, err := placed.part(ask)
		if err != nil {
			return nil, err
		}
		if err := p.place(g, fmt.Sprintf("%sheard %d", prefix, i+1)); err != nil {
			return nil, err
		}
		placed.Parts = append(placed.Parts, p)
	}
	if err := placed.placeSteps(g, prefix); err != nil {
		return nil, err
	}
	for _, u := range placed.uses {
		placed.placeTwin(g, u, prefix)
	}
	for _, p := range placed.Steps {
		p.ask()
	}
	return placed, placed.placeChoices(g, prefix)
}

// placeChoices places what is answered without a number, after all else.
func (e *Placed) placeChoices(g *sheet.Graph, prefix string) error {
	for i, choice := range e.Choices {
		p := &Part{Ask: Ask{Digits: e.Asks[0].Digits}, Choice: choice}
		if err := p.place(g, fmt.Sprintf("%sheard choice %d", prefix, i+1)); err != nil {
			return err
		}
		e.askChoice(g, p)
		e.Parts, e.Steps = append(e.Parts, p), append(e.Steps, p)
	}
	return nil
}

// place makes room in the graph for an answer to a part.
func (p *Part) place(g *sheet.Graph, name string) error {
	s, err := heardSheet(p)
	if err != nil {
		return fmt.Errorf("%s: %w", p.Result, err)
	}
	p.heard = g.Add(name, s, nil)
	p.heard.Quiet = true
	return nil
}

// part finds what is asked for.
func (e *Placed) part(ask Ask) (*Part, error) {
	u := e.find(ask.Use)
	if u == nil {
		return nil, fmt.Errorf("there is no calculation %q in this exercise", ask.Use)
	}
	p := &Part{Ask: ask, use: u, result: u.Sheet.FindResult(ask.Result)}
	if p.result == nil {
		return nil, fmt.Errorf("%s has no answer %q", u.Sheet.Name, ask.Result)
	}
	return p, nil
}

// find gives the use of a name; nil if there is none.
func (e *Placed) find(name string) *placedUse {
	for _, u := range e.uses {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// linksOf are the links of a use as the graph knows them.
func linksOf(u *Use, prefix string) map[string]sheet.Link {
	links := map[string]sheet.Link{}
	for given, link := range u.Links {
		links[given] = sheet.Link{Use: prefix + link.Use, Name: link.Name}
	}
	return links
}

// placeTwin works a use once more with the answers that were heard for the parts before it, so that a wrong first
// answer costs one part and not all that follow from it.
func (e *Placed) placeTwin(g *sheet.Graph, u *placedUse, prefix string) {
	links, differs := linksOf(u.Use, prefix), false
	for given, link := range u.Links {
		if p := find(e.Steps, link); p != nil {
			links[given] = sheet.Link{Use: p.heard.Name, Name: heardAnswer}
			differs = true
		} else if from := e.find(link.Use); from != nil && from.twin != nil {
			links[given] = sheet.Link{Use: from.twin.Name, Name: link.Name}
			differs = true
		}
	}
	if differs {
		u.twin = g.Add(prefix+u.Name+" again", u.Sheet, links)
		u.twin.Quiet = true
	}
}

// partFor is the part that asks for just what a link takes; nil if none does.
func (e *Placed) partFor(link sheet.Link) *Part { return find(e.Parts, link) }

func find(parts []*Part, link sheet.Link) *Part {
	for _, p := range parts {
		if p.Use == link.Use && p.Result == link.Name {
			return p
		}
	}
	return nil
}

// heardAnswer is the given of the sheet that an answer is put into.
const heardAnswer = "answer"

// heardSheet is where the answer to a part is put.
func heardSheet(p *Part) (*sheet.Sheet, error) {
	any := sheet.Field{Label: "answer", Typical: 1, Low: -mostAnswer, High: mostAnswer}
	return sheet.Build("heard", func(s *sheet.Sheet) {
		s.Head("Heard", "An answer that somebody gave.")
		answer := s.Given(heardAnswer, p.Units()[0].String(), any)
		s.Answer("given", p.Units()[0].String(), answer, sheet.Says{Label: "answer"})
	})
}

// mostAnswer is more than any answer of a calculation here.
const mostAnswer = 1e15
