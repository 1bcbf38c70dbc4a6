package sheet

import "sync"

// A way is one of the ways that a result may be worked: the formula, and the answers to the questions that lead to it.
type way struct {
	asked []*node
	yes   []bool
	body  *node

	scale   func() float64 // see hidden
	symbols *sync.Map      // the formula in names as MathML, a string by the *words.General it is in
}

// followWays lists the ways a result may be worked, in order. Without an If there is one, and no question. To leave a
// result out is no way to work it.
func (r *Result) followWays() []*way {
	all := follow(r.n.args[0], way{})
	if r.when != nil {
		all = all[:len(all)-1]
	}
	for _, w := range all {
		w.scale = sync.OnceValue(func() float64 { return hidden(r, w) })
		w.symbols = new(sync.Map)
	}
	return all
}

func follow(n *node, so way) []*way {
	if n.kind != kindIf {
		so.body = n
		return []*way{&so}
	}
	return append(
		follow(n.args[1], so.answered(n.args[0], true)),
		follow(n.args[2], so.answered(n.args[0], false))...)
}

func (w way) answered(question *node, yes bool) way {
	return way{
		asked: append(append([]*node{}, w.asked...), question),
		yes:   append(append([]bool{}, w.yes...), yes),
	}
}
