package nitrogen_test

import (
	"strings"

	"acreleaf/calc/nitrogen"
)

const (
	burns    = "DANGER Urea-sulfuric acid burns skin and eyes"
	gasKills = "DANGER Ammonia gas burns eyes, skin and lungs"
	hard     = "CAUTION Ammonia raises the pH of irrigation water."
	limey    = "CAUTION This material holds calcium."
	setting  = "CAUTION This material holds sulfate or phosphate."
	recalled = "NOTICE The weight of a gallon, 11.1 lb product/gal, is from memory."
	disputed = "NOTICE Sources put a gallon of 12-0-0-26S at 11.1 to 11.5 lb."
	three    = "The field rule is 3 lb of nitrogen to a gallon of UAN. By weight it is "
	saltsOut = "NOTICE UAN-32 salts out near 28 °F"
	freezes  = "NOTICE UAN-28 salts out near 0 °F"
	onTop    = "Urea that stays on top of the ground"
	chalky   = "On a soil above pH 7.5, ammonium sulfate"
	sours    = "In warm, moist soil its nitrogen turns to nitrate"
	sweetens = "This material raises the pH of the soil a little."
	warm     = "A gallon is taken at "
	oneFeed  = "CAUTION If this is a whole season's rate, split it."
	oneTank  = "CAUTION One of these holds calcium and another holds sulfate or phosphate."
	ownForms = "NOTICE The forms of the nitrogen in one of these are from memory"
)

func cheapest(place string) string { return "The " + place + " material has the cheapest nitrogen: $" }

func init() {
	amount := func(material string, more ...string) []string {
		return append([]string{"nitrogen=30 lb N/ac", "material=" + material}, more...)
	}
	sheetAmount := nitrogen.MaterialAmount
	sayings = append(sayings,
		saying{sheetAmount, amount("UAN-32"),
			[]string{recalled, three + "3.54 lb N/gal: the two are 18 % apart.", saltsOut, onTop,
				sours + " in 2 to 3 weeks, and that lowers the pH of the soil. In the long run lime makes up for it: 53.4 lb"}},
		saying{sheetAmount, amount("UAN-32", "density=11 lb/gal"),
			[]string{three + "3.52 lb N/gal: the two are 17.3 % apart.", saltsOut, onTop, sours}},
		saying{sheetAmount, amount("UAN-28"),
			[]string{three + "2.97 lb N/gal: the two are 1.07 % apart.", freezes, onTop, sours}},
		saying{sheetAmount, amount("CAN-17"), []string{limey, sours}},
		saying{sheetAmount, amount("AN-20"), []string{sours}},
		saying{sheetAmount, amount("46-0-0"), []string{onTop, sours}},
		saying{sheetAmount, amount("21-0-0-24S"), []string{setting, chalky, sours}},
		saying{sheetAmount, amount("15.5-0-0-19Ca"), []string{limey, sweetens}},
		saying{sheetAmount, amount("13-0-46"), []string{sweetens}},
		saying{sheetAmount, amount("15-15-15"), []string{setting, sours}},
		saying{sheetAmount, amount("10-34-0"),
			[]string{setting, "NOTICE The weight of a gallon, 11.7 lb product/gal, is from memory.", sours}},
		saying{sheetAmount, amount("20-0-0"), []string{gasKills, hard, sours}},
		saying{sheetAmount, amount("82-0-0"), []string{gasKills, hard, sours}},
		saying{sheetAmount, amount("12-0-0-26S"), []string{setting, disputed, sours}},
		saying{sheetAmount, amount("12-0-0-26S", "density=11.1 lb/gal"), []string{setting, sours}},
		saying{sheetAmount, amount("15-0-0-16S", "density=12.8 lb/gal"), []string{burns, setting, sours}},
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
		saying{back, put("50 lb/ac", "34-0-0"), []string{oneFeed}},
		saying{back, put("20 lb/ac", "34-0-0"), nil},
		saying{back, put("2 gal/ac", "UAN-32"), []string{recalled, warm + "11.1 lb product/gal."}},
		saying{back, put("2 gal/ac", "CAN-17"), []string{limey, warm}},
		saying{back, put("2 gal/ac", "20-0-0"), []string{gasKills, hard, warm}},
		saying{back, put("2 gal/ac", "12-0-0-26S"), []string{setting, disputed, warm}},
		saying{back, put("2 gal/ac", "15-0-0-16S"), []string{burns, setting,
			"NOTICE The weight of a gallon, 12.8 lb product/gal, is from memory.", warm}},
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
		return "Soil pH: the " + place + " material sours the soil more than most. In the long run lime makes up for it: " +
			lime
	}
	like := func(place string) string {
		return "Soil pH: the " + place + " material raises the pH of the soil a little."
	}
	unsure := func(place string) string {
		return "NOTICE The weight of a gallon of the " + place + " material is not sure."
	}
	sayings = append(sayings,
		saying{compare, of("UAN-32 420 $/ton", "46-0-0 560 $/ton", "none"),
			[]string{cheapest("second"), lost("first", "50 %"), lost("second", "100 %")}},
		saying{compare, of("AN-20 420 $/ton", "20-0-0 560 $/ton", "none 500 $/ton"),
			[]string{"The third material is none, so its price is not used.", gasKills, cheapest("first"),
				leaches("first", "50 %")}},
		saying{compare, of("UAN-32 2 $/gal", "20-0-0 560 $/ton", "none"),
			[]string{unsure("first"), gasKills, cheapest("first"), lost("first", "50 %")}},
		saying{compare, of("34-0-0 500 $/ton", "UAN-32 2 $/gal", "10-34-0 4 $/gal"),
			[]string{unsure("second"), unsure("third"), cheapest("second"), leaches("first", "50 %"),
				lost("second", "50 %"), strong("third", "42 lb CaCO3/ac")}},
		saying{compare, of("34-0-0 500 $/ton", "34-0-0 500 $/ton", "none"),
			[]string{"No one of them has the cheapest nitrogen.", leaches("first", "50 %"), leaches("second", "50 %")}},
		saying{compare, of("15-0-0-16S 500 $/ton", "21-0-0-24S 900 $/ton", "15.5-0-0-19Ca 300 $/ton"),
			[]string{burns, oneTank, ownForms, cheapest("third"), strong("first", "51 lb CaCO3/ac"),
				strong("second", "52.4 lb CaCO3/ac"), leaches("third", "93 %"), like("third")}},
		saying{compare, of("13-0-46 900 $/ton", "13-0-46 800 $/ton", "46-0-0 900 $/ton"),
			[]string{cheapest("third"), leaches("first", "100 %"), like("first"), leaches("second", "100 %"), like("second"),
				lost("third", "100 %")}},
	)
}
