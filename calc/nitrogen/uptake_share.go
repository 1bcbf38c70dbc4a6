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
	_, part := share.stage("second", nil, 30, 25, 70)
	share.stage("third", four, 30, 25, sheet.None)
	share.stage("fourth", four, 20, 25, sheet.None)

	s.InWords("first",
		sheet.When(nitrogen.IsNothing(), "nothing"),
		sheet.When(four.Not(), "two-stages"),
		sheet.Otherwise("four-stages"))

	s.Say(sheet.Note, crop.Is("almond"), "stages-of-almond")
	s.Say(sheet.Note, crop.Is("walnut"), "stages-of-walnut")
	s.Say(sheet.Note, crop.Is("pistachio"), "stages-of-pistachio")
	s.Say(sheet.Note, sheet.Always, "not-one-feed")
	s.Slip("even-parts", "first", nitrogen.Over(s.Number(4)))
	s.Slip("share-of-the-rest", "second", nitrogen.Minus(first).Times(part))
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
