package sheet

import (
	"strings"
	"unicode"
)

// checkShape finds what can only be seen once the sheet is whole.
func (s *Sheet) checkShape() {
	s.checkName(s.Name)
	if len(s.Answers()) == 0 {
		s.fault("it has no answer")
	}
	shown, seen := nodes{}, nodes{}
	for _, r := range s.Results {
		s.checkWays(r.n.args[0], r.Name, true)
		s.checkTwin(r)
		shown.add(r.n)
	}
	for _, r := range s.spoken() {
		s.checkRemark(r)
		shown.add(r.when)
	}
	for _, slip := range s.Slips {
		s.checkWays(slip.n, slip.Name, true)
		s.checkWays(slip.when, slip.Name, false)
		seen.add(slip.n)
		seen.add(slip.when)
	}
	for _, c := range s.Constants {
		n := s.named[c.Name]
		c.OnlySlips = seen[n] && !shown[n]
	}
	s.checkOwn(shown, seen)
	s.checkInstead()
}

// checkTwin reports an answer that is not printed and may differ from the one that is printed for it.
func (s *Sheet) checkTwin(r *Result) {
	if r.Twin == "" {
		return
	}
	other := s.FindResult(r.Twin)
	if other == nil || other == r || other.Twin != "" || !r.Answer || !other.Answer || other.n.args[0] != r.n.args[0] {
		s.fault("%q is not worked as the answer %q is, so it cannot be left unprinted for it", r.Name, r.Twin)
	}
}

// nodes is a set of nodes.
type nodes map[*node]bool

// add adds a node and all that it is worked from; nil adds nothing.
func (m nodes) add(n *node) {
	if n == nil || m[n] {
		return
	}
	m[n] = true
	for _, arg := range n.args {
		m.add(arg)
	}
}

// checkOwn reports a named part that another sheet made: its term would have no value here.
func (s *Sheet) checkOwn(sets ...nodes) {
	for _, set := range sets {
		for n := range set {
			if n.name != "" && !s.own[n] {
				s.fault("%q is a term of another sheet", n.name)
				return
			}
		}
	}
}

// checkName reports a name that cannot be written in a link, a formula and an address.
func (s *Sheet) checkName(name string) {
	odd := func(r rune) bool {
		return r != '-' && !unicode.IsDigit(r) && (!unicode.IsLetter(r) || unicode.IsUpper(r))
	}
	if strings.Trim(name, "-") != name || name == "" || strings.ContainsFunc(name, odd) {
		s.fault("%q is not a name: use small letters and hyphens", name)
	}
}

// checkRemark reports a remark with a name in it that has no value and no unit.
func (s *Sheet) checkRemark(r *Remark) {
	s.checkWays(r.when, r.Text, false)
	s.checkBare(r)
	for _, name := range r.names() {
		given := s.FindGiven(name)
		if _, ok := s.UnitOf(name); !ok || given != nil && len(given.Choices) > 0 {
			s.fault("the remark %q speaks of %q, which is no quantity of the sheet", r.Text, name)
		}
	}
}

// checkWays reports an If that is not at the top of a result or a slip, where each way prints as a line.
func (s *Sheet) checkWays(n *node, name string, top bool) {
	if n == nil || n.kind == kindNamed {
		return
	}
	if n.kind == kindIf && !top {
		s.fault("%q holds an If inside a formula; give that part a step of its own", name)
	}
	for i, arg := range n.args {
		s.checkWays(arg, name, top && n.kind == kindIf && i > 0)
	}
}
