package handout

import (
	"slices"
	"strconv"
	"strings"

	"acreleaf/calc/practice"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/render"
	"acreleaf/cmd/acreleaf/internal/worksheet"
)

// keysOf is the row of a card in the key: of each part the answer, and what each slip gives.
func keysOf(of *worksheet.Exercise, card *practice.Card) []render.HandedKey {
	var keys []render.HandedKey
	for _, part := range card.Parts() {
		if part.Choice != nil {
			keys = append(keys, render.HandedKey{Answer: card.Key(part)})
			continue
		}
		key := render.HandedKey{Answer: answerTo(card, part)}
		gives := map[string]string{}
		for i, u := range of.Practice.Uses {
			if u.Name != part.Use {
				continue
			}
			for _, slip := range card.Outcome(i).Slips() {
				gives[slip.Name] = render.AsRight
			}
		}
		for _, slip := range card.SlipKeys(part) { // of those, the ones that differ from the right answer
			gives[slip.Slip.Name] = slip.Text
		}
		for _, slip := range part.Slips() {
			key.Slips = append(key.Slips, gives[slip.Name])
		}
		keys = append(keys, key)
	}
	return keys
}

// answerTo is the right number for a part or a step, to the digits that are asked, without its unit.
func answerTo(card *practice.Card, part *practice.Part) string {
	return unit.Digits(card.Answer(part).Value, part.Digits, 0)
}

// stepsOf are the steps of the work that no card asks for.
func stepsOf(set *practice.Set) []*practice.Part {
	var steps []*practice.Part
	for _, step := range set.Steps {
		if !set.IsAsked(step) {
			steps = append(steps, step)
		}
	}
	return steps
}

// leaveOutSlips takes the slips out of the key that nobody can make on any of its cards.
func leaveOutSlips(v *render.HandedExercise) {
	for i := range v.Asks {
		kept := 0
		for j, slip := range v.Asks[i].Slips {
			made := func(c render.HandedCard) bool { return c.Keys[i].Slips[j] != "" }
			if !slices.ContainsFunc(v.Cards, made) {
				continue
			}
			v.Asks[i].Slips[kept] = slip
			for _, c := range v.Cards {
				c.Keys[i].Slips[kept] = c.Keys[i].Slips[j]
			}
			kept++
		}
		v.Asks[i].Slips = v.Asks[i].Slips[:kept]
		for _, c := range v.Cards {
			c.Keys[i].Slips = c.Keys[i].Slips[:kept]
		}
	}
}

// takeUnit takes the unit of a given from the rows of the key to the head of its column, if all cards have the same.
func takeUnit(v *render.HandedExercise, given int) {
	_, unit, _ := strings.Cut(v.Cards[0].Givens[given], " ")
	for _, c := range v.Cards {
		number, own, _ := strings.Cut(c.Givens[given], " ")
		if _, err := strconv.ParseFloat(number, 64); err != nil || own != unit {
			return
		}
	}
	v.Givens[given].Value = unit
	for _, c := range v.Cards {
		c.Givens[given] = strings.TrimSuffix(c.Givens[given], " "+unit)
	}
}
