package prose

import (
	"fmt"
	"strings"
	"testing"

	"acreleaf/calc/unit"
)

// show writes an amount as calc/unit would: the number or the range, and the unit.
func show(a Amount) string {
	return unit.Range{Low: a.Low, High: a.High, Unit: a.Unit}.String()
}

// Each row is a sentence and the amounts in it: what it says where, and how it is read.
var sentences = []struct{ language, text, want string }{
	{"en", "It takes 48 lb/ac of nitrogen.", "48 lb/ac of nitrogen = 48 lb N/ac"},
	{"en", "It takes 48 pounds an acre.", "48 pounds an acre = 48 lb/ac"},
	{"en", "It takes 48 pounds of nitrogen an acre.", "48 pounds of nitrogen an acre = 48 lb N/ac"},
	{"en", "put 48 lb of nitrate on", "48 lb of nitrate = 48 lb NO3"},
	{"en", "put 48 lb of this product on", "48 lb of this product = 48 lb product"},
	{"en", "put 48 lb of UAN-32 on", "48 lb of UAN-32 = 48 lb product"},
	{"en", "put 48 lb of 46-0-0 on", "48 lb of 46-0-0 = 48 lb product"},
	{"en", "48 lb of nitrate nitrogen", "48 lb of nitrate nitrogen = 48 lb NO3-N"},
	{"en", "a report of 12 ppm NO3-N", "12 ppm NO3-N = 12 ppm NO3-N"},
	{"en", "a leaf of 2.4 % total N, 20 ppm total nitrogen", "2.4 % total N = 2.4 % N; 20 ppm total nitrogen = 20 ppm N"},
	{"es", "20 ppm de nitrógeno total", "20 ppm de nitrógeno total = 20 ppm N"},
	{"en", "nearly a pound of N, more than an ounce of nitrogen", "a pound of N = 1 lb N; an ounce of nitrogen = 1 oz N"},
	{"en", "the price of a pound of nitrogen", ""},
	{"en", "2 lb for every 100 gal, 3 lb per hundred gallons",
		"2 lb for every 100 gal = 0.02 lb/gal; 3 lb per hundred gallons = 0.03 lb/gal"},
	{"es", "dos libras por cada cien galones", "dos libras por cada cien galones = 0.02 lb/gal"},
	{"en", "12ppm", "12ppm = 12 ppm"},
	{"en", "3 to 4 oz a tree", "3 to 4 oz a tree = 3 to 4 oz/tree"},
	{"en", "3–4 oz/tree; 3-4 oz; 3 – 4 oz",
		"3–4 oz/tree = 3 to 4 oz/tree; 3-4 oz = 3 to 4 oz; 3 – 4 oz = 3 to 4 oz"},
	{"en", "between 3 and 4 oz", "3 and 4 oz = 3 to 4 oz"},
	{"en", "3 oz to 4 oz, 2 ft – 3 ft, 3 oz to 4 lb", "3 oz to 4 oz = 3 to 4 oz; 2 ft – 3 ft = 2 to 3 ft; " +
		"3 oz = 3 oz; 4 lb = 4 lb"},
	{"en", "a half-ton truck, a 2-inch pipe and a three-quarter-ton pickup", ""},
	{"en", "we had 3 and 4 oz", "4 oz = 4 oz"},
	{"en", "twelve inches, two feet and one acre", "twelve inches = 12 in; two feet = 2 ft"},
	{"en", "one to two ounces", "one to two ounces = 1 to 2 oz"},
	{"en", "twenty-five pounds, forty two pounds", "twenty-five pounds = 25 lb; forty two pounds = 42 lb"},
	{"en", "two hundred fifty gallons, a thousand pounds",
		"two hundred fifty gallons = 250 gal; a thousand pounds = 1,000 lb"},
	{"en", "2 million lb", "2 million lb = 2,000,000 lb"},
	{"en", "half an inch, half a pound, a half inch, half of an acre",
		"half an inch = 0.5 in; half a pound = 0.5 lb; a half inch = 0.5 in; half of an acre = 0.5 ac"},
	{"en", "two thirds of an ounce, three quarters of an inch",
		"two thirds of an ounce = 0.667 oz; three quarters of an inch = 0.75 in"},
	{"en", "two and a half ounces, 2 1/2 oz, 2½ oz, ½ in, 1/2 oz, 2-1/2 gal",
		"two and a half ounces = 2.5 oz; 2 1/2 oz = 2.5 oz; 2½ oz = 2.5 oz; ½ in = 0.5 in; " +
			"1/2 oz = 0.5 oz; 2-1/2 gal = 2.5 gal"},
	{"en", "a gap of 1/32 in, a drill of 1/64 in", "1/32 in = 0.0313 in; 1/64 in = 0.0156 in"},
	{"en", "27,154 gallons, 0.62 dollars, $420/ton, $3 to $4 a pound, 62 cents a pound",
		"27,154 gallons = 27,154 gal; 0.62 dollars = $0.62; $420/ton = $420/ton; $3 to $4 a pound = $3 to 4/lb; " +
			"62 cents a pound = $0.62/lb"},
	{"en", "$0.61 a pound of nitrogen", "$0.61 a pound of nitrogen = $0.61/lb N"},
	{"en", "110 trees an acre, 110 trees/ac, 110 trees", "110 trees an acre = 110 trees/ac; 110 trees/ac = 110 trees/ac"},
	{"en", "5 miles an hour, 5 miles from town", "5 miles an hour = 5 mi/h"},
	{"en", "450 gallons a minute and 300 gpm", "450 gallons a minute = 450 gal/min; 300 gpm = 300 gpm"},
	{"en", "70 % or 70 percent or seventy per cent", "70 % = 70 %; 70 percent = 70 %; seventy per cent = 70 %"},
	{"en", "2.3 acre-inches, 2 acre feet, 40-acre block",
		"2.3 acre-inches = 2.3 ac-in; 2 acre feet = 2 ac-ft; 40-acre = 40 ac"},
	{"en", "a 6-inch layer and a six-inch layer", "6-inch = 6 in; six-inch = 6 in"},
	{"en", "12 in of water, 12 in, 12 in deep", "12 in = 12 in; 12 in = 12 in; 12 in = 12 in"},
	{"en", "4 in the row, 5 in 2026, 3 in all, 12 in a pinch", ""},
	{"en", "48\nlb\nan acre and 48\u00A0lb", "48 lb an acre = 48 lb/ac; 48\u00A0lb = 48 lb"},
	{"en", "8 lb/ac for each ppm", "8 lb/ac = 8 lb/ac"},
	{"en", "25 lb an acre a year", "25 lb an acre = 25 lb/ac"},
	{"en", "10 mg/L NO3-N", "10 mg/L NO3-N = 10 mg/L NO3-N"},
	{"en", "a 5-gallon bucket, a five gallon jug, 50 lb bags", ""},
	{"en", "21-0-0-24S, UAN-32, 46-0-0 lb, 2026-09-14, 6:30, 555-0100, Handbook 44, version 1.26.8, 3/15/2026", ""},
	{"en", "on May 4, page 12, 24 hours, 3 weeks, 5 feeds, six trees, step 2, 12 months, NO3 5, first leaf", ""},
	{"en", "a second pound, the third acre, half of its water, one in ten", ""},
	{"en", "⅓ oz, 1⅛ oz, 2⅝ in, 1⁄2 oz, 1/12 lb, 3/4-inch, .5 lb, -5 lb",
		"⅓ oz = 0.333 oz; 1⅛ oz = 1.13 oz; 2⅝ in = 2.63 in; 1⁄2 oz = 0.5 oz; 1/12 lb = 0.0833 lb; 3/4-inch = 0.75 in; " +
			".5 lb = 0.5 lb; -5 lb = -5 lb"},
	{"en", "48# an acre, 48 #/ac, 62¢ a pound, $ 0.62 a pound, 0.62 $/lb, 2\" of water, 12' × 18′, 2″",
		"48# an acre = 48 lb/ac; 48 #/ac = 48 lb/ac; 62¢ a pound = $0.62/lb; $ 0.62 a pound = $0.62/lb; " +
			"0.62 $/lb = $0.62/lb; 2\" = 2 in; 12' = 12 ft; 18′ = 18 ft; 2″ = 2 in"},
	{"en", "“see row 2” or \"figure 3\" or 'block 4' in the 1990's, # 5, $a = 12$", ""},
	{"en", "one ounce a tree, one pound of N, one percent, one inch of water, an ounce a tree, a dollar a pound",
		"one ounce a tree = 1 oz/tree; one pound of N = 1 lb N; one percent = 1 %; one inch = 1 in; " +
			"an ounce a tree = 1 oz/tree; a dollar a pound = $1/lb"},
	{"en", "an ounce of care, the price of a pound of nitrogen, one foot in the door, a mile, a tree an acre", ""},
	{"en", "At most one ounce at a time, one gallon more, in one hour on one acre, one foot from one of them.",
		"one ounce = 1 oz; one gallon = 1 gal"},
	{"en", "Give each tree one ounce. Put one ounce around each tree. Two cups of coffee, 2 cups a tree, " +
		"2 tablespoons, 3 AF",
		"one ounce = 1 oz; one ounce = 1 oz; 2 cups a tree = 2 cup/tree; 2 tablespoons = 2 tbsp; 3 AF = 3 ac-ft"},
	{"en", "not worth a cent, a dollar for every dollar, a mile a day, a 20 % discount, a 5-gallon pot", ""},
	{"en", "a dozen pounds, two dozen lb, a couple of pounds, zero pounds, a pound and a half, three-eighths inch",
		"a dozen pounds = 12 lb; two dozen lb = 24 lb; a couple of pounds = 2 lb; zero pounds = 0 lb; " +
			"a pound and a half = 1.5 lb; three-eighths inch = 0.375 in"},
	{"en", "50 or so lb, 50-odd lb, 50+ lb, 48 US gallons, 48 dry pounds, 2 fl. oz., 3 metric tons, 2 cubic feet",
		"50 or so lb = 50 lb; 50-odd lb = 50 lb; 50+ lb = 50 lb; 48 US gallons = 48 gal; 48 dry pounds = 48 lb; " +
			"2 fl. oz = 2 floz; 3 metric tons = 3 t; 2 cubic feet = 2 ft3"},
	{"en", "48 units of nitrogen an acre, 4 units of study, 48 per acre, 110/ac, in 2026 per acre costs rose, 2 per tree",
		"48 units of nitrogen an acre = 48 lb N/ac; 48 per acre = 48/ac; 110/ac = 110/ac"},
	{"en", "12x18 ft, 12-by-20-foot, 2x48lb, see https://example.org/48-lb, ten feet away, 100 percent sure, " +
		"10 percent of the growers",
		"18 ft = 18 ft; 20-foot = 20 ft; 48lb = 48 lb"},
	{"en", "12 ppm nitrate-N, 12 ppm NO₃, 12 ppm as NO3, 48 lb as urea, 48 lb of liquid UAN-32, 48 lb of UAN32, " +
		"48 lb 46-0-0",
		"12 ppm nitrate-N = 12 ppm NO3-N; 12 ppm NO₃ = 12 ppm NO3; 12 ppm as NO3 = 12 ppm NO3; 48 lb = 48 lb; " +
			"48 lb of liquid UAN-32 = 48 lb product; 48 lb of UAN32 = 48 lb product; 48 lb 46-0-0 = 48 lb product"},
	{"en", "48 lb on each acre, 2 gal/tree on each tree, 48 lb/ac in each tree row",
		"48 lb on each acre = 48 lb/ac; 2 gal/tree = 2 gal/tree; 48 lb/ac = 48 lb/ac"},
	{"es", "48 libras de nitrógeno por acre", "48 libras de nitrógeno por acre = 48 lb N/ac"},
	{"es", "de 3 a 4 onzas por árbol", "3 a 4 onzas por árbol = 3 to 4 oz/tree"},
	{"es", "entre 3 y 4 onzas", "3 y 4 onzas = 3 to 4 oz"},
	{"es", "doce pulgadas, dos pies, un acre, medio galón, media pulgada",
		"doce pulgadas = 12 in; dos pies = 2 ft; medio galón = 0.5 gal; media pulgada = 0.5 in"},
	{"es", "dos onzas y media, treinta y cinco libras, dos tercios de onza, una onza y media",
		"dos onzas y media = 2.5 oz; treinta y cinco libras = 35 lb; dos tercios de onza = 0.667 oz; " +
			"una onza y media = 1.5 oz"},
	{"es", "70 por ciento, 0.5 hectáreas, 27,154 galones, 3 kilos", "70 por ciento = 70 %; 0.5 hectáreas = 0.5 ha; " +
		"27,154 galones = 27,154 gal; 3 kilos = 3 kg"},
	{"es", "12 partes por millón, 2 acres-pulgada", "12 partes por millón = 12 ppm; 2 acres-pulgada = 2 ac-in"},
	{"es", "48 libras de nitrato, 48 lb de producto",
		"48 libras de nitrato = 48 lb NO3; 48 lb de producto = 48 lb product"},
	{"es", "el 3 de mayo, dos veces, tres semanas, a las 6:30, la página 12, cien árboles", ""},
	{"es", "una onza por árbol, una onza a cada árbol, libra y media, onza y media, dos libras y un cuarto",
		"una onza por árbol = 1 oz/tree; una onza a cada árbol = 1 oz/tree; libra y media = 1.5 lb; " +
			"onza y media = 1.5 oz; dos libras y un cuarto = 2.25 lb"},
	{"es", "Dé a cada árbol una onza. Cada árbol es uno. Una taza de café, 2 tazas por árbol, 2 cucharadas",
		"una onza = 1 oz; 2 tazas por árbol = 2 cup/tree; 2 cucharadas = 2 tbsp"},
	{"es", "una onza de cuidado, el precio de una libra de nitrógeno, la libra y el acre, a la una y media", ""},
	{"es", "cuatrocientas libras, dieciseis galones, 48 libras de nitrogeno por arbol, una docena de libras, 70 porciento",
		"cuatrocientas libras = 400 lb; dieciseis galones = 16 gal; " +
			"48 libras de nitrogeno por arbol = 48 lb N/tree; una docena de libras = 12 lb; 70 porciento = 70 %"},
	{"es", "$0.62 la libra, 3 onzas el árbol, 48 libras netas de nitrógeno, 3 hasta 4 onzas, 7 u 8 lb, 2 ton/acre",
		"$0.62 la libra = $0.62/lb; 3 onzas el árbol = 3 oz/tree; 48 libras netas de nitrógeno = 48 lb N; " +
			"3 hasta 4 onzas = 3 to 4 oz; 7 u 8 lb = 7 to 8 lb; 2 ton/acre = 2 tons/ac"},
	{"es", "el 50 por ciento de los productores, en 2026 el acre, una unidad de estudio", ""},
	{"fr", "48 lb/ac et 12 ppm", "48 lb/ac = 48 lb/ac; 12 ppm = 12 ppm"},
}

func TestFind(t *testing.T) {
	for _, s := range sentences {
		var found []string
		for _, a := range For(s.language).Find(s.text) {
			found = append(found, strings.ReplaceAll(s.text[a.Start:a.End], "\n", " ")+" = "+show(a))
		}
		if got := strings.Join(found, "; "); got != s.want {
			t.Errorf("%s: %q\n got %s\nwant %s", s.language, s.text, got, s.want)
		}
	}
}

func TestRounds(t *testing.T) {
	for _, c := range []struct {
		value, written, step float64
		want                 bool
	}{
		{48, 48, 1, true}, {47.6, 48, 1, true}, {47.5, 48, 1, true}, {47.5, 47, 1, false}, {48.5, 48, 1, false},
		{0.226613, 0.227, 0.001, true}, {0.226613, 0.23, 0.01, true}, {0.226613, 0.226, 0.001, false},
		{-2.5, -3, 1, true}, {-2.5, -2, 1, false}, {1.1 * 2.5, 2.8, 0.1, true}, {1.1 * 2.5, 2.7, 0.1, false},
	} {
		if got := roundsTo(c.value, c.written, c.step); got != c.want {
			t.Errorf("%v written %v by %v: %v", c.value, c.written, c.step, got)
		}
	}
}

// A fraction is as fine as a hundredth: 1/3 in is 0.33 in, and neither 0.3 nor 0.4 in.
func TestFractionsAreHeldToAHundredth(t *testing.T) {
	for _, text := range []string{"1/3 in", "a third of an inch", "one third of an inch"} {
		found := For("en").Find(text)
		if len(found) != 1 {
			t.Errorf("%q: %v", text, found)
			continue
		}
		a := found[0]
		for value, want := range map[float64]bool{0.33: true, 0.3333: true, 0.337: true, 0.3: false, 0.37: false} {
			if got := roundsTo(value, a.Low, a.LowStep); got != want {
				t.Errorf("%v is said as %q: %v", value, text, got)
			}
		}
	}
}

// What is said after a figure may speak of something else than the figure: it is then no part of it.
func TestWordsThatDoNotSpeakOfTheFigure(t *testing.T) {
	for _, c := range []struct {
		text, rest, wanted string
		fits               bool
	}{
		{"12 in", " of water", "in", true},
		{"18 in", " of soil", "in", true},
		{"1.26", " pounds for each pound", "", true},
		{"48 lb", " of nitrate", "lb N", false},
	} {
		f, err := For("en").ReadFigure(c.text, c.rest, unit.MustParse(c.wanted))
		if err != nil || f.Fits != c.fits {
			t.Errorf("%q before %q, where %q is wanted: fits %v, %v", c.text, c.rest, c.wanted, f.Fits, err)
		}
	}
}

// A number moved by one in its last place is never the same figure, whatever the value.
func TestRoundsTellsNeighboursApart(t *testing.T) {
	for i := range 20000 {
		value := float64(i) * 0.0125
		for step, scale := range map[float64]float64{1: 1, 0.1: 10, 0.01: 100} {
			right := 0
			for _, by := range []float64{-1, 0, 1} {
				if roundsTo(value, (float64(int(value*scale+0.5))+by)/scale, step) {
					right++
				}
			}
			if right != 1 {
				t.Fatalf("%v by %v: %d of three neighbours are right", value, step, right)
			}
		}
	}
}

// Whatever stands around an amount, it is found in the same place.
func TestFindInAnySurroundings(t *testing.T) {
	for _, amount := range []string{"48 lb/ac", "3 to 4 oz a tree", "12 ppm NO3-N", "half an inch", "$0.62/lb", "½ oz",
		"twenty-five pounds of nitrogen an acre", "27,154 gal"} {
		for _, before := range []string{"", "Use ", "(", "“", "about ", "UAN-32, ", "on 2026-09-14, ", "~", "<", "á "} {
			for _, after := range []string{"", ".", ", then stop", ")", "” and go", "; 46-0-0", "\nand more"} {
				text := before + amount + after
				found := For("en").Find(text)
				if len(found) != 1 || text[found[0].Start:found[0].End] != amount {
					t.Errorf("%q: %v", text, found)
				}
			}
		}
	}
}

func TestExtend(t *testing.T) {
	for _, c := range []struct {
		text, rest string
		wide       bool
		want       string
	}{
		{"48", " pounds a tree", false, "48 lb/tree"},
		{"48 lb", " per tree", false, "48 lb/tree"},
		{"48 lb/ac", " of nitrate is", false, "48 lb NO3/ac"},
		{"48 lb/ac", " of\nthis solution", false, "48 lb product/ac"},
		{"8 lb/ac", " per ppm", false, "false"},
		{"48 lb/ac", ". Of nitrogen", false, "false"},
		{"10 gal", " a minute", false, "10 gal/min"},
		{"10 gal", " a minute", true, "10 gal/min"},
		{"5", " devices", false, "false"},
	} {
		a, ok := For("en").extend(c.text, c.rest, c.wide)
		got := show(a)
		if !ok {
			got = fmt.Sprint(ok)
		}
		if got != c.want {
			t.Errorf("%q and %q: %s", c.text, c.rest, got)
		}
	}
}

// A size is the first measure of a text, whatever it is a part of, with all that is read of it in any language.
func TestMeasure(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		{"en", "5-gallon bucket", "5-gallon = 5 gal"},
		{"en", "10-ton nitrate spreader", "10-ton nitrate = 10 tons NO3"},
		{"en", "10-ton spreader, holds 5 lb", "5 lb = 5 lb"},
		{"es", "cubeta de 5 galones", "5 galones = 5 gal"},
		{"es", "8 to 12 in", "8 to 12 in = 8 to 12 in"},
		{"es", "3 oz/tree", "3 oz/tree = 3 oz/tree"},
		{"en", "row 12", "none"},
	} {
		got := "none"
		if a, ok := For(c.language).Measure(c.text); ok {
			got = c.text[a.Start:a.End] + " = " + show(a)
		}
		if got != c.want {
			t.Errorf("%s: %q is %s, want %s", c.language, c.text, got, c.want)
		}
	}
}
