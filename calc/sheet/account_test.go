package sheet_test

import (
	"math"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// put turns ounces a tree into pounds an acre: an account goes along with its nitrogen.
var put = sheet.New("put", func(s *sheet.Sheet) {
	rate := s.Given("rate", "oz N/tree fed", sheet.Field{Label: "Rate", Typical: 3, Low: 0, High: 40})
	trees := s.Given("trees", "trees/ac", sheet.Field{Label: "Trees", Typical: 110, Low: 1, High: 2000})
	s.Answer("nitrogen", "lb N/ac fed", rate.Times(trees), sheet.Says{Also: "kg N/ha fed"})
})

// grown is what trees take up.
var grown = sheet.New("grown", func(s *sheet.Sheet) {
	rate := s.Given("rate", "oz N/tree taken up", sheet.Field{Label: "Rate", Typical: 3, Low: 0, High: 40})
	trees := s.Given("trees", "trees/ac", sheet.Field{Label: "Trees", Typical: 110, Low: 1, High: 2000})
	s.Answer("nitrogen", "lb N/ac taken up", rate.Times(trees), sheet.Says{})
	s.Answer("bare", "lb N/ac", rate.Times(trees).Over(s.Constant("one", "1 taken up", known)), sheet.Says{})
})

// wanted takes a need in either account, and a share that makes one of the other.
var wanted = sheet.New("wanted", func(s *sheet.Sheet) {
	need := s.Given("need", "lb N/ac taken up", sheet.Field{
		Label: "Need", Typical: 30, Low: 0, High: 500,
		Else: sheet.Other{Unit: "lb N/ac fed", Low: 0, High: 100},
	})
	share := s.Given("share", "% taken up/fed", sheet.Field{
		Written: "%", Label: "Share", Typical: 70, Low: 10, High: 100,
	})
	credit := s.Given("credit", "lb N/ac fed", sheet.Field{Label: "Credit", Typical: 10, Low: 0, High: 500})
	fed := s.Step("fed-need", "lb N/ac fed", sheet.If(need.IsOther(), need.AsOther(), need.Over(share)), sheet.Says{})
	s.Answer("apply", "lb N/ac fed", fed.Minus(credit), sheet.Says{})
})

func TestAccountsGoAlongWithTheirNumbers(t *testing.T) {
	for _, c := range []struct{ need, credit, apply, work string }{
		{"35 lb N/ac taken up", "10 lb N/ac", "40 lb N/ac fed",
			"fed need = need ÷ share = 35 lb N/ac taken up ÷ 70 % = 50 lb N/ac fed"},
		{"35 lb N/ac fed", "10 lb N/ac fed", "25 lb N/ac fed", "fed need = need = 35 lb N/ac fed"},
	} {
		o := workedOut(t, wanted, "need="+c.need, "share=70 %", "credit="+c.credit)
		if got := o.Text("apply"); got != c.apply {
			t.Errorf("%s: %s, want %s", c.need, got, c.apply)
		}
		if got := o.Work()[0]; got != c.work {
			t.Errorf("%s: the work is %s, want %s", c.need, got, c.work)
		}
	}
}

func TestAccountsAreToldAndNoOtherIsTaken(t *testing.T) {
	for _, c := range []struct{ given, text, want string }{
		{"need", "35 lb N/ac", "35 lb N/ac does not say whether it is taken up or fed; " +
			"write 35 lb N/ac taken up or 35 lb N/ac fed"},
		{"need", "30 to 35 kg N/ha", "30 to 35 kg N/ha does not say whether it is taken up or fed; " +
			"write 30 to 35 kg N/ha taken up or 30 to 35 kg N/ha fed"},
		{"need", "101 lb N/ac fed", "101 lb N/ac fed is outside what this calculation takes: 0 to 100 lb N/ac fed"},
		{"credit", "10 lb N/ac present", "10 lb N/ac present is present; this needs fed (lb N/ac fed): " +
			"count what is in the soil as a credit instead; write for example 10 lb N/ac fed"},
		{"credit", "10 lb N/ac taken up", "10 lb N/ac taken up is taken up; this needs fed (lb N/ac fed): " +
			"divide it by the share of what is fed that the trees take up first; write for example 10 lb N/ac fed"},
		{"share", "70 % fed/taken up", "70 % fed/taken up is a share fed of what is taken up; " +
			"this needs a share taken up of what is fed (%); write for example 70 %"},
	} {
		if _, err := wanted.FindGiven(c.given).Read(c.text); err == nil || err.Error() != c.want {
			t.Errorf("%s says\n %v, want\n %s", c.text, err, c.want)
		}
	}
}

func TestALinkCarriesTheAccount(t *testing.T) {
	g := &sheet.Graph{}
	g.Add("put", put, nil)
	g.Add("grown", grown, nil)
	for _, c := range []struct{ given, from, name, want string }{
		{"credit", "put", "nitrogen", ""},
		{"need", "put", "nitrogen", ""},
		{"need", "grown", "nitrogen", ""},
		{"credit", "grown", "nitrogen", "grown.nitrogen is lb N/ac taken up; credit takes lb N/ac fed"},
		{"credit", "grown", "bare", `grown.bare is lb N/ac; credit takes lb N/ac fed; put "fed" at the end of its unit`},
		{"need", "grown", "bare", "grown.bare is lb N/ac; need takes lb N/ac taken up or lb N/ac fed; " +
			`put "taken up" or "fed" at the end of its unit`},
	} {
		err := g.CheckLink(wanted, c.given, sheet.Link{Use: c.from, Name: c.name})
		if c.want == "" && err != nil || c.want != "" && (err == nil || err.Error() != c.want) {
			t.Errorf("%s from %s.%s: %v, want %s", c.given, c.from, c.name, err, c.want)
		}
	}
	// No account word helps a link that fails for another reason.
	g.Add("block", field, nil)
	if err := g.CheckLink(wanted, "credit", sheet.Link{Use: "block", Name: "trees"}); err == nil ||
		err.Error() != "block.trees is trees/ac; credit takes lb N/ac fed" {
		t.Errorf("trees for a credit say %v", err)
	}
	g.Add("one", sheet.New("one", func(s *sheet.Sheet) { s.Answer("part", "", s.Number(0.5), sheet.Says{}) }), nil)
	if err := g.CheckLink(rate, "missing", sheet.Link{Use: "one", Name: "part"}); err == nil ||
		strings.Contains(err.Error(), "put") {
		t.Errorf("a plain number for a share in %% says %v", err)
	}
	plain := sheet.New("plain", func(s *sheet.Sheet) {
		s.Answer("twice", "lb N/ac", s.Given("once", "lb N/ac", sheet.Field{High: 9}).Times(s.Number(2)), sheet.Says{})
	})
	if err := g.CheckLink(plain, "once", sheet.Link{Use: "put", Name: "nitrogen"}); err == nil {
		t.Error("a given without an account took one: it could be added to another")
	}
}

// A linked given of two kinds is of the kind that its source is in.
func TestALinkedGivenOfTwoKinds(t *testing.T) {
	for _, c := range []struct {
		from    *sheet.Sheet
		apply   float64
		need    string
		outside float64
	}{{put, 27.5, "27.5 lb N/ac fed", 0}, {grown, 27.5 / 0.7, "27.5 lb N/ac taken up", 0}} {
		g := &sheet.Graph{}
		g.Add("from", c.from, nil)
		use := g.Add("to", wanted, links{"need": {Use: "from", Name: "nitrogen"}})
		closed(t, g)
		o := runGraph(g, map[string]map[string]float64{
			"from": {"rate": 4, "trees": 110}, "to": {"share": 70, "credit": 0},
		})("to")
		if got := o.Value("apply").Value; got != c.apply {
			t.Errorf("from %s: apply %v, want %v", c.from.Name, got, c.apply)
		}
		if got := o.Text("need"); got != c.need {
			t.Errorf("from %s: the need is %s, want %s", c.from.Name, got, c.need)
		}
		if cell, _ := use.Outside("need"); o.Cells[cell] != c.outside {
			t.Errorf("from %s: outside is %v", c.from.Name, o.Cells[cell])
		}
	}
}

func TestASheetMayNotMixAccounts(t *testing.T) {
	_, err := sheet.Build("mixed", func(s *sheet.Sheet) {
		put := s.Given("put", "lb N/ac fed", sheet.Field{High: 9})
		there := s.Given("there", "lb N/ac present", sheet.Field{High: 9})
		s.Answer("all", "lb N/ac fed", put.Plus(there), sheet.Says{})
	})
	want := `cannot add "there": it is mass of N on an area present, and mass of N on an area fed is needed`
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("it says %v, want %s", err, want)
	}
}

// Out of its account an amount stays as much as it was: a pound is 0.45359237 kg, and a hectare 2.47105381467 acres.
func TestAnAmountOutOfItsAccount(t *testing.T) {
	s := sheet.New("bare", func(s *sheet.Sheet) {
		put := s.Given("put", "lb N/ac fed", sheet.Field{Label: "Put", Typical: 10, High: 90})
		s.Answer("same", "lb N/ac", put.Uncounted("lb N/ac"), sheet.Says{})
		s.Answer("metric", "kg N/ha", put.Uncounted("kg N/ha"), sheet.Says{})
	})
	o := workedOut(t, s, "put=10 lb N/ac fed")
	want := 10 * 0.45359237 * 2.47105381467
	if same, metric := o.Value("same").Value, o.Value("metric").Value; same != 10 || math.Abs(metric-want) > 1e-9 {
		t.Errorf("10 lb N/ac fed is %v lb N/ac and %v kg N/ha, want 10 and %v", same, metric, want)
	}
	_, err := sheet.Build("odd", func(s *sheet.Sheet) {
		put := s.Given("put", "lb N/ac fed", sheet.Field{Label: "Put", Typical: 10, High: 90})
		s.Answer("depth", "in", put.Uncounted("in"), sheet.Says{})
	})
	if err == nil || !strings.Contains(err.Error(), `cannot take "put" out of its account as in: `) {
		t.Errorf("pounds as inches say %v", err)
	}
}
