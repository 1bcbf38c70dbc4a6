package unit

import (
	"fmt"
	"strings"
)

// A Mismatch says that a quantity of one kind was given where another is needed. Its sentence is for growers.
type Mismatch struct {
	Given  string // what was given, as it is to be quoted: "54 ppm NO3"
	Unit   Unit   // its unit
	Wanted Unit   // the unit that is needed
}

// Error gives the sentence: what was given, what it is, what is needed, and the step between them if it is one that
// is often forgotten.
func (m *Mismatch) Error() string {
	m = &Mismatch{Given: m.Given, Unit: m.Unit.inWater(m.Wanted.dimension), Wanted: m.Wanted}
	have, want := m.Unit.dimension, m.Wanted.dimension
	is := fmt.Sprintf("%s is %s; this needs ", m.Given, m.Unit.describe())
	switch {
	case m.Unit.String() == "":
		return m.withoutUnit()
	case m.otherCarrier() != "":
		return m.otherCarrier()
	case have.onlyAccountsDiffer(want):
		return m.otherAccount()
	case have.sameMeasures(want):
		return m.otherSubstance(is)
	}
	if step := stepBetween(have, want); step != "" {
		return is + m.Wanted.Name() + ": " + step
	}
	return is + m.Wanted.Name()
}

// withoutUnit is the sentence for a number alone.
func (m *Mismatch) withoutUnit() string {
	wanted := m.Wanted.Name()
	if m.Given == "" {
		return "a number without a unit was given; this needs " + wanted
	}
	return fmt.Sprintf("%s has no unit; this needs %s: write %s", m.Given, wanted, label(m.Given, m.Wanted))
}

// otherSubstance is the sentence for the right measure of the wrong substance. is starts the general sentence.
func (m *Mismatch) otherSubstance(is string) string {
	have, want := m.Unit.of(), m.Wanted.of()
	switch {
	case have == "" && want != "" && m.Unit.dimension.LeavesOut(m.Wanted.dimension):
		return fmt.Sprintf("%s does not say what it is of; this needs %s (%s)", m.Given, want, m.Wanted)
	case have != "" && want == "":
		return fmt.Sprintf("%s is %s; this needs %s with no substance named", m.Given, have, m.Wanted.Name())
	case have != want:
		return fmt.Sprintf("%s is %s; this needs %s (%s)%s", m.Given, have, want, m.Wanted, m.substanceStep())
	}
	return fmt.Sprintf("%s%s (%s)", is, m.Wanted.describe(), m.Wanted)
}

// substanceStep says how to come from one substance to another, or where the one that is needed stands, where people
// often take one for the other; it starts with a colon.
func (m *Mismatch) substanceStep() string {
	have, want := m.Unit.dimension, m.Wanted.dimension
	switch {
	case want.has(nitrateN) && have.has(nitrogen) && m.Unit.of() == substanceOf(nitrogen).words:
		return fmt.Sprintf(": N alone is nitrogen of any form, so write %s only if the report means nitrate as N",
			strings.Replace(m.Given, " N", " NO3-N", 1))
	case (want.has(nitrateN) || want.has(nitrate)) && have.holdsNitrogen():
		return ": take the line of the report that says NO3-N, NO3 or nitrate"
	case want.has(nitrogen) && have.has(nitrateN):
		return ": a pound of NO3-N is a pound of N, so write " + strings.Replace(m.Given, " NO3-N", " N", 1)
	case want.has(nitrogen) && have.has(product):
		return ": multiply it by the share of nitrogen in the product first"
	case want.has(product) && have.has(nitrogen):
		return ": divide it by the share of nitrogen in the product first"
	case want.has(crop) || want.isCrop():
		return ": weigh the crop in that form"
	}
	return ""
}

// holdsNitrogen says whether a form of nitrogen that is no nitrate is above the line.
func (d Dimension) holdsNitrogen() bool {
	for _, b := range []base{nitrogen, nitriteN, ammoniumN, ammoniaN, ureaN, nitrite, ammonium, ammonia, urea} {
		if d.has(b) {
			return true
		}
	}
	return false
}

// has says whether a base is above the line.
func (d Dimension) has(b base) bool { return d.powers[b] > 0 }

// isCrop says whether a part of a crop is above the line.
func (d Dimension) isCrop() bool {
	return d.has(kernels) || d.has(inShell) || d.has(assessed) || d.has(husks)
}

// stepBetween says how to come from one dimension to another where a grower often forgets to, and "" elsewhere.
func stepBetween(have, want Dimension) string {
	anArea, aTree, aFeed := length.of(2), tree.of(1), feed.of(1)
	switch want.Over(have) {
	case aTree.Over(anArea):
		return "multiply it by trees/ac first"
	case anArea.Over(aTree):
		return "divide it by trees/ac first"
	case Dimension{}.Over(anArea):
		return "divide it by the area of the block first"
	case anArea:
		return "multiply it by the area of the block first"
	case Dimension{}.Over(aTree):
		return "divide it by the number of trees first"
	case aTree:
		if have.powers[tree] == 0 {
			return "" // it has the number of trees, and does not say of what
		}
		return "multiply it by the number of trees first"
	case Dimension{}.Over(aFeed):
		return "divide it by the number of feeds first"
	case aFeed:
		return "multiply it by the number of feeds first"
	}
	return ""
}

// sameMeasures says whether two dimensions differ in nothing but substances.
func (d Dimension) sameMeasures(e Dimension) bool {
	return [firstSubstance]int16(d.powers[:firstSubstance]) == [firstSubstance]int16(e.powers[:firstSubstance])
}

// describe says in words what u measures, as a thing: "a mass of N on an area". Gallons an acre are a volume on an
// area, though their dimension is a length.
func (u Unit) describe() string {
	lengths := max(0, u.dimension.powers[length])
	for _, t := range u.terms {
		if lengths == 1 && t.symbol.kind == volumeKind && t.power == 1 {
			lengths = 3
		}
	}
	words := u.dimension.describe(lengths)
	for counted := tree; counted <= bale; counted++ {
		if strings.HasPrefix(words, counted.above(1)) {
			return "a count of " + words
		}
	}
	return withArticle(words)
}

// of says in words what substances are above the line, as the unit spells them; "" when none does.
func (u Unit) of() string {
	var words []string
	for _, t := range u.terms {
		if t.substance != nil && t.power > 0 {
			words = append(words, t.substance.words)
		}
	}
	return strings.Join(words, " and ")
}

// Name is the unit as a sentence names it: a plain number and inches in words, and any other as String writes it.
func (u Unit) Name() string {
	switch text := u.String(); text {
	case "":
		return "a plain number"
	case "in": // in a sentence it would read as a word
		return "inches (in)"
	default:
		return text
	}
}
