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
	{"UAN-32", "UAN-32, urea-ammonium nitrate solution", from(32, ucTable, "ipni-uan"), ofUAN, true,
		from(11.06, "fluid-weights"), from(1.78, ucTable), fact.Solution | fact.Nitrate,
		"Lime is printed as 1.72, 1.78 and 1.8. Salts out near 28 °F."},
	{"UAN-28", "UAN-28, urea-ammonium nitrate solution", from(28, "ipni-uan", "nrcs-nm"), ofUAN, true,
		from(10.67, "virginia-199", "fluid-weights"), from(1.78, ucTable), fact.Solution | fact.Nitrate,
		"A gallon is printed as 10.6 and 10.67 lb. Lime as for UAN-32, since the mix is the same; 1.75 is printed too. " +
			"Salts out near 0 °F."},
	{"CAN-17", "CAN-17, calcium ammonium nitrate solution", from(17, ucTable),
		forms{66, 34, 0, []string{"chemistry", ucTable}}, true, from(12.6, ucTable), from(0.53, ucTable),
		fact.Calcium | fact.Nitrate,
		"The solution, not the dry CAN of 26 to 28 % N. A gallon is worked from 0.47 gal for a pound of nitrogen. The " +
			"forms are worked from its calcium, about 8 %: nitrate with the calcium, and half of the rest."},
	{"AN-20", "AN-20, ammonium nitrate solution", from(20, ucTable), halfAndHalf, true, from(10.6, ucTable),
		from(1.82, ucTable), fact.Nitrate | fact.Oxidizer,
		"A gallon is worked from 0.47 gal for a pound of nitrogen. Lime as for dry ammonium nitrate."},
	{"46-0-0", "Urea, 46-0-0", from(46, ucTable, "nrcs-nm"), onlyUrea, false, noWeight,
		from(1.8, "cornell-nrcca-37", "alabama-0174"), 0,
		"Labels say 45 or 46 % N. Lime is printed as 1.56 and 1.8: the second agrees with the official method."},
	{"21-0-0-24S", "Ammonium sulfate, 21-0-0-24S", from(21, "alabama-0174", ucTable), onlyAmmonium, false, noWeight,
		from(5.24, ucTable, "alabama-0174"), fact.Sulfate,
		"Lime is 110 lb for 100 lb of product, which is 5.24; 5.4 is printed too. On a soil above pH 7.5 it gives off " +
			"ammonia from the top of the ground."},
	{"34-0-0", "Ammonium nitrate, 34-0-0", from(34, "nrcs-nm"), halfAndHalf, false, noWeight, from(1.82, ucTable),
		fact.Nitrate | fact.Oxidizer,
		"Labels say 33.5 to 34 % N. Many places limit who may hold it."},
	{"15.5-0-0-19Ca", "Calcium nitrate, 15.5-0-0-19Ca", from(15.5, ucTable), forms{92, 8, 0, []string{"chemistry"}},
		false, noWeight, from(-1.29, ucTable), fact.Calcium | fact.Nitrate,
		"19 % calcium; other makes have 15 % N with 21 or 24 % calcium. The forms are those of its formula, in which 11 of " +
			"12 parts of nitrogen are nitrate; labels print 14.4 % nitrate and 1.1 % ammonium."},
	{"13-0-46", "Potassium nitrate, 13-0-46", from(13, "alabama-0174", "nrcs-nm"), onlyNitrate, false, noWeight,
		from(-2, "alabama-0174"), fact.Nitrate | fact.Oxidizer,
		"Labels say 44, 45 or 46 % potash."},
	{"15-15-15", "Triple 15, 15-15-15", from(15, "grade"), byTheMaker, false, noWeight,
		from(2.5, ofPierre), fact.Phosphate,
		"Makers use different sources, so the forms are not listed: read the label. The lime is for all ammonium without " +
			"sulfate. With ammonium sulfate in it, it is up to 5."},
	{"16-20-0", "Ammonium phosphate-sulfate, 16-20-0", from(16, "grade"), onlyAmmonium, false, noWeight,
		from(5.6, ofPierre), fact.Sulfate | fact.Phosphate,
		"With 15 % sulfur. Lime is worked from the grade; 5.5 is printed."},
	{"11-52-0", "Monoammonium phosphate (MAP), 11-52-0", from(11, "nrcs-nm"), onlyAmmonium, false, noWeight,
		from(5.1, ofPierre), fact.Phosphate,
		"Labels say 11 or 12 % N. Lime is worked from the grade; the 5.4 that is printed is for a purer product."},
	{"18-46-0", "Diammonium phosphate (DAP), 18-46-0", from(18, "nrcs-nm"), onlyAmmonium, false, noWeight,
		from(3.6, ofPierre), fact.Phosphate,
		"Lime is worked from the grade."},
	{"10-34-0", "Ammonium polyphosphate solution, 10-34-0", from(10, "nrcs-nm"), onlyAmmonium, true,
		from(11.65, "fluid-weights"), from(4.2, ofPierre), fact.Phosphate,
		"A University of Nebraska lesson has a gallon at 11.4 lb. Lime is worked from the grade."},
	{"20-0-0", "Aqua ammonia, 20-0-0", from(20, ucTable), onlyAmmonium, true, from(7.58, ucTable), from(1.8, ucTable),
		fact.Ammonia,
		"20 to 25 % N. A gallon is worked from 0.66 gal for a pound of nitrogen."},
	{"82-0-0", "Anhydrous ammonia, 82-0-0", from(82, ucTable), onlyAmmonium, true, from(5.15, "unl-materials"),
		from(1.8, ucTable), fact.Ammonia | fact.Pressure,
		"A gallon is 5.15 lb at 60 °F, and clearly less when warm."},
	{"12-0-0-26S", "Ammonium thiosulfate solution, 12-0-0-26S", from(12, "nrcs-nm"), onlyAmmonium, true,
		from(11.04, "fluid-weights"), from(8.6, ofPierre), fact.Thiosulfate | fact.Sulfate,
		"The University of Nebraska has a gallon at 11.5 lb. Lime is worked from the grade, with all its sulfur turned to " +
			"sulfate. Acid makes it give off a poison gas."},
	{"15-0-0-16S", "Urea-sulfuric acid, 15-0-0-16S", from(15, "grade"), onlyUrea, true, noWeight, from(5.1, ofPierre),
		fact.Acid | fact.Sulfate,
		"Half of it is sulfuric acid. No page with the weight of a gallon was seen: read it on the ticket. Lime is worked " +
			"from the grade."},
}
