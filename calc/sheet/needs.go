package sheet

// Needs are the steps and answers that a result is worked from, and itself, in the order of the work.
func (s *Sheet) Needs(result string) []*Result {
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
	var list []*Result
	for _, r := range s.Results {
		if seen[r.n] {
			list = append(list, r)
		}
	}
	return list
}

// Always says whether a result is a number that is there whatever the givens are, and is printed under its own name.
func (r *Result) Always() bool { return r.when == nil && !r.Date && r.Twin == "" }
