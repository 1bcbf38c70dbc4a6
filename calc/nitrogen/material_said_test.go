package nitrogen_test

import (
	"slices"
	"strings"

	"acreleaf/calc/nitrogen"
)

const (
	burns    = "DANGER Strong acid burns skin and eyes"
	gasKills = "DANGER Ammonia gas burns eyes, skin and lungs"
	pressed  = "DANGER This material is kept as a liquid under high pressure."
	hard     = "NOTICE Ammonia raises the pH of irrigation water."
	apart    = "Do not mix materials in one tank or line."
	never    = "Do not mix. Flush the lines between two materials."
	flames   = "WARNING This material may make a fire fiercer"
	three    = "The field rule is 3 lb of nitrogen to a gallon of UAN. By weight it is "
	saltsOut = "NOTICE UAN-32 salts out near 28 °F"
	freezes  = "NOTICE UAN-28 salts out near 0 °F"
	onTop    = "Urea that stays on top of the ground"
	chalky   = "On a soil above pH 7.5, ammonium sulfate"
	sours    = "In warm, moist soil its nitrogen turns to nitrate"
	souring  = "NOTICE This makes the soil more acid than most materials do"
	sweetens = "This material works against acid soil, as lime does: it does the work of "
	warm     = "A gallon is taken at "
	oneFeed  = "NOTICE If "
	weigh    = "No published weight of a gallon is at hand for this liquid"
)

// kept is what a sheet says about a material alone, before anything else: what it must be handled for, and kept from.
var kept = map[string][]string{
	"UAN-32": {keepNitrate, "This material is a solution of urea and ammonium nitrate. Never let it meet " +
		"calcium"},
	"UAN-28": {keepNitrate, "This material is a solution of urea and ammonium nitrate. Never let it meet " +
		"calcium"},
	"CAN-17":        {holds("calcium"), keepNitrate},
	"AN-20":         {flames, keepNitrate},
	"46-0-0":        nil,
	"21-0-0-24S":    {holds("sulfate")},
	"34-0-0":        {flames, keepNitrate},
	"15.5-0-0-19Ca": {holds("calcium"), keepNitrate},
	"13-0-46":       {flames, keepNitrate},
	"15-15-15":      {holds("phosphate")},
	"16-20-0":       {holds("sulfate"), holds("phosphate")},
	"11-52-0":       {holds("phosphate")},
	"18-46-0":       {holds("phosphate")},
	"10-34-0":       {holds("phosphate")},
	"20-0-0":        {gasKills, keepAmmonia, clogsAmmonia, hard},
	"82-0-0":        {pressed, gasKills, keepAmmonia, clogsAmmonia, hard},
	"12-0-0-26S":    {holds("sulfate"), "DANGER " + holds("thiosulfate")},
	"15-0-0-16S":    {burns, "DANGER This material is a strong acid. Never let it meet ammonia, ", holds("sulfate")},
}

const (
	keepNitrate  = "WARNING This material holds nitrate. Never let it meet strong acid in a tank or a line."
	keepAmmonia  = "DANGER This material holds ammonia. Never let it meet strong acid or chlorine (bleach) in a tank"
	clogsAmmonia = "This material holds ammonia. Never let it meet calcium or phosphate in a tank"
)

func holds(what string) string { return "This material holds " + what + ". Never let it meet " }

// tanked is all that a sheet says about a material in a tank.
func tanked(material string, more ...string) []string {
	mixing := apart
	if slices.Contains([]string{"20-0-0", "82-0-0", "15-0-0-16S"}, material) {
		mixing = never
	}
	return append(append(slices.Clone(kept[material]), mixing), more...)
}

func init() {
	amount := func(material string, more ...string) []string {
		return append([]string{"nitrogen=30 lb N/ac", "material=" + material}, more...)
	}
	sheetAmount := nitrogen.MaterialAmount
	sayings = append(sayings,
		saying{sheetAmount, amount("UAN-32"),
			tanked("UAN-32", three+"3.54 lb N/gal: the two are 18 % apart.", saltsOut, onTop,
				sours+" in 2 to 3 weeks, and that lowers the pH of the soil. In the long run lime makes up for it: 53.4 lb")},
		saying{sheetAmount, amount("UAN-32", "density=11 lb/gal"),
			tanked("UAN-32", three+"3.52 lb N/gal: the two are 17.3 % apart.", saltsOut, onTop, sours)},
		saying{sheetAmount, amount("UAN-28"),
			tanked("UAN-28", three+"2.99 lb N/gal: the two are 0.413 % apart.", freezes, onTop, sours)},
		saying{sheetAmount, amount("CAN-17"), tanked("CAN-17", sours)},
		saying{sheetAmount, amount("AN-20"), tanked("AN-20", sours)},
		saying{sheetAmount, amount("46-0-0"), tanked("46-0-0", onTop, sours)},
		saying{sheetAmount, amount("21-0-0-24S"), tanked("21-0-0-24S", chalky, souring, sours)},
		saying{sheetAmount, amount("15.5-0-0-19Ca"), tanked("15.5-0-0-19Ca", sweetens)},
		saying{sheetAmount, amount("13-0-46"), tanked("13-0-46", sweetens)},
		saying{sheetAmount, amount("15-15-15"), tanked("15-15-15", sours)},
		saying{sheetAmount, amount("10-34-0"), tanked("10-34-0", souring, sours)},
		saying{sheetAmount, amount("20-0-0"), tanked("20-0-0", sours)},
		saying{sheetAmount, amount("82-0-0"), tanked("82-0-0", sours)},
		saying{sheetAmount, amount("12-0-0-26S"), tanked("12-0-0-26S", souring, sours)},
		saying{sheetAmount, amount("15-0-0-16S"), tanked("15-0-0-16S", weigh, souring, sours)},
		saying{sheetAmount, amount("15-0-0-16S", "density=12.8 lb/gal"), tanked("15-0-0-16S", souring, sours)},
	)
	sayBack()
	sayCompared()
}

func sayBack() {
	back := nitrogen.MaterialNitrogen
	put := func(amount, material string) []string {
		return []string{"amount=" + amount, "material=" + material, "trees=160 trees/ac"}
	}
	sayings = append(sayings,
		saying{back, put("50 lb/ac", "34-0-0"), tanked("34-0-0", oneFeed)},
		saying{back, put("20 lb/ac", "34-0-0"), tanked("34-0-0")},
		saying{back, put("2 gal/ac", "UAN-32"), tanked("UAN-32", warm+"11.06 lb product/gal.")},
		saying{back, put("2 gal/ac", "CAN-17"), tanked("CAN-17", warm)},
		saying{back, put("2 gal/ac", "20-0-0"), tanked("20-0-0", warm)},
		saying{back, put("2 gal/ac", "82-0-0"), tanked("82-0-0", warm)},
		saying{back, put("2 gal/ac", "12-0-0-26S"), tanked("12-0-0-26S", warm)},
		saying{back, put("20 lb/ac", "16-20-0"), tanked("16-20-0")},
		saying{back, put("20 lb/ac", "15-0-0-16S"), tanked("15-0-0-16S", weigh)},
	)
}

func sayCompared() {
	compare := nitrogen.MaterialCompare
	of := func(first, second, third string) []string {
		split := func(place, text string) []string {
			material, price, _ := strings.Cut(text, " ") // "UAN-32 420 $/ton"
			if price == "" {
				return []string{place + "=" + material}
			}
			return []string{place + "=" + material, place + "-price=" + price}
		}
		return append(append(append([]string{"nitrogen=10 lb N/ac"}, split("first", first)...), split("second", second)...),
			split("third", third)...)
	}
	leaches := func(place, share string) string {
		return "Leaching: " + share + " of the nitrogen in the " + place + " material is nitrate"
	}
	lost := func(place, share string) string {
		return "Loss to the air: " + share + " of the nitrogen in the " + place + " material is urea."
	}
	strong := func(place, lime string) string {
		return "NOTICE The " + place + " material: in the long run lime makes up for what it does to the pH, " + lime
	}
	like := func(place, lime string) string {
		return "Soil pH: the " + place + " material works against acid soil, as lime does. It does the work of " + lime
	}
	sayings = append(sayings,
		saying{compare, of("UAN-32 420 $/ton", "46-0-0 560 $/ton", "none"),
			[]string{apart, lost("first", "50 %"), lost("second", "100 %")}},
		saying{compare, of("AN-20 420 $/ton", "20-0-0 560 $/ton", "none 500 $/ton"),
			[]string{"The third material is none, so its price is not used.", gasKills, flames, never,
				leaches("first", "50 %")}},
		saying{compare, of("82-0-0 900 $/ton", "46-0-0 560 $/ton", "none"),
			[]string{pressed, gasKills, never, lost("second", "100 %")}},
		saying{compare, of("UAN-32 2 $/gal", "20-0-0 560 $/ton", "none"),
			[]string{gasKills, never, lost("first", "50 %")}},
		saying{compare, of("34-0-0 500 $/ton", "UAN-32 2 $/gal", "10-34-0 4 $/gal"),
			[]string{flames, apart, leaches("first", "50 %"), lost("second", "50 %"),
				strong("third", "42 lb CaCO3/ac")}},
		saying{compare, of("34-0-0 500 $/ton", "34-0-0 500 $/ton", "none"),
			[]string{flames, apart, leaches("first", "50 %"), leaches("second", "50 %")}},
		saying{compare, of("15-0-0-16S 500 $/ton", "21-0-0-24S 900 $/ton", "15.5-0-0-19Ca 300 $/ton"),
			[]string{burns, "WARNING Strong acid turns nitrate into nitric acid", "NOTICE Calcium and sulfate form gypsum",
				never, strong("first", "51 lb CaCO3/ac"), strong("second", "52.4 lb CaCO3/ac"),
				leaches("third", "92 %"), like("third", "12.9 lb CaCO3/ac.")}},
		saying{compare, of("15-0-0-16S 500 $/ton", "20-0-0 900 $/ton", "12-0-0-26S 300 $/ton"),
			[]string{burns, gasKills, "DANGER Acid and ammonia boil up", "DANGER Acid makes thiosulfate give off", never,
				strong("first", "51 lb CaCO3/ac"), strong("third", "86 lb CaCO3/ac")}},
		saying{compare, of("20-0-0 500 $/ton", "CAN-17 900 $/ton", "11-52-0 900 $/ton"),
			[]string{gasKills, "NOTICE Calcium and phosphate form", "NOTICE Ammonia raises the pH, and calcium settles",
				"NOTICE Ammonia raises the pH, and phosphate settles", never, leaches("second", "66 %"),
				strong("third", "51 lb CaCO3/ac")}},
		saying{compare, of("UAN-32 500 $/ton", "15-15-15 900 $/ton", "CAN-17 900 $/ton"),
			[]string{"NOTICE Calcium and phosphate form", "NOTICE UAN with CAN-17", apart,
				"The forms of the nitrogen in the second material differ", lost("first", "50 %"),
				leaches("third", "66 %")}},
		saying{compare, of("46-0-0 500 $/ton", "46-0-0 900 $/ton", "15-15-15 900 $/ton"),
			[]string{apart, "The forms of the nitrogen in the third material differ",
				lost("first", "100 %"), lost("second", "100 %")}},
		saying{compare, of("15-15-15 500 $/ton", "46-0-0 400 $/ton", "none"),
			[]string{apart, "The forms of the nitrogen in the first material differ by maker",
				lost("second", "100 %")}},
		saying{compare, of("13-0-46 900 $/ton", "13-0-46 800 $/ton", "46-0-0 900 $/ton"),
			[]string{flames, apart, leaches("first", "100 %"), like("first", "20 lb CaCO3/ac."), leaches("second", "100 %"),
				like("second", "20 lb CaCO3/ac."), lost("third", "100 %")}},
	)
}
