package nitrogen_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
)

func init() {
	signed["root-share.lens"] = true // a lens as thin as nothing, with the rounding of what it is worked from
	situations = append(situations,
		situation{nitrogen.RootShare, circlesOf("6", "2", "2")},
		situation{nitrogen.RootShare, circlesOf("4", "2.5", "1.5")},
	)
	sayings = append(sayings,
		saying{nitrogen.RootShare, circlesOf("6", "2", "6"), []string{"NOTICE No part of this feed", evenly}},
		saying{nitrogen.RootShare, circlesOf("6", "2", "5"), []string{"NOTICE No part of this feed", evenly}},
		saying{nitrogen.RootShare, circlesOf("6", "2", "4.9"), []string{"NOTICE Only 0.", evenly}},
		saying{nitrogen.RootShare, circlesOf("8", "2", "1"), []string{"NOTICE Only 25 % of this feed", evenly}},
		saying{nitrogen.RootShare, circlesOf("4", "4", "1"), []string{evenly}},
	)
	responses = append(responses,
		response{nitrogen.RootShare, "share", "root", 1},
		response{nitrogen.RootShare, "share", "offset", -1}, response{nitrogen.RootShare, "share", "rate", 0},
		response{nitrogen.RootShare, "effective", "rate", 1}, response{nitrogen.RootShare, "effective", "offset", -1},
	)
	scalings = append(scalings,
		scaling{nitrogen.RootShare, "share", 0, []string{"wetted", "root", "offset"}},
		scaling{nitrogen.RootShare, "effective", 1, []string{"rate"}},
	)
}

const evenly = "This assumes that the feed falls evenly over the wetted circle."

func circlesOf(wetted, root, offset string) []string {
	return []string{"wetted=" + wetted + " ft", "root=" + root + " ft", "offset=" + offset + " ft", "rate=0.8 oz N/tree"}
}

// shareOf works the share, from 0 to 1.
func shareOf(t testing.TB, wetted, root, offset float64) float64 {
	t.Helper()
	o := work(t, nitrogen.RootShare, map[string]float64{"wetted": wetted, "root": root, "offset": offset, "rate": 1})
	return o.Value("share").Value / 100
}

// overlapByChords is the area that two circles share, summed over chords across the line of their centers: at each
// place the shorter of the two chords. In the angle v, x = middle - half·cos v, the ends of the chords, where they
// shrink to nothing as a root, become smooth; so each piece between two kinks is left to Gauss's rule.
func overlapByChords(r, root, offset float64) float64 {
	from, to := math.Max(-r, offset-root), math.Min(r, offset+root)
	if from >= to {
		return 0
	}
	cuts := []float64{from, to}
	if offset > 0 { // where the two chords are the same
		if x := (offset + (r-root)*(r+root)/offset) / 2; x > from && x < to {
			cuts = []float64{from, x, to}
		}
	}
	var sum float64
	for i := 1; i < len(cuts); i++ {
		sum += piece(r, root, offset, cuts[i-1], cuts[i])
	}
	return sum
}

// piece integrates twice the shorter half chord from one place to another, over panels of v that halve toward both
// ends, since a chord may have its own end a hair outside.
func piece(r, root, offset, from, to float64) float64 {
	middle, half := (from+to)/2, (to-from)/2
	height := func(radius, x float64) float64 { return math.Sqrt(math.Max(0, (radius-x)*(radius+x))) }
	panel := func(low, high float64) float64 {
		var sum float64
		for i, node := range nodes {
			v := low + (high-low)*(1+node)/2
			x := middle - half*math.Cos(v)
			sum += weights[i] * (high - low) / 2 * 2 * math.Min(height(r, x), height(root, x-offset)) * half * math.Sin(v)
		}
		return sum
	}
	var sum float64
	for high := math.Pi / 2; high > 0; {
		low := high / 2
		if low < 1e-9 {
			low = 0
		}
		sum += panel(low, high) + panel(math.Pi-high, math.Pi-low)
		high = low
	}
	return sum
}

// nodes and weights are the rule of Gauss and Legendre with 16 points, found by Newton's steps on the polynomial.
var nodes, weights = gauss(16)

func gauss(n int) (nodes, weights []float64) {
	for i := range n {
		x := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var slope float64
		for range 20 {
			before, p := 1.0, x
			for k := 2; k <= n; k++ {
				before, p = p, (float64(2*k-1)*x*p-float64(k-1)*before)/float64(k)
			}
			slope = float64(n) * (x*p - before) / (x*x - 1)
			x -= p / slope
		}
		nodes, weights = append(nodes, x), append(weights, 2/((1-x*x)*slope*slope))
	}
	return nodes, weights
}

// circlesAtRandom draws two circles; a third of them touch from within or without, but for a hair.
func circlesAtRandom(r *rand.Rand) (wetted, root, offset float64) {
	wetted, root = 0.5+59.5*r.Float64()*r.Float64(), 0.25+39.75*r.Float64()*r.Float64()
	hair := math.Pow(10, -16*r.Float64()) * (2*r.Float64() - 1)
	switch r.IntN(6) {
	case 0:
		offset = wetted/2 + root + hair
	case 1:
		offset = math.Abs(wetted/2-root) + hair
	default:
		offset = (wetted/2 + root) * 1.1 * r.Float64()
	}
	return wetted, root, math.Min(60, math.Max(0, offset))
}

func TestShareIsThatOfTheChords(t *testing.T) {
	r := random(t)
	var crossed int
	var worst float64
	for range 4 * draws {
		wetted, root, offset := circlesAtRandom(r)
		got := shareOf(t, wetted, root, offset)
		want := overlapByChords(wetted/2, root, offset) / (math.Pi * wetted * wetted / 4)
		worst = math.Max(worst, math.Abs(got-want))
		if !(math.Abs(got-want) <= 1e-11) {
			t.Errorf("wetted %v, root %v, offset %v: the share is %v, by chords %v", wetted, root, offset, got, want)
		}
		if got > 0 && got < 1 {
			crossed++
		}
	}
	t.Logf("the farthest from the chords was %.2g", worst)
	if crossed < draws {
		t.Errorf("only %d of %d pairs of circles crossed", crossed, 4*draws)
	}
}

// The circles share the same ground whichever of them is called the wetted one.
func TestOverlapIsSymmetric(t *testing.T) {
	r := random(t)
	for range 2 * draws {
		wetted, root, offset := circlesAtRandom(r)
		if wetted/2 < 0.25 || wetted > 40 || root > 30 {
			continue
		}
		one := shareOf(t, wetted, root, offset) * wetted * wetted / 4
		other := shareOf(t, 2*root, wetted/2, offset) * root * root
		if math.Abs(one-other) > 1e-12*math.Max(wetted*wetted/4, root*root) {
			t.Errorf("wetted %v, root %v, offset %v: %v and %v", wetted, root, offset, one, other)
		}
	}
}

// Apart, one in the other, at one place, and touching: each is what it must be to the last bit.
func TestShareAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		wetted, root, offset, want float64
	}{
		{6, 2, 60, 0}, {6, 2, 5, 0}, // apart, and touching from without
		{6, 6, 3, 1}, {6, 6, 2, 1}, {6, 3, 0, 1}, // the wetted circle in the roots, touching them, and the same
		{8, 2, 0, 0.25}, {8, 2, 1, 0.25}, {8, 2, 2, 0.25}, // the roots in the wetted circle, and touching it
	} {
		if got := shareOf(t, c.wetted, c.root, c.offset); got != c.want {
			t.Errorf("wetted %v, root %v, offset %v: %v, want %v", c.wetted, c.root, c.offset, got, c.want)
		}
	}
	// Two like circles, a hair apart or one radius apart: 2π/3 - √3/2 of the square of the radius.
	for _, hair := range []float64{5e-324, 1e-300, 1e-17, 2e-16, 1e-15, 1e-12, 1e-9} {
		if got, want := shareOf(t, 6, 3, hair), 1-2*hair/(3*math.Pi); math.Abs(got-want) > 1e-15 {
			t.Errorf("like circles %v apart share %v, want %v", hair, got, want)
		}
	}
	alike(t, "like circles one radius apart", shareOf(t, 6, 3, 3), (2*math.Pi/3-math.Sqrt(3)/2)/math.Pi)
}

// Common practice: with a micro-sprinkler more than half of a feed falls outside the roots of a first-leaf tree, whose
// roots reach 6 in past a canopy two or three feet wide.
func TestMicroSprinklerMissesFirstLeafRoots(t *testing.T) {
	for _, wetted := range []string{"6 ft", "8 ft", "10 ft"} {
		for _, root := range []string{"18 in", "24 in"} {
			got := enter(t, nitrogen.RootShare, "wetted="+wetted, "root="+root, "offset=1 to 2 ft",
				"rate=0.8 oz N/tree").Range("share")
			if got.High >= 50 || got.Low < 1 {
				t.Errorf("a circle of %s wets roots of %s with %v of its water", wetted, root, got)
			}
		}
	}
	drip := answer(t, nitrogen.RootShare, "share", "%", "wetted=2 ft", "root=24 in", "offset=1 ft", "rate=0.8 oz N/tree")
	if drip != 100 {
		t.Errorf("a dripper a foot from the trunk has %v %% of its water in the roots", drip)
	}
}

func TestRootShareByHand(t *testing.T) {
	// Radii 3 and 2, 2 apart. Cosines at the emitter and the trunk: 9/12 and -1/8; kite √63/2.
	want := (9*math.Acos(0.75) + 4*math.Acos(-0.125) - math.Sqrt(63)/2) / (9 * math.Pi)
	alike(t, "3 and 2, 2 apart", shareOf(t, 6, 2, 2), want)
	slips, err := nitrogen.RootShare.SlipValues(entered(t, nitrogen.RootShare, circlesOf("6", "2", "2")...))
	if err != nil {
		t.Fatal(err)
	}
	for name, byHand := range map[string]float64{
		"widths-not-areas": 200.0 / 3, "emitter-at-trunk": 400.0 / 9, "width-for-radius": 100.0 / 9,
		"other-way-round": 100 * want * 9 / 4, "outside": 0.8 * (1 - want), "divided": 0.8 / want,
	} {
		alike(t, name, slips[name], byHand)
	}
}

// At just half, half is not lost and no more: the notice begins below it. The circles are equal, and so far apart that
// the lens they share is half of each.
func TestHalfAShareIsNotLessThanHalf(t *testing.T) {
	const offset = 3.2317820263961372
	for at, want := range map[float64]int{offset: 0, math.Nextafter(offset, 9) + 1e-9: 1} {
		o := work(t, nitrogen.RootShare, map[string]float64{"wetted": 8, "root": 4, "offset": at, "rate": 1})
		if want == 0 && o.Value("share").Value != 50 {
			t.Fatalf("the share is %v and not half", o.Value("share").Value)
		}
		said := 0
		for _, s := range o.Said() {
			if strings.HasPrefix(s.Text, "Only ") {
				said++
			}
		}
		if said != want {
			t.Errorf("%v ft apart: the notice is said %d times", at, said)
		}
	}
}
