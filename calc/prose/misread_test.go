package prose_test

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"acreleaf/calc/prose"
)

// What was once taken for an amount, or for another one.
func TestMisreadings(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		{"en", "it costs $3 to $6 an acre-hour", "$3 to $6 = 3 to 6 $"},
		{"en", "a soil of 22 meq/100 g", ""},
		{"en", "an inch on an acre is 27,154 gallons", "27,154 gallons = 27154 gal"},
		{"en", "put on 48 lbs/A", "48 lbs/A = 48 lb/ac"},
		{"en", "mix 2 qt/A", "2 qt/A = 2 qt/ac"},
		{"en", "mix 8 fl oz/100 gal", "8 fl oz/100 gal = 0.08 floz/gal"},
		{"en", "a 10-ton spreader and two 2-gph emitters on a 6-foot strip, with 8-inch suction lines", ""},
		{"en", "a bucket of 5 gallons, and a 5-gallon bucket", ""},
		{"en", "a 2-inch irrigation, a 12-inch depth and 20-foot rows", "2-inch = 2 in; 12-inch = 12 in; 20-foot = 20 ft"},
		{"en", "a 40-acre block and a 48-lb/ac rate", "40-acre = 40 ac; 48-lb/ac = 48 lb/ac"},
		{"en", "a 100% guarantee and a discount of 20 percent", ""},
		{"en", "it was $.65 per pound", "$.65 per pound = 0.65 $/lb"},
		{"en", "lime at a pound per inch", "a pound per inch = 1 lb/in"},
		{"en", "sow 2 bushels an acre, 40 bushels in all, in a 1-bushel basket",
			"2 bushels an acre = 2 bu/ac; 40 bushels = 40 bu"},
		{"es", "siembre 2 bushels por acre", "2 bushels por acre = 2 bu/ac"},
		{"es", "aplique mil doscientas libras, dos mil quinientos galones o mil doscientos cincuenta kilos",
			"mil doscientas libras = 1200 lb; dos mil quinientos galones = 2500 gal; " +
				"mil doscientos cincuenta kilos = 1250 kg"},
		{"en", "two thousand five hundred pounds, a thousand pounds and two thousand and five gallons",
			"two thousand five hundred pounds = 2500 lb; a thousand pounds = 1000 lb; two thousand and five gallons = 2005 gal"},
		{"en", "a strip of 1/128 acre, 3/2 lb, 1/2-3/4 in and 2 1/2\nlb", "1/128 acre = 0.0078125 ac; 3/2 lb = 1.5 lb; " +
			"1/2-3/4 in = 0.5 to 0.75 in; 2 1/2\nlb = 2.5 lb"},
		{"en", "12,5 lb/ac", "12,5 lb/ac = 12.5 lb/ac"},
		{"en", "one acre-foot of water", "one acre-foot = 1 ac-ft"},
		{"es", "5 cc por galón", "5 cc por galón = 5 mL/gal"},
		{"en", "1 lb of sulfate of potash", "1 lb of sulfate of potash = 1 lb product"},
		{"es", "una cubeta de 5 galones", ""},
		{"es", "un descuento del 20 por ciento", ""},
		{"es", "ponga 5 galones", "5 galones = 5 gal"},
	} {
		var found []string
		for _, a := range prose.For(c.language).Find(c.text) {
			numbers := fmt.Sprint(a.Low)
			if a.High != a.Low {
				numbers += fmt.Sprint(" to ", a.High)
			}
			found = append(found, fmt.Sprintf("%s = %s %s", c.text[a.Start:a.End], numbers, a.Unit))
		}
		if got := strings.Join(found, "; "); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// Counts are no amounts of the trade by themselves. Those of a measure say so.
func TestCounts(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		{"en", "a 75-hp pump, 50 horsepower, 40 psi and 30 kW for 24 hours, 3 weeks and two months",
			"75 hp; 50 hp; 40 psi; 30 kW; 24 h; 3 week; 2 month"},
		{"en", "2,200 trees in 12 rows, at 1.2 dS/m or 800 uS/cm", "2200 tree; 12 rows; 1.2 dS/m; 800 uS/cm"},
		{"en", "one feed, a month, UAN-32, row 12, May 4, 46-0-0", ""},
		{"es", "una bomba de 75 caballos de fuerza, 2,200 árboles y tres meses", "75 hp; 2200 tree; 3 month"},
	} {
		var found []string
		for _, n := range prose.For(c.language).Counts(c.text) {
			found = append(found, fmt.Sprint(n.Value, " ", cmp.Or(n.Unit, n.Noun)))
		}
		if got := strings.Join(found, "; "); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// One of a time is a length of time in both languages, wherever it stands, but for what something is counted by.
func TestTimes(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		{"en", "Keep it dry for a month.", "1 month"},
		{"en", "Feed a month before bloom, and sample a week after.", "1 month; 1 week"},
		{"en", "A day later it dries. Give the trees a week, or keep the gate shut an hour.", "1 day; 1 week; 1 h"},
		{"en", "Feed twice a week, once a day, or two small feeds a month.", ""},
		{"en", "Run 2 gallons a day, an hour a night, $5 a month and 1 inch of water a week.", "1 h"},
		{"en", "Keep 5 trees dry for a month, and 2 rows for a week.", "1 month; 1 week"},
		{"en", "In two years it bears. Wait a month.", "1 month"},
		{"en", "Wait 3 weeks, then a month.", "3 week; 1 month"},
		{"es", "Manténgalo seco por un mes.", "1 month"},
		{"es", "Abone un mes antes de la floración, y tome muestras una semana después.", "1 month; 1 week"},
		{"es", "Abone dos veces por semana, una vez al día o dos veces al mes.", ""},
	} {
		var found []string
		for _, n := range prose.For(c.language).Times(c.text) {
			found = append(found, fmt.Sprint(n.Value, " ", n.Unit))
		}
		if got := strings.Join(found, "; "); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}
