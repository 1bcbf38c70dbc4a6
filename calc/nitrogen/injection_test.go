package nitrogen_test

import (
	"math"
	"testing"

	"acreleaf/calc/nitrogen"
)

const (
	neverBack  = "WARNING Feed must never run back into a well"
	onLiquids  = "Liquid UAN and CAN-17 burned many first-leaf trees,"
	shortFlush = "NOTICE The flush is too short: "
	shortTime  = "NOTICE The time to inject is too short: "
	shortClean = "NOTICE The clean water before the feed is short: "
	longFlush  = "NOTICE The flush is more than a third of the run."
	thirds     = "A common plan is thirds: "
)

// feedOf is a feed of 5 lb N/ac on 20 ac.
func feedOf(material, run, clean, flush string, more ...string) []string {
	return append([]string{"nitrogen=5 lb N/ac", "acres=20 ac", "material=" + material, "run=" + run,
		"clean=" + clean, "flush=" + flush}, more...)
}

func init() {
	inject := nitrogen.Injection
	responses = append(responses,
		response{inject, "volume", "nitrogen", 1}, response{inject, "volume", "acres", 1},
		response{inject, "volume", "flow", 0}, response{inject, "concentration", "flow", -1},
		response{inject, "concentration", "acres", 1},
	)
	scalings = append(scalings,
		scaling{inject, "volume", 2, []string{"nitrogen", "acres"}}, scaling{inject, "rate", 1, []string{"acres"}},
		scaling{inject, "concentration", -1, []string{"flow"}},
	)
	situations = append(situations,
		situation{inject, feedOf("UAN-32", "6 h", "2 h", "2 h", "flow=500 gpm")},
		situation{inject, feedOf("CAN-17", "4 h", "45 min", "1 h", "flow=300 gpm")},
		situation{inject, feedOf("20-0-0", "8 h", "1 h", "90 min")},
	)
	sayings = append(sayings,
		saying{inject, feedOf("UAN-28", "6 h", "120 min", "120 min"),
			tanked("UAN-28", neverBack, onLiquids, thirds+"120 min of clean water", drowned)},
		saying{inject, feedOf("UAN-28", "6 h", "20 min", "30 min"), tanked("UAN-28", neverBack, onLiquids, thirds, drowned)},
		saying{inject, feedOf("UAN-28", "6 h", "19.9 min", "29.9 min"),
			tanked("UAN-28", neverBack, onLiquids, shortFlush+"29.9 min.", shortClean+"19.9 min.", thirds, drowned)},
		saying{inject, feedOf("UAN-28", "6 h", "120 min", "121 min"),
			tanked("UAN-28", neverBack, onLiquids, longFlush, thirds, drowned)},
		saying{inject, feedOf("UAN-28", "90 min", "30 min", "30 min"),
			tanked("UAN-28", neverBack, onLiquids, thirds+"30 min", drowned)},
		saying{inject, feedOf("UAN-28", "89 min", "30 min", "30 min"),
			tanked("UAN-28", neverBack, onLiquids, shortTime, longFlush, thirds, drowned)},
		saying{inject, feedOf("UAN-32", "6 h", "2 h", "2 h"), tanked("UAN-32", neverBack, onLiquids, thirds, drowned)},
		// 100 lb N in 99 and in 100 gallons a minute for 2 hours: 1,008 and 998.5 ppm.
		saying{inject, feedOf("UAN-32", "6 h", "2 h", "2 h", "flow=99 gpm"),
			tanked("UAN-32", neverBack, onLiquids, "NOTICE The nitrogen in the line, 1,009 ppm", thirds, drowned)},
		saying{inject, feedOf("UAN-32", "6 h", "2 h", "2 h", "flow=100 gpm"),
			tanked("UAN-32", neverBack, onLiquids, thirds, drowned)},
		saying{inject, feedOf("CAN-17", "6 h", "2 h", "2 h"), tanked("CAN-17", neverBack, onLiquids, thirds, drowned)},
		saying{inject, feedOf("20-0-0", "6 h", "2 h", "2 h"), tanked("20-0-0", neverBack, thirds, drowned)},
		saying{inject, feedOf("12-0-0-26S", "6 h", "2 h", "2 h"), tanked("12-0-0-26S", neverBack, thirds, drowned)},
		saying{inject, feedOf("15-0-0-16S", "6 h", "2 h", "2 h", "density=12.8 lb/gal"),
			tanked("15-0-0-16S", neverBack, thirds, drowned)},
		saying{inject, feedOf("10-34-0", "6 h", "2 h", "2 h"), tanked("10-34-0", neverBack, thirds, drowned)},
		saying{inject, feedOf("46-0-0", "6 h", "2 h", "2 h", "density=9.5 lb/gal", "analysis=23 % N"),
			tanked("46-0-0", neverBack, thirds, drowned)},
	)
}

// What is injected in the window at that rate is the volume, and the line carries just the feed's nitrogen past.
func TestInjectionPutsOnTheFeed(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.Injection)
		v := func(name string) float64 { return o.Value(name).Value }
		alike(t, "rate × window", v("rate")*v("window"), v("volume"))
		alike(t, "gallons × weight × strength", v("volume")*v("gallon")*v("strength")/100, v("nitrogen")*v("acres"))
		closeBy(t, "the parts of the run", v("window")+(v("clean")+v("flush"))/60, v("run"),
			map[string]float64{"clean": values["clean"] / 60, "flush": values["flush"] / 60, "run": values["run"]})
		if !o.There("concentration") {
			continue
		}
		passed := v("concentration") * 1e-6 * 8.345404452 * v("flow") * 60 * v("window")
		alike(t, "nitrogen past the meter", passed, v("nitrogen")*v("acres"))
	}
}

// A block's gallons are those of an acre, as the material's own sheet has them, times the acres.
func TestInjectionAgreesWithTheAmount(t *testing.T) {
	for _, material := range []string{"UAN-32", "CAN-17", "20-0-0", "12-0-0-26S"} {
		acre := enter(t, nitrogen.MaterialAmount, "nitrogen=5 lb N/ac", "material="+material).Value("volume").Value
		block := enter(t, nitrogen.Injection, feedOf(material, "6 h", "2 h", "2 h")...).Value("volume").Value
		alike(t, material, 20*acre, block)
	}
}

func TestInjectionsThatAreRefused(t *testing.T) {
	inject := nitrogen.Injection
	refusedWith(t, inject, feedOf("UAN-32", "3 h", "2 h", "1 h"),
		"The flush does not fit in the run: 120 min of clean water and 60 min of flush leave less than 5 minutes of 3 h to "+
			"inject in. Run the water longer, or take less clean water before the feed.")
	refusedWith(t, inject, feedOf("46-0-0", "6 h", "2 h", "2 h"),
		"This material is dry, and an injector takes a liquid. Choose a liquid, such as UAN-32. If you dissolved it, put "+
			"in the weight of a gallon and the nitrogen of the solution.")
	refusedWith(t, inject, feedOf("15-0-0-16S", "6 h", "2 h", "2 h"),
		"No published weight of a gallon is at hand for this liquid. Put in the weight of a gallon from the delivery ticket.")
	refusedWith(t, inject, feedOf("82-0-0", "6 h", "2 h", "2 h"),
		"82-0-0 is a gas under pressure, and it does not go through an injector. Choose a material that is a liquid.")
}

func TestInjectionOfARange(t *testing.T) {
	o := enter(t, nitrogen.Injection, "nitrogen=4 to 6 lb N/ac", "acres=20 ac", "material=UAN-32", "run=6 to 7 h",
		"clean=2 h", "flush=2 h")
	low, high := 80/0.32/11.06, 120/0.32/11.06
	if got := o.Range("volume"); math.Abs(got.Low-low) > 1e-9 || math.Abs(got.High-high) > 1e-9 {
		t.Errorf("the volume is %v to %v, want %v to %v", got.Low, got.High, low, high)
	}
	if got := o.Range("rate"); math.Abs(got.Low-low/3) > 1e-9 || math.Abs(got.High-high/2) > 1e-9 {
		t.Errorf("the rate is %v to %v, want %v to %v", got.Low, got.High, low/3, high/2)
	}
}
