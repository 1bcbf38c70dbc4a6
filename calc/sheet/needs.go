package sheet

// Takes are the givens that a result is worked from.
func (s *Sheet) Takes(result string) []string {
	var list []string
	seen := s.below(result)
	for _, g := range s.Givens {
		if seen[s.named[g.Name]] {
			list = append(list, g.Name)
		}
	}
	return list
}

// Needs are the steps and answers that a result is worked from, and itself, in the order of the work.
func (s *Sheet) Needs(result string) []*Result {
	var list []*Result
	seen := s.below(result)
	for _, r := range s.Results {
		if seen[r.n] {
			list = append(list, r)
		}
	}
	return list
}

// below is all that a result is worked from, and itself.
func (s *Sheet) below(result string) map[*node]bool {
	seen := map[*node]bool{}
	var visit func(n *node)
	visit = func(n *node) {
		if !seen[n] {
			seen[n] = true
			for _, arg := range n.args {
				visit(arg)
			}
		}
	}
	if r := s.FindResult(result); r != nil {
		visit(r.n)
	}
	return seen
}

// Always says whether a result is a number that is there whatever the givens are, and is printed under its own name.
func (r *Result) Always() bool { return r.when == nil && !r.Date && r.Twin == "" }
