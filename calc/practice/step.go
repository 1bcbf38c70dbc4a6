package practice

import (
	"fmt"
	"slices"

	"acreleaf/calc/sheet"
)

// placeSteps finds the steps that lead to what is asked for, in the order of the work, with what is asked among them.
// Each is a part, so that it is marked as an answer is.
func (e *Placed) placeSteps(g *sheet.Graph, prefix string) error {
	for _, u := range e.uses {
		needed := map[string]bool{}
		for _, name := range e.wanted(u.Use) {
			for _, r := range u.Sheet.Needs(name) {
				needed[r.Name] = true
			}
		}
		for _, r := range u.Sheet.Results {
			link := sheet.Link{Use: u.Name, Name: r.Name}
			if asked := e.partFor(link); asked != nil {
				e.Steps = append(e.Steps, asked)
			} else if needed[r.Name] && r.Always() {
				p := &Part{Ask: Ask{Use: u.Name, Result: r.Name, Digits: e.Asks[0].Digits}, use: u, result: r}
				if err := p.place(g, fmt.Sprintf("%sheard step %d", prefix, len(e.Steps)+1)); err != nil {
					return err
				}
				e.Steps = append(e.Steps, p)
			}
		}
	}
	return nil
}

// wanted are the results of a use that are asked for, or that another use takes.
func (e *Placed) wanted(u *Use) []string {
	var names []string
	for _, ask := range e.Asks {
		if ask.Use == u.Name {
			names = append(names, ask.Result)
		}
	}
	for _, other := range e.Uses {
		for _, link := range other.Links {
			if link.Use == u.Name {
				names = append(names, link.Name)
			}
		}
	}
	return names
}

// IsAsked says whether a step is one of the parts that a card asks for.
func (e *Placed) IsAsked(p *Part) bool { return slices.Contains(e.Parts, p) }
