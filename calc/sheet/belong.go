package sheet

import "slices"

// A given may belong to a choice: the weight of a gallon and the price are those of the material that is chosen. With
// another option chosen they are figures of something else. A page then sets them aside, and a worksheet or a reckoner
// may take such a figure from another only together with its choice.

// checkFor sees that what a given belongs to is a choice that is asked for before it.
func (s *Sheet) checkFor(g *Given) {
	for _, choice := range g.For {
		if !slices.Contains(s.Givens, choice) || len(choice.Choices) == 0 {
			s.fault("%q belongs to %q, which is no choice before it", g.Name, choice.Name)
		}
	}
}

// ChoicesBehind lists the choices that decide what a given, step or answer is a figure of, in the order of the sheet:
// those that a given belongs to, and those that a result is worked from.
func (s *Sheet) ChoicesBehind(name string) []*Given {
	behind := nodes{}
	behind.add(s.named[name])
	var choices []*Given
	for _, choice := range s.Givens {
		owns := func(g *Given) bool { return behind[g.n] && slices.Contains(g.For, choice) }
		if len(choice.Choices) > 0 && (behind[choice.n] || slices.ContainsFunc(s.Givens, owns)) {
			choices = append(choices, choice)
		}
	}
	return choices
}
