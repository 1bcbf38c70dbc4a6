package nitrogen_test

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"acreleaf/calc/nitrogen"
	"acreleaf/calc/sheet"
)

// feedsOf is a season of 110 trees an acre from April 15 to July 15, with what else there is.
func feedsOf(pounds, leaf, material string, more ...string) []string {
	givens := append([]string{"nitrogen=" + pounds + " lb N/ac fed", "trees=110 trees/ac", "leaf=" + leaf,
		"material=" + material}, more...)
	for _, day := range []string{"first=2027-04-15", "last=2027-07-15"} {
		name := day[:len("last=")]
		if !slices.ContainsFunc(more, func(g string) bool { return g[:min(len(g), len(name))] == name }) {
			givens = append(givens, day)
		}
	}
	return givens
}

func fed(t testing.TB, givens ...string) sheet.Outcome {
	t.Helper()
	return work(t, nitrogen.FeedSchedule, write(t, nitrogen.FeedSchedule, givens...))
}

// walked are the days of n feeds, found by walking the calendar: on each day the feed that comes next is given if the
// part of the season that has gone by is at least its part of the feeds.
func walked(first, last time.Time, n int) []string {
	var days []string
	whole := int64(last.Sub(first).Hours()) / 24
	gone := int64(0)
	for day := first; !day.After(last); day = day.AddDate(0, 0, 1) {
		due := n == 1 || whole == 0 || big.NewRat(gone, whole).Cmp(big.NewRat(int64(len(days)), int64(n-1))) >= 0
		if due && len(days) < n {
			days = append(days, day.Format("Jan 2, 2006"))
		}
		gone++
	}
	return days
}

// fewest is the fewest feeds that leave none over the cap, tried one after the other in exact fractions.
func fewest(values map[string]float64) int {
	exact := func(v float64) *big.Rat { return new(big.Rat).SetFloat64(v) }
	limit := min(values["leaf"], 5)
	if given, stated := values["cap"]; stated {
		limit = given
	}
	season := exact(values["nitrogen"])
	season.Mul(season, big.NewRat(16, 1))
	season.Quo(season, exact(values["trees"]))
	room := big.NewRat(1, 1_000_000_000_000)
	for n := 0; ; n++ {
		most := exact(float64(n))
		most.Mul(most.Add(most, room), exact(limit))
		if season.Cmp(most) <= 0 {
			return n
		}
	}
}

func TestScheduleIsThatOfAWalkThroughTheCalendar(t *testing.T) {
	r := random(t)
	counts := map[int]int{}
	epoch := time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)
	for range 2 * draws {
		values, o := drawTaken(t, r, nitrogen.FeedSchedule)
		n := fewest(values)
		counts[min(n, 9)]++
		if got := o.Value("feeds").Value; got != float64(n) {
			t.Fatalf("%v takes %v feeds, want %d", values, got, n)
		}
		first, last := epoch.AddDate(0, 0, int(values["first"])), epoch.AddDate(0, 0, int(values["last"]))
		days := walked(first, last, n)
		if len(days) != n || n > 1 && days[n-1] != last.Format("Jan 2, 2006") {
			t.Fatalf("the walk from %v to %v gives %d feeds on %q", first, last, n, days)
		}
		for i := range 8 {
			name := fmt.Sprintf("date-%d", i+1)
			if o.There(name) != (i < n) || i < n && o.Text(name) != days[i] {
				t.Fatalf("%v: %s is %s (there: %v), the walk has %q", values, name, o.Text(name), o.There(name), days)
			}
		}
		closeBy(t, "all feeds together", o.Value("each-acre").Value*float64(n), values["nitrogen"]*min(1, float64(n)), values)
	}
	for n := range 10 {
		if n > 0 && counts[n] < 5 {
			t.Errorf("%d feeds came up %d times in %d only", n, counts[n], 2*draws)
		}
	}
}

// No feed is over the cap but for a part in a million million, and one feed fewer would be.
func TestNoFeedIsOverTheCap(t *testing.T) {
	r := random(t)
	for range draws {
		values, o := drawTaken(t, r, nitrogen.FeedSchedule)
		n, each, limit := o.Value("feeds").Value, o.Value("each").Value, o.Value("limit").Value
		if each > limit*(1+1.001e-12) {
			t.Errorf("%v: a feed is %v, over %v", values, each, limit)
		}
		if n > 1 && each*n/(n-1) <= limit {
			t.Errorf("%v: %v feeds, and one fewer would do", values, n)
		}
		for _, less := range []map[string]float64{
			with(values, "nitrogen", values["nitrogen"]*r.Float64()), with(values, "trees", values["trees"]*(1+r.Float64())),
			with(values, "cap", limit*(1+r.Float64())),
		} {
			if fewer, err := nitrogen.FeedSchedule.Evaluate(less); err == nil && fewer.Value("feeds").Value > n {
				t.Errorf("%v takes %v feeds, and %v takes more", values, n, less)
			}
		}
		above := values["cap"] > min(values["leaf"], 5)
		for _, said := range o.Said() {
			if strings.Contains(said.Text, "the most for this leaf") && !above {
				t.Errorf("%v brings %q, and no cap was set above the usual", values, said.Text)
			}
		}
	}
}

// Whole feeds of the cap are counted whole however their pounds were rounded, and a real excess is never hidden.
func TestWholeFeedsStayWhole(t *testing.T) {
	r := random(t)
	var rounded int
	for range 20 * draws {
		k := float64(1 + r.IntN(40))
		most, trees := 0.05+3*r.Float64(), 20+300*r.Float64()
		pounds := k * most * trees / 16
		count := func(pounds float64) float64 {
			return work(t, nitrogen.FeedSchedule, map[string]float64{"nitrogen": pounds, "trees": trees, "leaf": 3,
				"cap": most, "first": 20923, "last": 21014, "material": 0}).Value("feeds").Value
		}
		if pounds > 490 {
			continue
		}
		if pounds*16/trees/most > k {
			rounded++
		}
		if got := count(pounds); got != k {
			t.Fatalf("%v lb on %v trees at %v oz is %v feeds, want %v", pounds, trees, most, got, k)
		}
		if got := count(pounds * (1 + 1e-11)); got != k+1 {
			t.Fatalf("a little more than %v lb on %v trees at %v oz is %v feeds, want %v", pounds, trees, most, got, k+1)
		}
	}
	if rounded < draws/10 {
		t.Errorf("only %d of %d seasons were rounded up, so the room for it was hardly tried", rounded, 20*draws)
	}
	four := fed(t, feedsOf("27.5", "1", "UAN-32")...)
	if got := four.Text("feeds"); got != "4" {
		t.Errorf("4 oz in feeds of 1 oz are %s feeds", got)
	}
}

func TestFeedsByHand(t *testing.T) {
	// Common practice: six feeds of a 4 oz season are 0.667 oz each.
	six := fed(t, feedsOf("27.5", "1", "46-0-0", "cap=0.7 oz N/tree fed")...)
	for name, want := range map[string]string{"feeds": "6", "each": "0.667 oz N/tree fed", "each-acre": "4.58 lb N/ac fed",
		"product": "9.96 lb product/ac", "every": "19 days", "date-1": "Apr 15, 2027", "date-6": "Jul 15, 2027"} {
		if got := six.Text(name); got != want {
			t.Errorf("six feeds: %s is %s, want %s", name, got, want)
		}
	}
	if six.There("volume") || six.There("date-7") {
		t.Error("dry material has gallons, or six feeds have a seventh day")
	}
	// 30 lb on 110 trees is 4.364 oz: five feeds, 6 lb each, 18.75 lb of UAN-32 at 11.06 lb a gallon.
	five := fed(t, feedsOf("30", "1", "UAN-32")...)
	for name, want := range map[string]string{"feeds": "5", "each-acre": "6 lb N/ac fed", "product": "18.8 lb product/ac",
		"volume": "1.7 gal/ac", "every": "23 days", "date-2": "May 8, 2027", "date-5": "Jul 15, 2027"} {
		if got := five.Text(name); got != want {
			t.Errorf("five feeds: %s is %s, want %s", name, got, want)
		}
	}
	slips, err := nitrogen.FeedSchedule.SlipValues(entered(t, nitrogen.FeedSchedule, feedsOf("30", "1", "UAN-32")...))
	if err != nil {
		t.Fatal(err)
	}
	season := 30 * 16.0 / 110 // 4.36 oz, of a season's limit of 4 oz in first leaf
	for name, want := range map[string]float64{
		"rounded-down": 4, "not-rounded": season, "pounds-for-ounces": 1,
		"acre-for-tree": 30, "all-at-once": season, "limit-for-share": 1, "tree-pounds": season / 5 / 16,
		"season-limit": 2, "season-an-acre": 30, "ounces-an-acre": 96, "nitrogen-for-product": 6, "season-of-product": 93.75,
		"pounds-for-gallons": 18.75, "feeds-for-gaps": 91.0 / 5} {
		alike(t, name, slips[name], want)
	}
	if len(slips) != 14 {
		t.Errorf("there are %d slips, and 14 are worked by hand", len(slips))
	}
}

// Common practice: at most 1 oz in one feed for a tree in first leaf, 2 in second. A first-leaf need of 3 to 4 oz is
// then 3 or 4 feeds, and 2 in second leaf.
func TestCapOfTheFirstTwoLeaves(t *testing.T) {
	for _, c := range []struct{ leaf, limit, feeds string }{
		{"1", "1 oz N/tree fed", "3 to 4"}, {"2", "2 oz N/tree fed", "2"},
	} {
		o := enter(t, nitrogen.FeedSchedule, feedsOf("20.625 to 27.5", c.leaf, "UAN-32")...)
		if o.Text("season") != "3 to 4 oz N/tree fed" || o.Text("limit") != c.limit || o.Text("feeds") != c.feeds {
			t.Errorf("leaf %s: %s at %s is %s feeds, want %s at %s", c.leaf, o.Text("season"), o.Text("limit"),
				o.Text("feeds"), c.feeds, c.limit)
		}
	}
}

// A need that is a range is fed in a range of feeds, and what lies between its ends lies between the answers'.
func TestFeedsOfARange(t *testing.T) {
	o := enter(t, nitrogen.FeedSchedule, feedsOf("25 to 35", "1", "UAN-32")...)
	if got := o.Text("feeds"); got != "4 to 6" {
		t.Errorf("25 to 35 lb take %s feeds, want 4 to 6", got)
	}
	each, least, greatest := o.Range("each"), math.Inf(1), 0.0
	for i := range 2_001 {
		values := write(t, nitrogen.FeedSchedule, feedsOf(decimal(25+float64(i)/200), "1", "UAN-32")...)
		one := work(t, nitrogen.FeedSchedule, values).Value("each").Value
		least, greatest = min(least, one), max(greatest, one)
	}
	if math.Abs(each.Low-least) > 0.005 || math.Abs(each.High-greatest) > 0.005 {
		t.Errorf("each feed is %v, tried one by one %v to %v", each, least, greatest)
	}
	if o.There("date-7") || !o.There("date-6") {
		t.Error("up to six feeds have up to six days")
	}
}

// What is left to apply may be nothing at one end of its range: then there may be no feed.
func TestFeedsOfARangeFromNothing(t *testing.T) {
	o := enter(t, nitrogen.FeedSchedule, feedsOf("0 to 27.5", "1", "UAN-32")...)
	for name, want := range map[string]string{"feeds": "0 to 4", "each": "0 to 1 oz N/tree fed",
		"each-acre": "0 to 6.88 lb N/ac fed", "date-4": "Jul 15, 2027"} {
		if got := o.Text(name); got != want {
			t.Errorf("%s is %s, want %s", name, got, want)
		}
	}
	if err := o.Err(); err != nil {
		t.Error(err)
	}
}

func TestSeasonsThatCanNotBeAreRefused(t *testing.T) {
	whole := "Leaf is one whole number, from 1: the first season of growth is 1, the next is 2. Write that number."
	for _, c := range []struct {
		givens []string
		want   []string
	}{
		{feedsOf("30", "0", "UAN-32"), []string{whole}},
		{feedsOf("30", "1.5", "UAN-32"), []string{whole}},
		{feedsOf("30", "1", "82-0-0"), []string{
			"82-0-0 is a gas under pressure. It is not for small feeds of young trees, and it does not go through drip lines. " +
				"Choose a liquid or a dry material."}},
		{feedsOf("30", "1", "UAN-32", "last=2027-04-14"), []string{
			"The last feed, Apr 14, 2027, is before the first, Apr 15, 2027. Change one of the two days."}},
		{feedsOf("30", "1", "UAN-32", "last=2028-07-15"), []string{
			"From Apr 15, 2027 to Jul 15, 2028 is more than a year. Check the years: this is for one season."}},
		{feedsOf("30", "1", "UAN-32", "last=2027-04-18"), []string{
			"5 feeds do not fit between Apr 15, 2027 and Apr 18, 2027: that is more than one a day. Feed over more days, " +
				"or put on less nitrogen."}},
	} {
		_, err := nitrogen.FeedSchedule.Evaluate(write(t, nitrogen.FeedSchedule, c.givens...))
		var refused *sheet.Refused
		if !errors.As(err, &refused) || !slices.Equal(refused.Sentences, c.want) {
			t.Errorf("%v: %v, want %q", c.givens, err, c.want)
		}
	}
	// Five feeds on five days just fit.
	o := fed(t, feedsOf("30", "1", "UAN-32", "last=2027-04-19")...)
	if got := o.Text("date-5"); got != "Apr 19, 2027" {
		t.Errorf("the last of five feeds on five days is on %s", got)
	}
}
