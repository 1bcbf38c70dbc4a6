package unit

import (
	"strconv"
	"strings"
)

// String says in words what d measures, for a sentence: "mass of N on an area", "trees on an area", "a length", "a
// plain number". It is never empty.
func (d Dimension) String() string {
	return d.describe(max(0, d.powers[length]))
}

// describe says d in words. lengths is the power of length above the line: 3 in gal/ac, which is a volume on an area
// though its dimension is a length.
func (d Dimension) describe(lengths int16) string {
	if d.Plain() {
		return "a plain number"
	}
	if name := physics[d]; name != "" {
		return name
	}
	subject := d.subject(lengths)
	conditions := append(d.conditions(lengths), d.accounts()...)
	if len(conditions) == 0 && !strings.Contains(subject, " ") {
		return withArticle(subject)
	}
	return strings.Join(append([]string{subject}, conditions...), " ")
}

// subject says what is above the line.
func (d Dimension) subject(lengths int16) string {
	var measures []string
	for _, b := range []base{money, mass, length, time, tree, emitter, feed, nut, head, hive, bale, conductance} {
		power := d.powers[b]
		if b == length {
			power = lengths
		}
		if power > 0 {
			measures = append(measures, b.above(power))
		}
	}
	of := d.substances(1)
	if len(measures) == 0 {
		switch {
		case d.perNutrient():
			measures = []string{"mass"} // lb product/lb N: the masses themselves have dropped out
		case of != "" || d.accounts() != nil || d.substances(-1) != "" && d.powers[mass] == 0:
			measures = []string{"share"}
		default:
			measures = []string{"number"}
		}
	}
	if of != "" {
		measures[len(measures)-1] += " of " + of
	}
	return strings.Join(measures, " times ")
}

// conditions says what is below the line, a phrase for each thing.
func (d Dimension) conditions(lengths int16) []string {
	var phrases []string
	of := d.substances(-1)
	if of != "" {
		of = " of " + of
	}
	below := lengths - d.powers[length]
	if power := d.powers[mass]; power < 0 || d.perNutrient() {
		phrases = append(phrases, "for each "+mass.above(max(-power, 1))+of)
		of = ""
	}
	switch {
	case below == 2:
		phrases = append(phrases, "on an area")
	case below == 3:
		phrases = append(phrases, "in a volume"+of)
		of = ""
	case below > 0:
		phrases = append(phrases, "for each "+length.above(below))
	}
	if of != "" {
		phrases = append(phrases, "in"+strings.TrimPrefix(of, " of"))
	}
	if power := d.powers[time]; power < 0 {
		phrases = append(phrases, "in a "+time.below(-power))
	}
	for _, b := range []base{money, tree, emitter, feed, nut, head, hive, bale, conductance} {
		if power := d.powers[b]; power < 0 {
			phrases = append(phrases, "for each "+b.below(-power))
		}
	}
	return phrases
}

// perNutrient says whether d is something for each mass of a nutrient with the mass itself fallen out, as in lb
// product/lb N. A carrier below the line is another matter: that is a share of what is in it.
func (d Dimension) perNutrient() bool {
	if d.powers[mass] != 0 {
		return false
	}
	for b := firstNutrient; b < firstAccount; b++ {
		if d.powers[b] < 0 {
			return true
		}
	}
	return false
}

// substances lists the substances on one side of the line, nutrients first: sign is 1 above, -1 below.
func (d Dimension) substances(sign int16) string {
	var nutrients, carriers []string
	for b := firstSubstance; b < firstAccount; b++ {
		power := d.powers[b] * sign
		switch {
		case power > 0 && b.isCarrier():
			carriers = append(carriers, substanceOf(b).symbol+raised(power))
		case power > 0:
			nutrients = append(nutrients, substanceOf(b).symbol+raised(power))
		}
	}
	return strings.Join(append(nutrients, carriers...), " and ")
}

// above names a measure or a counted thing that is above the line.
func (b base) above(power int16) string {
	switch {
	case b == length && power == 2:
		return "area"
	case b == length && power == 3:
		return "volume"
	case b.isCounted() && b != head:
		return b.below(1) + "s" + raised(power)
	}
	return b.below(power)
}

// below names one of a measure or a counted thing.
func (b base) below(power int16) string {
	names := [...]string{"length", "mass", "time", "money", "tree", "emitter", "feed", "nut", "head", "hive", "bale",
		"conductance"}
	return names[b] + raised(power)
}

func raised(power int16) string {
	switch power {
	case 1:
		return ""
	case 2:
		return " squared"
	case 3:
		return " cubed"
	}
	return " to the power " + strconv.Itoa(int(power))
}

// withArticle puts "a" or "an" before a thing that takes one.
func withArticle(phrase string) string {
	first, _, _ := strings.Cut(phrase, " ")
	switch first {
	case "area":
		return "an " + phrase
	case "length", "mass", "time", "volume", "share", "number":
		return "a " + phrase
	}
	return phrase
}
