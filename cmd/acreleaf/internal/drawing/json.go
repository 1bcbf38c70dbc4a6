package drawing

import "encoding/json"

// JSON gives all rules as the script of a page takes them: by calculation the steps, each an operation with its places
// or a literal, and the shapes, each with its condition, what it shows as text, and its attributes.
func JSON() []byte {
	all := map[string][2][]any{}
	for _, r := range rules {
		var steps, shapes []any
		for _, s := range r.Steps {
			if s.Op == Literal {
				steps = append(steps, []any{Literal, s.Value})
				continue
			}
			steps = append(steps, []any{s.Op, s.Takes[0], s.Takes[len(s.Takes)-1]})
		}
		for _, s := range r.Shapes {
			month := 0
			if s.Month {
				month = 1
			}
			var moves []any
			for _, m := range s.Moves {
				move := []any{m.Name}
				for _, at := range m.At {
					move = append(move, at)
				}
				moves = append(moves, move)
			}
			shapes = append(shapes, []any{s.When, s.shown(), month, moves})
		}
		all[r.Of] = [2][]any{steps, shapes}
	}
	text, err := json.Marshal(all)
	if err != nil {
		panic(err) // the rules are part of the program
	}
	return text
}

// shown is the place of the number that a shape shows as its text; Always for none.
func (s *Shape) shown() Place {
	if s.Tag != "text" {
		return Always
	}
	return s.Text
}
