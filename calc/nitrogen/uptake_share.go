package nitrogen

import "acreleaf/calc/sheet"

// UptakeShare splits a season's nitrogen over the stages in which a bearing crop takes it up.
var UptakeShare = sheet.New("uptake-share", uptakeShare)

func uptakeShare(s *sheet.Sheet) {
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 220, Low: 0, High: 600, Units: []string{"kg N/ha fed"},
	})
	crop := s.Choice("crop", []sheet.Option{
		{Name: "almond"},
		{Name: "walnut"},
		{Name: "pistachio"},
	}, sheet.Field{})
	four := crop.Is("pistachio").Not()
	share := shares{s: s, crop: crop, nitrogen: nitrogen}
	first, _ := share.stage("first", nil, 20, 25, 30)
	second, part := share.stage("second", nil, 30, 25, 70)
	third, ofThird := share.stage("third", four, 30, 25, sheet.None)
	_, ofFourth := share.stage("fourth", four, 20, 25, sheet.None)

	s.InWords("first",
		sheet.When(nitrogen.IsNothing(), "nothing"),
		sheet.When(four.Not(), "two-stages"),
		sheet.Otherwise("four-stages"))

	s.Say(sheet.Note, crop.Is("almond"), "stages-of-almond")
	s.Say(sheet.Note, crop.Is("walnut"), "stages-of-walnut")
	s.Say(sheet.Note, crop.Is("pistachio"), "stages-of-pistachio")
	s.Say(sheet.Note, sheet.Always, "not-one-feed")
	uneven := crop.Is("walnut").Not()
	s.SlipWhen(uneven, "first-even", "first", sheet.If(four, nitrogen.Over(s.Number(4)), nitrogen.Over(s.Number(2))))
	s.SlipWhen(uneven, "second-even", "second", sheet.If(four, nitrogen.Over(s.Number(4)), nitrogen.Over(s.Number(2))))
	s.SlipWhen(uneven.And(four), "third-even", "third", nitrogen.Over(s.Number(4)))
	s.SlipWhen(uneven.And(four), "fourth-even", "fourth", nitrogen.Over(s.Number(4)))
	left := nitrogen.Minus(first)
	s.Slip("second-of-the-rest", "second", left.Times(part))
	left = left.Minus(second)
	s.SlipWhen(four, "third-of-the-rest", "third", left.Times(ofThird))
	left = left.Minus(third)
	s.SlipWhen(four, "fourth-of-the-rest", "fourth", left.Times(ofFourth))
}

// shares builds the stages.
type shares struct {
	s        *sheet.Sheet
	crop     *sheet.Given
	nitrogen *sheet.Given
}

// shareSources are the sources of the shares, by crop.
var shareSources = map[string]string{
	"almond": "almond-facts-2020", "walnut": "uc-four-rs", "pistachio": "cdfa-pistachio",
}

// stage adds the share of a stage, by crop in the order of the options, and what it is of the season's nitrogen.
func (h shares) stage(name string, when sheet.Value, figures ...float64) (nitrogen, share sheet.Term) {
	table := map[string]sheet.Cell{}
	for i, option := range h.crop.Choices {
		table[option.Name] = sheet.Cell{Value: figures[i], Sources: []string{shareSources[option.Name]}}
	}
	listed := h.s.Listed(name+"-of-crop", "%", h.crop, table, sheet.Fact{})
	share = h.s.Step(name+"-share", "%", listed, sheet.Says{When: when})
	nitrogen = h.s.Answer(name, "lb N/ac fed", h.nitrogen.Times(share),
		sheet.Says{Also: "kg N/ha fed", When: when})
	return nitrogen, share
}
