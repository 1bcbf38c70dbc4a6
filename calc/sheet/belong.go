package sheet

import "slices"

// A given may belong to a choice: the weight of a gallon and the price are those of the material that is chosen. With
// another option chosen they are figures of something else. A page then sets them aside, and a worksheet or a reckoner
// may take such a figure from another only together with its choice.

// checkFor reports a given that belongs to something other than a choice that is asked for before it.
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

// checkInstead reports a given that is used instead of a figure of a table and does not belong to the table's choice.
func (s *Sheet) checkInstead() {
	for _, r := range s.Results {
		for _, n := range r.n.args {
			s.checkInsteadOf(n)
		}
	}
}

func (s *Sheet) checkInsteadOf(n *node) {
	if n.kind != kindIf {
		return
	}
	s.checkInsteadOf(n.args[1])
	s.checkInsteadOf(n.args[2])
	for _, g := range s.Givens {
		if g.stated == nil || g.stated != n.args[0] {
			continue
		}
		for _, choice := range s.Givens {
			if looksUp(n.args[2], choice) && !slices.Contains(g.For, choice) {
				s.fault("%q is used instead of a figure by %q, so it belongs to it", g.Name, choice.Name)
			}
		}
	}
}

// looksUp says whether a node is worked from a figure of a table of the choice.
func looksUp(n *node, choice *Given) bool {
	worked := nodes{}
	worked.add(n)
	for at := range worked {
		if at.kind == kindLookup && at.args[0] == choice.n {
			return true
		}
	}
	return false
}
