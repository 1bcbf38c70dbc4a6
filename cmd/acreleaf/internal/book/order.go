package book

import (
	"fmt"
	"math"

	"acreleaf/cmd/acreleaf/internal/kind"
	"acreleaf/cmd/acreleaf/internal/message"
)

// An orderOf is a place among the pages of a kind, as readers see it: a page that shows its number shows no part of it.
type orderOf struct {
	kind             kind.Kind
	language, course string
	order            float64
}

func shownOrder(d *draft) orderOf {
	order := d.metadata.Order
	if whole := math.Trunc(order); d.address.Kind.Row().Numbered && whole > 0 {
		order = whole
	}
	return orderOf{d.address.Kind, d.address.Language, d.address.Course(), order}
}

// checkOrders advises on a page that shares its order with another: a list would number both alike, or put one first by
// its title.
func (p *press) checkOrders() {
	if !p.rules.Advice {
		return
	}
	first := map[orderOf]*draft{}
	for _, d := range p.pages {
		row := d.address.Kind.Row()
		if d.faulty || !d.metadata.Ordered || !row.Numbered && !row.Turns {
			continue
		}
		at := shownOrder(d)
		before := first[at]
		if before == nil {
			first[at] = d
			continue
		}
		text := fmt.Sprintf("%s has the order %v too", before.source.Name, d.metadata.Order)
		if d.metadata.Order != before.metadata.Order {
			text = fmt.Sprintf("%s shows the number %v too: readers see only the whole number of an order",
				before.source.Name, at.order)
		}
		m := d.fault(d.metadata.Places.Order, "order-shared", text, "give each page a whole number of its own")
		m.Level = message.Advice
		p.say(message.List{m})
	}
}
