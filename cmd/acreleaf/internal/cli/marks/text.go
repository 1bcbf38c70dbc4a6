package main

import (
	"strconv"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/unit"
)

// What people type besides the numbers and units that are right.
var (
	noise = []string{"", " ", "abc", "1e999", "1e3", "-", "?", "1/2", "3 1/2", "2½", "½", "12/0", "1/3/27",
		"3 to 4", "3-4 lb/ac", "3 a 4", "1,200", "1.200,5", "1,2,3", "12,5", "0,125", ",5", ".5", "5.", "1..2",
		"$12.50", "12.50 $/lb", "$", "5' 6\"", "99999999999999999", "1.5 × 10^3", "1.5 × 10^999", "0", "-4",
		"−4", "+4", "0x10", "1 200", "١٢", "12 lb/ac to 14 lb/ac", "NaN", "Infinity", "ND", "<5", "48 lb 3 oz",
		"48 lb/ac.", "about 48", "=48", "48%", endless + "/" + endless, "1/" + endless, endless}
	others = []string{"lb", "lb/ac", "lbs/acre", "pounds per acre", "LB N/AC", "lb of N per acre",
		"libras por acre", "libras de nitrógeno por acre", "kg/ha", "kilos por hectárea", "ppm", "ppm NO3-N",
		"ppm nitrate-N", "ppm NO3", "mg/L", "oz", "oz/tree", "ounces per tree", "onzas por árbol", "g/tree",
		"gal", "gallons", "galones", "gal/tree", "gpm", "L", "litros", "h", "hours", "horas", "min", "%",
		"percent", "por ciento", "$", "dollars", "$/lb", "$/ac", "ft", "in", "\"", "trees", "trees/ac",
		"bananas", "lb N", "lb product", "lb/1000 lb", "ft2", "per acre", "/ac", "N"}
)

// endless is more digits than a float64 holds.
var endless = strings.Repeat("9", 400)

// text is an answer that somebody may give to a step: right, near it, in another unit, from a slip, or noise.
func (a *answerer) text(card *practice.Card, p *practice.Part) string {
	right := card.Answer(p)
	if p.Choice != nil {
		return a.choice(p, right.Value)
	}
	switch a.r.IntN(10) {
	case 0, 1:
		return a.written(right.Value, right.Unit, p.Digits+a.r.IntN(3))
	case 2, 3: // near it
		off := []float64{0.0001, 0.001, 0.004, 0.01, 0.019, 0.021, 0.05}[a.r.IntN(7)]
		return a.written(right.Value*(1+off*(2*a.r.Float64()-1)), right.Unit, 4+a.r.IntN(4))
	case 4: // in the other unit
		units := p.Units()
		u := units[len(units)-1]
		into, _ := right.Unit.To(u)
		return a.written(into.Apply(right.Value), u, p.Digits+a.r.IntN(3))
	case 5: // with any unit
		return a.number(right.Value, p.Digits) + " " + others[a.r.IntN(len(others))]
	case 6, 7:
		if keys := card.SlipKeys(p); len(keys) > 0 {
			return a.behind(keys[a.r.IntN(len(keys))].Text, right.Unit)
		}
		return a.written(right.Value*[]float64{10, 0.1, 100, 0.001, 2}[a.r.IntN(5)], right.Unit, p.Digits)
	case 8:
		return a.written(right.Value*3*a.r.Float64(), right.Unit, 1+a.r.IntN(5))
	}
	return noise[a.r.IntN(len(noise))]
}

// choice is an answer to a choice: often the right one, else any, and now and then none or half of one.
func (a *answerer) choice(p *practice.Part, right float64) string {
	if a.r.IntN(3) == 0 {
		return chosen(right)
	}
	if len(p.Choice.Items) == 0 {
		n := a.r.IntN(len(p.Choice.Options) + 1)
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	text := ""
	for _, place := range a.r.Perm(len(p.Choice.Items)) {
		switch a.r.IntN(12) {
		case 0:
			text += "-"
		case 1:
			text += "1"
		default:
			text += strconv.Itoa(place + 1)
		}
	}
	return text
}

func chosen(code float64) string { return strconv.Itoa(int(code)) }

func (a *answerer) written(value float64, u unit.Unit, digits int) string {
	return a.behind(a.number(value, digits), u)
}

// number writes a number in one of the ways that people write it.
func (a *answerer) number(value float64, digits int) string {
	text := unit.Digits(value, max(1, digits), 0)
	if a.r.IntN(2) == 0 {
		text = strings.ReplaceAll(text, ",", "")
	}
	if a.r.IntN(4) == 0 && value > 0 && value < 100 {
		text = strconv.Itoa(int(value*8+0.5)) + "/8"
	}
	if a.language == "es" && a.r.IntN(2) == 0 && !strings.Contains(text, ",") {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

// inWords writes units out in a language.
var inWords = map[string]*strings.Replacer{
	"en": strings.NewReplacer("/", " per ", "lb", "pounds", "oz", "ounces", "ac", "acre", "gal", "gallons"),
	"es": strings.NewReplacer("/", " por ", "lb", "libras", "oz", "onzas", "ac", "acre", "gal", "galones",
		"trees", "árboles", "tree", "árbol"),
}

// behind puts a unit behind a number, as it is or as somebody may spell it, or none.
func (a *answerer) behind(number string, u unit.Unit) string {
	name := u.String()
	switch a.r.IntN(8) {
	case 0:
		return number
	case 1:
		name = strings.ToUpper(name)
	case 2:
		name, _, _ = strings.Cut(name, " ")
	case 3:
		name = inWords["en"].Replace(name)
	case 4:
		name = inWords["es"].Replace(name)
	case 5:
		name = strings.NewReplacer(" fed", "", " taken up", "", " present", "", " N", "").Replace(name)
	}
	if strings.HasPrefix(name, "$") && a.r.IntN(2) == 0 {
		return "$" + number + name[1:]
	}
	return strings.Repeat(" ", a.r.IntN(3)) + number + strings.Repeat(" ", a.r.IntN(2)) + name
}
