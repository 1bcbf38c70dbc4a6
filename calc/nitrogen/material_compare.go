package nitrogen

import "acreleaf/calc/sheet"

// MaterialCompare sets two or three materials side by side: what a pound of nitrogen costs in each, in which forms it
// is, and what it does to the soil.
var MaterialCompare = sheet.New("material-compare", materialCompare)

// A rival is one of the materials that are compared.
type rival struct {
	place    string // "first"
	optional bool   // it may be none
	grade    *sheet.Given
	price    *sheet.Given
	there    sheet.Term // of an optional one: a question

	strength, gallon, each, nitrate, urea, limeEach sheet.Term
}

func materialCompare(s *sheet.Sheet) {
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	pounds := nitrogen.Uncounted("lb N/ac")
	first, second := &rival{place: "first"}, &rival{place: "second"}
	third := &rival{place: "third", optional: true}
	first.ask(s, "UAN-32", 420)
	second.ask(s, "46-0-0", 560)
	third.ask(s, "none", 500)
	first.priceNitrogen(s, "first-per-nitrogen")
	second.priceNitrogen(s, "second-per-nitrogen")
	third.priceNitrogen(s, "third-per-nitrogen")
	s.Answer("first-cost", "$/ac", pounds.Times(first.each), first.cost(s, "$/ha"))
	s.Answer("second-cost", "$/ac", pounds.Times(second.each), second.cost(s, "$/ha"))
	s.Answer("third-cost", "$/ac", pounds.Times(third.each), third.cost(s, "$/ha"))
	first.listForms(s, "first-nitrate", "first-ammonium", "first-urea")
	second.listForms(s, "second-nitrate", "second-ammonium", "second-urea")
	third.listForms(s, "third-nitrate", "third-ammonium", "third-urea")
	first.limeFor(s, pounds, "first-lime")
	second.limeFor(s, pounds, "second-lime")
	third.limeFor(s, pounds, "third-lime")

	s.Say(sheet.Note, third.grade.Is("none").And(s.Stated(third.price)), "third-none")

	rivals := []*rival{first, second, third}
	sayTogether(s, rivals)
	sayCheapest(s, rivals)
	for _, r := range rivals {
		r.sayForms(s)
	}
	first.slips(s, pounds)
	second.slips(s, pounds)
}

// ask asks which material it is, and what it costs.
func (r *rival) ask(s *sheet.Sheet, typical string, price float64) {
	options := materialOptions()
	field := sheet.Field{}
	if r.optional {
		options = append(options, sheet.Option{Name: "none"})
	}
	for i, option := range options {
		if option.Name == typical {
			field.Typical = float64(i)
		}
	}
	r.grade = s.Choice(r.place, options, field)
	r.price = s.Given(r.place+"-price", "$/ton product", priceField(price, r.grade))
	if r.optional {
		r.there = r.grade.Is("none").Not()
	}
}

// says gives the label of a result of the rival, and when the result is there. The rivals make the columns of a table.
func (r *rival) says(also string) sheet.Says {
	says := sheet.Says{Also: also, Of: r.grade}
	if r.optional {
		says.When = r.there
	}
	return says
}

// cost is says, for a result that needs the price.
func (r *rival) cost(s *sheet.Sheet, also string) sheet.Says {
	says := r.says(also)
	says.When = r.and(s.Stated(r.price))
	return says
}

// and joins a question to the one whether the rival is there.
func (r *rival) and(question sheet.Term) sheet.Term {
	if r.optional {
		return r.there.And(question)
	}
	return question
}

// priceNitrogen works what a pound of its nitrogen costs.
func (r *rival) priceNitrogen(s *sheet.Sheet, answer string) {
	r.strength = s.Step(r.place+"-strength", "% N of product", listedStrength(s, r.grade),
		r.says(""))
	byGallon := r.says("kg product/L")
	byGallon.When = r.and(r.price.IsOther())
	r.gallon = s.Step(r.place+"-gallon", "lb product/gal", listedGallon(s, r.grade), byGallon)
	r.each = s.Answer(answer, "$/lb N", sheet.If(r.price.IsOther(),
		r.price.AsOther().Over(r.gallon).Over(r.strength), r.price.In("$/lb product").Over(r.strength)),
		r.cost(s, "$/kg N"))
	poured := asks(s, r.grade, func(m *material) bool { return m.liquid })
	weighed := asks(s, r.grade, func(m *material) bool { return m.weight() > 0 })
	s.Refuse(r.and(r.price.IsOther()).And(poured).And(weighed.Not()),
		r.place+"-unweighed")
	s.Refuse(r.and(r.price.IsOther()).And(poured.Not()), r.place+"-dry")
}

// listForms lists the shares of its nitrogen by form.
func (r *rival) listForms(s *sheet.Sheet, nitrate, ammonium, urea string) {
	known := asks(s, r.grade, func(m *material) bool { return m.forms.sources != nil })
	share := func(answer, form string) sheet.Term {
		says := r.says("")
		says.When = r.and(known)
		return s.Answer(answer, "%", listedShare(s, r.grade, form), says)
	}
	r.nitrate = share(nitrate, "nitrate")
	share(ammonium, "ammonium")
	r.urea = share(urea, "urea")
}

// limeFor works the lime that makes up for what its nitrogen does to the soil.
func (r *rival) limeFor(s *sheet.Sheet, nitrogen sheet.Term, answer string) {
	r.limeEach = s.Step(r.place+"-lime-each", "lb CaCO3/lb N", listedLime(s, r.grade),
		r.says(""))
	s.Answer(answer, "lb CaCO3/ac", nitrogen.Times(r.limeEach),
		r.says("kg CaCO3/ha"))
	limes := func(says sheet.Says) sheet.Says {
		says.When = r.and(asks(s, r.grade, (*material).limes))
		return says
	}
	each := s.Step(r.place+"-liming-each", "lb CaCO3/lb N", listedLiming(s, r.grade),
		limes(r.says("")))
	s.Step(r.place+"-liming", "lb CaCO3/ac", nitrogen.Times(each),
		limes(r.says("kg CaCO3/ha")))
}

// slips are the known wrong ways to its answers.
func (r *rival) slips(s *sheet.Sheet, nitrogen sheet.Term) {
	share := r.strength.In("lb N/lb product")
	s.Slip(r.place+"-product-priced", r.place+"-per-nitrogen",
		sheet.If(r.price.IsOther(), r.price.AsOther().Over(r.gallon), r.price.In("$/lb product")))
	s.Slip(r.place+"-price-multiplied", r.place+"-per-nitrogen", r.each.Times(share).Times(share))
	sours := r.limeEach.IsNothing().Not()
	s.SlipWhen(sours, r.place+"-lime-of-a-pound", r.place+"-lime", r.limeEach)
	s.SlipWhen(sours, r.place+"-lime-of-material", r.place+"-lime", nitrogen.Over(share).Times(r.limeEach))
}
