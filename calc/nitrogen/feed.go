package nitrogen

import "acreleaf/calc/sheet"

// FeedSchedule splits a season's nitrogen into as few feeds as leave none over the cap, and lays them out evenly from
// the first day to the last.
//
// A feed may pass the cap by less than one part in a million million. Without that, 4 oz in feeds of 1 oz would now and
// then be 5 feeds: the last bit of a 4 that went through pounds an acre may be rounded up.
var FeedSchedule = sheet.New("feed-schedule", feedSchedule)

// datesShown is how many feeds have an answer for their day.
const datesShown = 8

func feedSchedule(s *sheet.Sheet) {
	f := feedGivens(s)
	t := fromLabel(s, materialGiven(s))
	f.share()
	f.some = f.parts.More(s.Number(grain))
	f.count = s.Answer("feeds", "", sheet.If(f.some, f.parts.RoundUpPast(grain), s.Number(0)), sheet.Says{})
	shares := f.count.Most(s.Number(1)) // of a range of feeds that starts at none, too, each can be worked
	f.each = s.Answer("each", "oz N/tree fed", sheet.If(f.some, f.season.Over(shares), s.Zero("oz N/tree fed")),
		sheet.Says{Also: "g N/tree fed"})
	f.above = s.Stated(f.cap).And(f.cap.More(f.usual))
	f.over = f.above.And(f.each.More(f.usual))
	f.acre = s.Answer("each-acre", "lb N/ac fed", sheet.If(f.some, f.nitrogen.Over(shares), s.Zero("lb N/ac fed")),
		sheet.Says{Also: "kg N/ha fed"})
	f.product = s.Answer("product", "lb product/ac", f.acre.Uncounted("lb N/ac").Over(t.strength),
		sheet.Says{Also: "kg product/ha"})
	s.Answer("volume", "gal/ac", f.product.Over(t.gallon), sheet.Says{Also: "L/ha", When: t.liquid})

	f.several = f.count.More(s.Number(1))
	f.span = s.Step("span", "days", f.last.Minus(f.first), sheet.Says{})
	f.gaps = f.count.Minus(s.Number(1))
	f.every = s.Answer("every", "days", f.span.Over(f.gaps).RoundUp(), sheet.Says{When: f.several})
	f.ends = s.Answer("last-date", "days", sheet.If(f.several, f.last, f.first), sheet.Says{
		Date: true, When: f.some,
	})
	for i, name := range [datesShown]string{
		"date-1", "date-2", "date-3", "date-4", "date-5", "date-6", "date-7", "date-8",
	} {
		s.Answer(name, "days", f.day(i), sheet.Says{Date: true, When: f.count.More(s.Number(float64(i)))})
	}

	s.InWords("feeds",
		sheet.When(f.some.Not(), "nothing"),
		sheet.When(f.over, "too-much"),
		sheet.When(f.several.Not(), "one-feed"),
		sheet.Otherwise("several"))

	careOfMaterials(s, t.has)
	t.noticeWeight()
	f.refuse()
	f.refuseGas(t)
	f.caution()
	f.burn(t)
	f.outOfLeaf()
	f.note(t.liquid.Not())
	f.slips()
}

// feedPlan is a schedule: what is given for it, and then what is worked.
type feedPlan struct {
	s                          *sheet.Sheet
	nitrogen, trees, leaf, cap *sheet.Given
	first, last                *sheet.Given

	season, usual, limit sheet.Term // oz a tree
	parts, count         sheet.Term // the season over the limit, and that in whole feeds
	each, acre, product  sheet.Term // what one feed holds
	span, gaps, every    sheet.Term
	ends                 sheet.Term // the day of the last feed
	unfit                sheet.Term // a question: whether the days reach into a time in which trees are bare or it is late
	some, several        sheet.Term // questions: whether there is a feed, and more than one
	above, over          sheet.Term // questions: whether the reader's own limit is over the usual one, and the feeds too
}

func feedGivens(s *sheet.Sheet) *feedPlan {
	f := &feedPlan{s: s}
	f.nitrogen = s.Given("nitrogen", "lb N/ac fed", sheet.Field{
		Typical: 30, Low: 0, High: 500, Units: []string{"kg N/ha fed"},
	})
	f.trees = treesGiven(s)
	f.leaf = s.Given("leaf", "", leafField(1))
	f.cap = s.Given("cap", "oz N/tree fed", sheet.Field{
		Typical: 0.8, Low: 0.05, High: 100, Units: []string{"g N/tree fed", "lb N/tree fed"}, Optional: true,
	})
	f.first = s.Given("first", "days", sheet.Field{
		Typical: 20923, Low: sheet.FirstDay, High: sheet.LastDay, Date: true,
	})
	f.last = s.Given("last", "days", sheet.Field{
		Typical: 21014, Low: sheet.FirstDay, High: sheet.LastDay, Date: true,
	})
	return f
}

// share works what a tree gets in the season, and how many of the largest feeds that is.
func (f *feedPlan) share() {
	s := f.s
	f.season = s.Step("season", "oz N/tree fed", f.nitrogen.Times(ouncesInPound(s)).Over(f.trees),
		sheet.Says{Also: "g N/tree fed"})
	f.usual = s.Step("usual", "oz N/tree fed", fedYears(s, f.leaf).Times(feedAYear(s)),
		sheet.Says{Also: "g N/tree fed"})
	f.limit = s.Step("limit", "oz N/tree fed", sheet.If(s.Stated(f.cap), f.cap, f.usual),
		sheet.Says{Also: "g N/tree fed"})
	f.parts = f.season.Over(f.limit)
}

// grain is what is too small to make another feed of. Numbers are rounded at their sixteenth digit.
const grain = 0.000000000001

// day is when the feed comes that has i before it: on the first whole day on which its turn has come, so that the last
// feed is on the last day. The days are multiplied before they are divided: whole numbers that divide evenly then leave
// no rounding.
func (f *feedPlan) day(i int) sheet.Term {
	switch i {
	case 0:
		return f.first.Term
	case 1:
		return f.first.Plus(f.span.Over(f.gaps).RoundUp())
	}
	return f.first.Plus(f.span.Times(f.s.Number(float64(i))).Over(f.gaps).RoundUp())
}
