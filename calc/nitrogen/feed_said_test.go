package nitrogen_test

import (
	"slices"
	"testing"

	"acreleaf/calc/nitrogen"
)

const (
	growth  = "Common practice: wait with the first feed until there are 6 in"
	offBark = "Spread dry material over the wetted ground"
)

func init() {
	feed := nitrogen.FeedSchedule
	situations = append(situations,
		situation{feed, feedsOf("30", "1", "UAN-32")},
		situation{feed, feedsOf("50", "2", "21-0-0-24S")},
	)
	sayings = append(sayings,
		saying{feed, feedsOf("30", "1", "UAN-28"), []string{growth}},
		saying{feed, feedsOf("30", "1", "UAN-32"), []string{"NOTICE The weight of a gallon, 11.1 lb product/gal,", growth}},
		saying{feed, feedsOf("30", "1", "12-0-0-26S"), []string{"NOTICE Sources put a gallon", growth}},
		saying{feed, feedsOf("30", "1", "20-0-0"), []string{"DANGER Ammonia gas burns", growth}},
		saying{feed, feedsOf("30", "1", "15-0-0-16S", "density=12.7 lb/gal"),
			[]string{"DANGER Urea-sulfuric acid burns", growth}},
		saying{feed, feedsOf("30", "1", "46-0-0"), []string{growth, offBark}},
		saying{feed, feedsOf("30", "1", "UAN-28", "cap=1 oz N/tree"), []string{growth}},
		saying{feed, feedsOf("30", "1", "UAN-28", "cap=1.5 oz N/tree"),
			[]string{"CAUTION Each feed of 1.45 oz N/tree is over 1 oz N/tree,", growth}},
		saying{feed, feedsOf("30", "2", "UAN-28", "cap=1.5 oz N/tree"), []string{growth}},
		saying{feed, feedsOf("13.75", "1", "UAN-28", "cap=1.05 oz N/tree"),
			[]string{"CAUTION You set 1.05 oz N/tree as the most in one feed, and 1 oz N/tree is the most", growth}},
		saying{feed, feedsOf("30", "1", "UAN-28", "last=2027-05-24"),
			[]string{"NOTICE These feeds are only 9.75 days apart.", growth}},
		saying{feed, feedsOf("30", "1", "UAN-28", "last=2027-05-25"), []string{growth}},
		saying{feed, feedsOf("55", "1", "UAN-28"), []string{growth}},
		saying{feed, feedsOf("55.1", "1", "UAN-28"),
			[]string{"There are 9 feeds, and only the first eight are listed. Go on every 11.4 days; the last", growth}},
		saying{feed, feedsOf("0", "1", "UAN-28"), []string{"There is no nitrogen to feed"}},
		saying{feed, feedsOf("0", "1", "46-0-0"), []string{"There is no nitrogen to feed"}},
		saying{feed, feedsOf("5", "1", "UAN-28"), []string{"One feed is enough. It is set for Apr 15, 2027;", growth}},
		saying{feed, feedsOf("5", "1", "UAN-28", "last=2027-04-15"), []string{growth}},
		saying{feed, feedsOf("30", "5", "UAN-28", "last=2027-04-15"), []string{growth}},
		saying{feed, feedsOf("30", "6", "UAN-28", "last=2027-04-15"), []string{"The limit for one feed is printed", growth}},
	)
}

func TestWorkOfTheFeeds(t *testing.T) {
	o := work(t, nitrogen.FeedSchedule, write(t, nitrogen.FeedSchedule, feedsOf("30", "1", "UAN-32")...))
	want := []string{
		"strength = figure for the material = 32 % N of product",
		"gallon = figure for the material = 11.1 lb product/gal",
		"season = nitrogen × 16 oz/lb ÷ trees = 30 lb N/ac × 16 oz/lb ÷ 110 trees/ac = 4.36 oz N/tree",
		"usual = leaf × 1 oz N/tree = 1 × 1 oz N/tree = 1 oz N/tree",
		"limit = usual = 1 oz N/tree",
		"parts = season ÷ limit = 4.36 oz N/tree ÷ 1 oz N/tree = 4.36",
		"feeds = rounded up: (parts − 0.000000000001) = rounded up: (4.36 − 0.000000000001) = 5",
		"each = season ÷ feeds = 4.36 oz N/tree ÷ 5 = 0.873 oz N/tree",
		"each acre = nitrogen ÷ feeds = 30 lb N/ac ÷ 5 = 6 lb N/ac",
		"product = each acre ÷ strength = 6 lb N/ac ÷ 32 % N of product = 18.8 lb product/ac",
		"volume = product ÷ gallon = 18.8 lb product/ac ÷ 11.1 lb product/gal = 1.7 gal/ac",
		"span = last − first = Jul 15, 2027 − Apr 15, 2027 = 91 days",
		"gaps = feeds − 1 = 5 − 1 = 4",
		"every = span ÷ gaps = 91 days ÷ 4 = 22.8 days",
		"date 1 = first = Apr 15, 2027",
		"date 2 = first + (rounded up: (span ÷ gaps)) = Apr 15, 2027 + (rounded up: (91 days ÷ 4)) = May 8, 2027",
		"date 3 = first + (rounded up: (span × 2 ÷ gaps)) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 2 ÷ 4)) = May 31, 2027",
		"date 4 = first + (rounded up: (span × 3 ÷ gaps)) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 3 ÷ 4)) = Jun 23, 2027",
		"date 5 = first + (rounded up: (span × 4 ÷ gaps)) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 4 ÷ 4)) = Jul 15, 2027",
	}
	if got := o.Work(); !slices.Equal(got, want) {
		t.Errorf("the work is %q,\nwant %q", got, want)
	}
}
