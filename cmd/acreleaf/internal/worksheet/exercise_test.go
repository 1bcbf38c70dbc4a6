package worksheet

import (
	"strings"
	"testing"

	"acreleaf/calc/practice"
)

const season = "```exercise season\n" + `chain: soil = soil-nitrogen, season = season-budget
soil.nitrate: 2 to 6 ppm NO3-N, every 0.5
soil.depth: 12 in
season.need: 40 to 60 lb N/ac fed, every 5
season.soil: from soil.nitrogen
season.water: 0, 3, 6 lb N/ac fed
story: The report says {soil.nitrate} in the top {soil.depth}. Feed {season.need}; the well brings {season.water}.
ask: soil.nitrogen, season.apply
` + "```\n"

// chosen is that exercise with a choice and an order, each right by the numbers of the card.
var chosen = strings.Replace(season, "ask:", `choose: Is there more to buy than the soil has?
options:
  less: {when: season.apply <= "25 lb N/ac fed", say: Half of the bags or less, because: It is no more than that.}
  more: {when: season.apply > "25 lb N/ac fed", say: More than half of the bags, because: It is more than half.}
order: From the least to the most, in pounds of nitrogen
items: {season.apply: What is left, season.credits: What is there}
hint: Work the soil first.
ask:`, 1)

// The page's first card is that of a set that is dealt alone, and a text around the exercise does not change it.
func TestExerciseOfAPage(t *testing.T) {
	for _, text := range []string{season, "Other words.\n\n" + season, chosen,
		"```worksheet tank\ncalculation: water-nitrogen\nnitrate: 10 ppm NO3-N\nwater: 6 to 12 in\n```\n\n" + season} {
		page, messages := bind(t, text)
		if len(messages) > 0 {
			t.Fatal(messages)
		}
		e := page.Exercises[0]
		set, err := practice.NewSet(e.Practice, "en")
		if err != nil {
			t.Fatal(err)
		}
		card, err := set.Card(1)
		if err != nil {
			t.Fatal(err)
		}
		if want := 2 + 2*strings.Count(text, "choose:"); len(e.Placed.Parts) != want {
			t.Errorf("%d parts, want %d", len(e.Placed.Parts), want)
		}
		for i, part := range e.Placed.Parts {
			if got, want := Quantity(page, part), card.Answer(set.Parts[i]); got.Value != want.Value {
				t.Errorf("the page's answer is %v, the card's %v", got, want)
			}
			if heard := page.Cells[part.HeardCell()]; heard != page.Cells[part.RightCell()] {
				t.Errorf("what comes after %s takes %v in the place of the right answer", part.Result, heard)
			}
		}
		if len(page.Sheets) != strings.Count(text, "```worksheet") {
			t.Errorf("%d worksheets are listed, and those of exercises are none", len(page.Sheets))
		}
	}
}

// Steps are counted in the digits that are written, so that a card has 0.3 and not 0.30000000000000004.
func TestSteppedValues(t *testing.T) {
	page, messages := bind(t, "```exercise water\ncalculation: water-nitrogen\nnitrate: 0.1 to 1 ppm NO3-N, every 0.1\n"+
		"water: 6, 12, 18 in\nstory: The well has {nitrate} in {water}.\nask: nitrogen\ncards: 30\n```\n")
	if len(messages) > 0 {
		t.Fatal(messages)
	}
	values := page.Exercises[0].Practice.Uses[0].Varied[0].Values
	if len(values) != 10 || values[2].Value != 0.3 || values[9].Value != 1 {
		t.Errorf("the values are %v", values)
	}
}
