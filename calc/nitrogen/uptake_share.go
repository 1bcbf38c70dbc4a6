package nitrogen

import "acreleaf/calc/sheet"

// UptakeShare splits a season's nitrogen over the stages in which a bearing crop takes it up.
var UptakeShare = sheet.New("uptake-share", uptakeShare)

func uptakeShare(s *sheet.Sheet) {
	s.Head("When a bearing crop takes it up", "Splits the season's nitrogen over the stages of a crop.")
	nitrogen := s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Label: "Nitrogen to apply", Hint: "In the season, on an acre.",
		Typical: 220, Low: 0, High: 600, Units: []string{"kg N/ha fed"},
	})
	crop := s.Choice("crop", []sheet.Option{
		{Name: "almond", Label: "Almond",
			Note: "Petal fall to leaf-out; to shell hardening; to kernel fill; hull split to early postharvest."},
		{Name: "walnut", Label: "Walnut", Note: "May, June, July and August."},
		{Name: "pistachio", Label: "Pistachio, heavy crop",
			Note: "Spring flush and nut fill. In a year of light crop trees take up less."},
	}, sheet.Field{Label: "Crop", Hint: "The stages differ by crop. The notes below name them."})
	four := crop.Is("pistachio").Not()
	share := shares{s: s, crop: crop, nitrogen: nitrogen}
	first, _ := share.stage("first", "First stage", nil, 20, 25, 30)
	_, part := share.stage("second", "Second stage", nil, 30, 25, 70)
	share.stage("third", "Third stage", four, 30, 25, sheet.None)
	share.stage("fourth", "Fourth stage", four, 20, 25, sheet.None)

	s.InWords("first",
		sheet.When(nitrogen.IsNothing(), "There is no nitrogen to split."),
		sheet.When(four.Not(), "Give {first} in the first stage and {second bare} in the second."),
		sheet.Otherwise("Give {first} in the first stage, {second bare} in the second, {third bare} in the third and "+
			"{fourth bare} in the fourth."))

	s.Say(sheet.Note, crop.Is("almond"),
		"First: petal fall to leaf-out. Second: leaf-out to shell hardening. Third: shell hardening to kernel fill. "+
			"Fourth: hull split to early postharvest.")
	s.Say(sheet.Note, crop.Is("walnut"),
		"First to fourth: May, June, July and August, a quarter in each. Before leaves are out trees take up next to "+
			"nothing.")
	s.Say(sheet.Note, crop.Is("pistachio"),
		"First: the spring flush. Second: nut fill. This is for a year of heavy crop.")
	s.Say(sheet.Note, sheet.Always,
		"A stage is not one feed. Split it into small ones, and skip the last when leaves in July are above their range.")
	s.Slip("even-parts", "first", nitrogen.Over(s.Number(4)),
		"That is an even quarter. Trees take up more in some stages than in others: use the share.")
	s.Slip("share-of-the-rest", "second", nitrogen.Minus(first).Times(part),
		"That is a share of what the first stage left. Each share is of the whole season.")
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
func (h shares) stage(name, label string, when sheet.Value, figures ...float64) (nitrogen, share sheet.Term) {
	table := map[string]sheet.Cell{}
	for i, option := range h.crop.Choices {
		table[option.Name] = sheet.Cell{Value: figures[i], Sources: []string{shareSources[option.Name]}}
	}
	listed := h.s.Listed(name+"-of-crop", "%", h.crop, table, sheet.Fact{
		Label: label, Reads: "listed for this crop",
	})
	share = h.s.Step(name+"-share", "%", listed, sheet.Says{Label: label + ", share of the season", When: when})
	nitrogen = h.s.Answer(name, "lb N/ac fed", h.nitrogen.Times(share),
		sheet.Says{Label: label, Also: "kg N/ha fed", When: when})
	return nitrogen, share
}
