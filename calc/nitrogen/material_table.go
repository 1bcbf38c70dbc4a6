package nitrogen

import (
	"acreleaf/calc/fact"
	"acreleaf/calc/sheet"
)

// The sources that most materials have figures of, and the shares of forms that follow from what a material is.
const (
	ucTable  = "uc-nitrogen-table"
	ofPierre = "pierre-1933" // lime, worked from the grade; a test shows that the method gives printed figures
)

var (
	onlyUrea     = forms{0, 0, 100, []string{"chemistry"}}
	onlyAmmonium = forms{0, 100, 0, []string{"chemistry"}}
	onlyNitrate  = forms{100, 0, 0, []string{"chemistry"}}
	halfAndHalf  = forms{50, 50, 0, []string{ucTable, "chemistry"}}
	ofUAN        = forms{25, 25, 50, []string{"ipni-uan"}}
	byTheMaker   = forms{sheet.None, sheet.None, sheet.None, nil}
)

// noteSources are the sources of what the notes quote and no figure of the material rests on.
var noteSources = map[string][]string{
	"UAN-32":     {"alabama-0174"},
	"UAN-28":     {"purdue-nitrogen"},
	"21-0-0-24S": {"cornell-nrcca-37", "cornell-nrcca-26"},
	"10-34-0":    {"unl-materials"},
	"12-0-0-26S": {"unl-materials"},
}

// materials are the grades of the trade. Where sources disagree, the note has the range and the reason.
var materials = []material{
	{"UAN-32", from(32, ucTable, "ipni-uan"), ofUAN, true,
		from(11.06, "fluid-weights"), from(1.78, ucTable), fact.Solution | fact.Nitrate},
	{"UAN-28", from(28, "ipni-uan", "nrcs-nm"), ofUAN, true,
		from(10.67, "virginia-199", "fluid-weights"), from(1.78, ucTable), fact.Solution | fact.Nitrate},
	{"CAN-17", from(17, ucTable),
		forms{66, 34, 0, []string{"chemistry", ucTable}}, true, from(12.6, ucTable), from(0.53, ucTable),
		fact.Calcium | fact.Nitrate},
	{"AN-20", from(20, ucTable), halfAndHalf, true, from(10.6, ucTable),
		from(1.82, ucTable), fact.Nitrate | fact.Oxidizer},
	{"46-0-0", from(46, ucTable, "nrcs-nm"), onlyUrea, false, noWeight,
		from(1.8, "cornell-nrcca-37", "alabama-0174"), 0},
	{"21-0-0-24S", from(21, "alabama-0174", ucTable), onlyAmmonium, false, noWeight,
		from(5.24, ucTable, "alabama-0174"), fact.Sulfate},
	{"34-0-0", from(34, "nrcs-nm"), halfAndHalf, false, noWeight, from(1.82, ucTable),
		fact.Nitrate | fact.Oxidizer},
	{"15.5-0-0-19Ca", from(15.5, ucTable), forms{92, 8, 0, []string{"chemistry"}},
		false, noWeight, from(-1.29, ucTable), fact.Calcium | fact.Nitrate},
	{"13-0-46", from(13, "alabama-0174", "nrcs-nm"), onlyNitrate, false, noWeight,
		from(-2, "alabama-0174"), fact.Nitrate | fact.Oxidizer},
	{"15-15-15", from(15, "grade"), byTheMaker, false, noWeight,
		from(2.5, ofPierre), fact.Phosphate},
	{"16-20-0", from(16, "grade"), onlyAmmonium, false, noWeight,
		from(5.6, ofPierre), fact.Sulfate | fact.Phosphate},
	{"11-52-0", from(11, "nrcs-nm"), onlyAmmonium, false, noWeight,
		from(5.1, ofPierre), fact.Phosphate},
	{"18-46-0", from(18, "nrcs-nm"), onlyAmmonium, false, noWeight,
		from(3.6, ofPierre), fact.Phosphate},
	{"10-34-0", from(10, "nrcs-nm"), onlyAmmonium, true,
		from(11.65, "fluid-weights"), from(4.2, ofPierre), fact.Phosphate},
	{"20-0-0", from(20, ucTable), onlyAmmonium, true, from(7.58, ucTable), from(1.8, ucTable),
		fact.Ammonia},
	{"82-0-0", from(82, ucTable), onlyAmmonium, true, from(5.15, "unl-materials"),
		from(1.8, ucTable), fact.Ammonia | fact.Pressure},
	{"12-0-0-26S", from(12, "nrcs-nm"), onlyAmmonium, true,
		from(11.04, "fluid-weights"), from(8.6, ofPierre), fact.Thiosulfate | fact.Sulfate},
	{"15-0-0-16S", from(15, "grade"), onlyUrea, true, noWeight, from(5.1, ofPierre),
		fact.Acid | fact.Sulfate},
}
