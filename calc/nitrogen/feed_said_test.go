package nitrogen_test

import (
	"slices"
	"strings"
	"testing"

	"acreleaf/calc/nitrogen"
)

const (
	growth    = "Common practice: do not start feeding until there are 8 to 12 in"
	ripen     = "Stop early enough for the wood to ripen before frost."
	offBark   = "Spread dry material over the wetted ground"
	nearTrunk = "NOTICE Dry material burns near the trunk."
	drowned   = "Do not feed or water a waterlogged root zone."
	onYoung   = "NOTICE Liquid UAN and CAN-17 burned many first-leaf trees,"
	drips     = "NOTICE Any liquid feed is strong where it drips, and a first-leaf tree has few roots."
	wholeYear = "For almonds the University of California advises 1 oz a tree for the whole first season."
)

// olderSaid is feedSaid of trees that were planted a year ago or earlier.
func olderSaid(first ...string) []string { return append(first, ripen, drowned) }

// feedSaid adds what every schedule with a feed in it says at its end.
func feedSaid(first ...string) []string { return append(first, growth, drowned) }

func init() {
	feed := nitrogen.FeedSchedule
	situations = append(situations,
		situation{feed, feedsOf("20", "1", "46-0-0")},
		situation{feed, feedsOf("50", "2", "21-0-0-24S")},
	)
	tooMuch := "NOTICE For a whole season 4.36 oz of nitrogen a tree is more than young trees are given:"
	sayings = append(sayings,
		saying{feed, feedsOf("6", "1", "UAN-28", "last=2027-04-15"), feedSaid(onYoung)},
		saying{feed, feedsOf("6", "1", "CAN-17", "last=2027-04-15"), feedSaid(onYoung)},
		saying{feed, feedsOf("6", "1", "UAN-32", "last=2027-04-15"),
			feedSaid(onYoung)},
		saying{feed, feedsOf("6", "2", "UAN-28", "last=2027-04-15"), olderSaid()},
		saying{feed, feedsOf("6", "1", "AN-20", "last=2027-04-15"), feedSaid(flames, drips)},
		saying{feed, feedsOf("6", "1", "12-0-0-26S", "last=2027-04-15"), feedSaid(drips)},
		saying{feed, feedsOf("6", "1", "20-0-0", "last=2027-04-15"), feedSaid("DANGER Ammonia gas burns", drips)},
		saying{feed, feedsOf("6", "1", "15-0-0-16S", "density=12.7 lb/gal", "last=2027-04-15"),
			feedSaid("DANGER Strong acid burns", drips)},
		saying{feed, feedsOf("6", "1", "46-0-0", "last=2027-04-15"), feedSaid(nearTrunk)},
		saying{feed, feedsOf("6", "1", "15-0-0-16S", "last=2027-04-15"), feedSaid("DANGER Strong acid burns", weigh, drips)},
		saying{feed, feedsOf("6", "2", "46-0-0", "last=2027-04-15"), []string{ripen, offBark, drowned}},

		// A season of a tree: 27.5 lb N/ac on 110 trees is 4 oz.
		saying{feed, feedsOf("6.875", "1", "AN-20", "last=2027-04-15"), feedSaid(flames, drips)},
		saying{feed, feedsOf("6.88", "1", "AN-20"), feedSaid(flames, wholeYear, drips)},
		saying{feed, feedsOf("27.5", "1", "AN-20"), feedSaid(flames, wholeYear, drips)},
		saying{feed, feedsOf("30", "1", "AN-20"), feedSaid(flames, tooMuch, drips)},
		saying{feed, feedsOf("55", "2", "AN-20"), olderSaid(flames)},
		saying{feed, feedsOf("55.1", "2", "AN-20"),
			olderSaid(flames, "NOTICE For a whole season 8.01 oz of nitrogen a tree is more than young trees are given:")},
		saying{feed, feedsOf("84", "3", "AN-20", "last=2027-08-14"),
			olderSaid(flames, "NOTICE For a whole season 12.2 oz of nitrogen a tree is more than young trees are given:")},
		saying{feed, feedsOf("100", "4", "AN-20", "last=2027-09-15"), olderSaid(flames)},
	)
}

func init() {
	feed := nitrogen.FeedSchedule
	sayings = append(sayings,
		// The most in one feed.
		saying{feed, feedsOf("27.5", "1", "AN-20", "cap=1 oz N/tree"), feedSaid(flames, wholeYear, drips)},
		saying{feed, feedsOf("27.5", "1", "AN-20", "cap=1.5 oz N/tree"),
			feedSaid(flames, "NOTICE Each feed of 1.33 oz of nitrogen a tree is over 1 oz,", wholeYear, drips)},
		saying{feed, feedsOf("27.5", "2", "AN-20", "cap=1.5 oz N/tree"), olderSaid(flames)},
		saying{feed, feedsOf("27.5", "1", "AN-20", "cap=5 oz N/tree"),
			feedSaid(flames, "NOTICE Each feed of 4 oz of nitrogen a tree is over 1 oz,", wholeYear, drips)},
		saying{feed, feedsOf("0", "1", "AN-20", "cap=5 oz N/tree"), []string{flames, drowned}},
		saying{feed, feedsOf("13.75", "1", "AN-20", "cap=1.05 oz N/tree"),
			feedSaid(flames, "NOTICE You set 1.05 oz of nitrogen a tree as the most in one feed, and 1 oz is the most",
				wholeYear, drips)},
		saying{feed, feedsOf("30", "5", "AN-20", "last=2027-04-15"), olderSaid(flames)},
		saying{feed, feedsOf("30", "6", "AN-20", "last=2027-04-15"),
			[]string{flames, "NOTICE The limit for one feed is printed", ripen, drowned}},

		// Days between feeds: 4 feeds of a young tree, 5 of an older one.
		saying{feed, feedsOf("27.5", "1", "AN-20", "last=2027-06-14"),
			feedSaid(flames, wholeYear, "NOTICE These feeds are only 20 days apart. Common practice for young trees", drips)},
		saying{feed, feedsOf("27.5", "1", "AN-20", "last=2027-06-15"), feedSaid(flames, wholeYear, drips)},
		saying{feed, feedsOf("130", "4", "AN-20", "last=2027-05-21"),
			olderSaid(flames, "NOTICE These feeds are only 9 days apart. Trees take one to two weeks")},
		saying{feed, feedsOf("130", "4", "AN-20", "last=2027-05-22"), olderSaid(flames)},

		// Feeds of bare trees.
		saying{feed, feedsOf("6", "1", "AN-20", "last=2027-10-31"),
			feedSaid(flames, drips, "One feed is enough. It is set for Apr 15, 2027.")},
		saying{feed, feedsOf("6", "1", "AN-20", "last=2027-11-02"),
			[]string{flames, drips, bare, "One feed is enough.", growth, drowned}},
		saying{feed, feedsOf("6", "1", "AN-20", "first=2027-02-27", "last=2027-02-27"),
			[]string{flames, drips, bare, growth, drowned}},
		saying{feed, feedsOf("6", "1", "AN-20", "first=2027-03-02", "last=2027-03-02"), feedSaid(flames, drips)},

		saying{feed, feedsOf("200", "4", "AN-20", "last=2027-09-25"), olderSaid(flames)},
		saying{feed, feedsOf("220.1", "4", "AN-20", "last=2027-09-25"), []string{flames,
			"There are 9 feeds, and only the first eight are listed. Go on every 21 days; the last", ripen, drowned}},
		saying{feed, feedsOf("0", "1", "UAN-28"), []string{drowned}},
		saying{feed, feedsOf("0", "1", "46-0-0", "last=2027-12-15"), []string{drowned}},
		saying{feed, feedsOf("5", "1", "AN-20"), []string{flames, drips, "One feed is enough. It is set for Apr 15, " +
			"2027;", growth, drowned}},
	)
}

func init() {
	feed := nitrogen.FeedSchedule
	sayings = append(sayings,
		// Late feeds: of young trees from the middle of August, of older ones from October; one feed is on the first day.
		saying{feed, feedsOf("6", "1", "AN-20", "last=2027-08-14"), feedSaid(flames, drips, anyDay)},
		saying{feed, feedsOf("6", "1", "AN-20", "last=2027-08-18"), feedSaid(flames, drips, oneIsEnough)},
		saying{feed, feedsOf("6", "3", "AN-20", "first=2027-08-14", "last=2027-08-14"), olderSaid(flames)},
		saying{feed, feedsOf("6", "3", "AN-20", "first=2027-08-18", "last=2027-08-18"), olderSaid(flames, lateYoung)},
		saying{feed, feedsOf("60", "3", "AN-20", "last=2027-08-14"), olderSaid(flames)},
		saying{feed, feedsOf("60", "3", "AN-20", "last=2027-08-18"), olderSaid(flames, lateYoung)},
		saying{feed, feedsOf("60", "4", "AN-20", "last=2027-09-29"), olderSaid(flames)},
		saying{feed, feedsOf("60", "4", "AN-20", "last=2027-10-03"), olderSaid(flames, late)},
		saying{feed, feedsOf("20", "4", "AN-20", "last=2027-09-29"), olderSaid(flames, anyDay)},
		saying{feed, feedsOf("20", "4", "AN-20", "last=2027-10-03"), olderSaid(flames, oneIsEnough)},
		saying{feed, feedsOf("20", "4", "AN-20", "last=2027-11-03"), []string{flames, bare, oneIsEnough, ripen, drowned}},
		saying{feed, feedsOf("20", "4", "AN-20", "first=2027-02-10", "last=2027-06-03"),
			[]string{flames, bare, oneIsEnough, ripen, drowned}},
	)
}

const (
	anyDay      = "One feed is enough. It is set for Apr 15, 2027; any day to"
	oneIsEnough = "One feed is enough. It is set for "
	lateYoung   = "NOTICE The last feed, Aug 18, 2027, is late for young trees north of the equator:"
	late        = "NOTICE The last feed, Oct 3, 2027, is late north of the equator:"
)

// No one is told that any day will do in a season that reaches into a time of which the same answer warns.
func TestNoDayOfABareTreeWillDo(t *testing.T) {
	r := random(t)
	for range draws {
		_, o := drawTaken(t, r, nitrogen.FeedSchedule)
		all := allSaid(o)
		if strings.Contains(all, "will do") && (strings.Contains(all, "bare") || strings.Contains(all, "late")) {
			t.Errorf("%q", all)
		}
	}
}

const bare = "NOTICE Some of this season lies between November and March."

func TestWorkOfTheFeeds(t *testing.T) {
	o := work(t, nitrogen.FeedSchedule, write(t, nitrogen.FeedSchedule, feedsOf("30", "1", "UAN-32")...))
	want := []string{
		"share of nitrogen = listed for this material = 32 % N of product",
		"weight of a gallon = listed for this material = 11.06 lb product/gal",
		"season of a tree = nitrogen × 16 oz/lb ÷ trees = 30 lb N/ac fed × 16 oz/lb ÷ 110 trees/ac = 4.36 oz N/tree fed",
		"most for this leaf = (the smaller of 5 and leaf) × 1 oz N/tree fed = (the smaller of 5 and 1) × 1 oz N/tree fed = " +
			"1 oz N/tree fed",
		"most in a feed = most for this leaf = 1 oz N/tree fed",
		"feeds = rounded up: (season of a tree ÷ most in a feed) = rounded up: (4.36 oz N/tree fed ÷ 1 oz N/tree fed) = 5",
		"each = season of a tree ÷ (the larger of feeds and 1) = 4.364 oz N/tree fed ÷ (the larger of 5 and 1) = " +
			"0.873 oz N/tree fed",
		"each acre = nitrogen ÷ (the larger of feeds and 1) = 30 lb N/ac fed ÷ (the larger of 5 and 1) = 6 lb N/ac fed",
		"product = each acre ÷ share of nitrogen = 6 lb N/ac fed ÷ 32 % N of product = 18.75 lb product/ac",
		"volume = product ÷ weight of a gallon = 18.75 lb product/ac ÷ 11.06 lb product/gal = 1.7 gal/ac",
		"days from first to last = last − first = Jul 15, 2027 − Apr 15, 2027 = 91 days",
		"every = rounded up: (days from first to last ÷ (feeds − 1)) = rounded up: (91 days ÷ (5 − 1)) = 23 days",
		"last date = last = Jul 15, 2027",
		"day of feed 1 = first = Apr 15, 2027",
		"day of feed 2 = first + (rounded up: (days from first to last ÷ (feeds − 1))) = " +
			"Apr 15, 2027 + (rounded up: (91 days ÷ (5 − 1))) = May 8, 2027",
		"day of feed 3 = first + (rounded up: (days from first to last × 2 ÷ (feeds − 1))) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 2 ÷ (5 − 1))) = May 31, 2027",
		"day of feed 4 = first + (rounded up: (days from first to last × 3 ÷ (feeds − 1))) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 3 ÷ (5 − 1))) = Jun 23, 2027",
		"day of feed 5 = first + (rounded up: (days from first to last × 4 ÷ (feeds − 1))) = " +
			"Apr 15, 2027 + (rounded up: (91 days × 4 ÷ (5 − 1))) = Jul 15, 2027",
	}
	if got := o.Work(); !slices.Equal(got, want) {
		t.Errorf("the work is %q,\nwant %q", got, want)
	}
}
