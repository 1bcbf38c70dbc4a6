package worksheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"acreleaf/calc"
	"acreleaf/cmd/acreleaf/internal/markdown"
	"acreleaf/cmd/acreleaf/internal/message"
)

const trialPage = "```worksheet tank\ncalculation: material-amount\nnitrogen: 30 lb N/ac\nmaterial: UAN-32\n```\n\n" +
	"```worksheet well\ncalculation: water-nitrogen\nnitrate: 5 ppm NO3-N\nwater: 8 in\n```\n\n"

// TestTry works passages at other numbers than the example's.
func TestTry(t *testing.T) {
	for passage, want := range map[string][]string{
		"- when: tank.material is 46-0-0\n  say: Dry.\n" +
			"- otherwise: Wet or dry.\n": nil,
		"- when: tank.volume > 0\n  say: Put on [8.48 gal/ac](worked:tank.volume).\n" +
			"- otherwise: It is dry.\n": nil,
		"- otherwise: Put on [8.48 gal/ac](worked:tank.volume).\n": {"1 of case 0 tank.volume"},
		"- when: well.nitrogen > \"9999 lb N/ac\"\n  say: Much.\n" +
			"- otherwise: Some.\n": {"0 of case 0"},
		"- when: well.nitrogen > \"100 lb N/ac\" and well.nitrogen < \"101 lb N/ac\"\n  say: Just so.\n" +
			"- otherwise: Else.\n": nil,
		"- when: well.water / well.nitrate > \"1 in/(ppm NO3-N of water)\"\n  say: Much.\n" +
			"- otherwise: Some.\n": {"3 of case 0"},
	} {
		doc, said := markdown.Parse(&message.Source{Text: []byte(trialPage + "```passage\n" + passage + "```\n")}, 0)
		page, bound := Bind(doc, calc.Standard(), "en")
		if len(said)+len(bound) > 0 || len(page.Passages) != 1 {
			t.Errorf("%s: %v %v", passage, said, bound)
			continue
		}
		tried := page.Try(page.Passages[0])
		var got []string
		for _, f := range tried.Findings {
			text := fmt.Sprintf("%d of case %d", f.Kind, f.Case)
			if f.Figure != nil {
				text += " " + f.Figure.Target
			}
			got = append(got, text)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %q, not %q", passage, got, want)
		}
		if again := page.Try(page.Passages[0]); fmt.Sprint(again) != fmt.Sprint(tried) {
			t.Errorf("%s: tried again, it finds other things", passage)
		}
	}
}

// TestTryOptions tells at which options each case held.
func TestTryOptions(t *testing.T) {
	passage := "- when: tank.material is 46-0-0 or tank.material is CAN-17\n  say: One.\n- otherwise: Two.\n"
	doc, _ := markdown.Parse(&message.Source{Text: []byte(trialPage + "```passage\n" + passage + "```\n")}, 0)
	page, _ := Bind(doc, calc.Standard(), "en")
	tried := page.Try(page.Passages[0])
	var first []string
	for name := range tried.Options[0]["tank.material"] {
		first = append(first, name)
	}
	slices.Sort(first)
	if got := strings.Join(first, " "); got != "46-0-0 CAN-17" {
		t.Errorf("the first case held at %s", got)
	}
	if others := tried.Options[1]["tank.material"]; len(others) < 10 || others["CAN-17"] {
		t.Errorf("the last case held at %v", others)
	}
}

func BenchmarkTry(b *testing.B) {
	passage := "- when: tank.material is 46-0-0\n  say: One.\n- otherwise: Put on [8.48 gal/ac](worked:tank.volume).\n"
	doc, _ := markdown.Parse(&message.Source{Text: []byte(trialPage + "```passage\n" + passage + "```\n")}, 0)
	page, _ := Bind(doc, calc.Standard(), "en")
	for b.Loop() {
		page.Try(page.Passages[0])
	}
}

// TestTryBesideOthers tries passages of one page together: each finds what it finds alone.
func TestTryBesideOthers(t *testing.T) {
	passages := []string{
		"- when: well.nitrogen > \"9999 lb N/ac\"\n  say: Much.\n- otherwise: Some.\n",
		"- otherwise: Put on [8.48 gal/ac](worked:tank.volume).\n",
		"- when: tank.material is 46-0-0\n  say: Dry.\n- otherwise: Of [9.06 lb N/ac](worked:well.nitrogen).\n",
	}
	try := func(texts ...string) (found []string) {
		page := trialPage
		for _, text := range texts {
			page += "```passage\n" + text + "```\n\n"
		}
		doc, _ := markdown.Parse(&message.Source{Text: []byte(page)}, 0)
		bound, said := Bind(doc, calc.Standard(), "en")
		if len(said) > 0 || len(bound.Passages) != len(texts) {
			t.Fatal(said)
		}
		for _, p := range bound.Passages {
			tried := bound.Try(p)
			for i := range tried.Findings {
				tried.Findings[i].Figure = nil // it is another of each page
			}
			found = append(found, fmt.Sprint(tried))
		}
		return found
	}
	var alone []string
	for _, text := range passages {
		alone = append(alone, try(text)...)
	}
	if together := try(passages...); !slices.Equal(together, alone) {
		t.Errorf("together %q\nalone %q", together, alone)
	}
}
