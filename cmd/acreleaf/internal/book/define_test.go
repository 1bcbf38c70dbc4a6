package book

import (
	"math"
	"math/big"
	"os"
	"testing"
	"testing/fstest"

	"acreleaf/calc/sheet"
	"acreleaf/cmd/acreleaf/internal/message"
)

// exact is a product and quotient of whole numbers and decimals, exactly: the first over the second.
func exact(t *testing.T, over, under []string) float64 {
	t.Helper()
	v := big.NewRat(1, 1)
	for i, list := range [][]string{over, under} {
		for _, text := range list {
			n, ok := new(big.Rat).SetString(text)
			if !ok {
				t.Fatal(text)
			}
			if i == 1 {
				n.Inv(n)
			}
			v.Mul(v, n)
		}
	}
	f, _ := v.Float64()
	return f
}

// The calculations of the demo guide, against the formulas that are printed for them:
//   - gallons an acre are 5940 × gal/min ÷ (mi/h × in): UF/IFAS Extension Marion County, 2017. The 5940 is
//     43,560 ft2/ac × 12 in/ft × 60 min/h ÷ 5,280 ft/mi (NIST Handbook 44, Appendix C);
//   - an acre-inch is 43,560 × 144 ÷ 231 gallons, 27,154 of them (the same; Truckee-Carson Irrigation District);
//   - potassium is 2 × 39.098 in 2 × 39.098 + 15.999 parts of K2O (IUPAC abridged weights). The guide writes 0.83015.
func TestDemoCalculationsGiveThePrintedNumbers(t *testing.T) {
	catalogue, messages := Catalogue(Options{Content: os.DirFS("../../../../content"), Name: "content"})
	if messages != nil {
		t.Fatal(messages)
	}
	type values = map[string]float64
	const rounding = 1e-15 // a few operations, each rounded
	for _, c := range []struct {
		calculation, answer string
		given               values
		over, under         []string
		within              float64
	}{
		{"sprayer-rate", "rate", values{"flow": 0.4, "ground-speed": 5, "spacing": 20},
			[]string{"5940", "0.4"}, []string{"5", "20"}, rounding},
		{"sprayer-rate", "rate", values{"flow": 0.23, "ground-speed": 3.7, "spacing": 30},
			[]string{"43560", "12", "60", "0.23"}, []string{"5280", "3.7", "30"}, rounding},
		{"potash-product", "product", values{"potash": 120, "analysis": 50, "area": 12},
			[]string{"120", "100"}, []string{"50"}, rounding},
		{"potash-product", "load", values{"potash": 145, "analysis": 62, "area": 7.5},
			[]string{"145", "100", "7.5"}, []string{"62"}, rounding},
		{"potash-product", "potassium", values{"potash": 120, "analysis": 50, "area": 12},
			[]string{"120", "78.196"}, []string{"94.195"}, 1e-6},
		{"pump-time", "time", values{"area": 12, "depth": 0.5, "flow": 450, "reaching": 85},
			[]string{"12", "0.5", "43560", "144", "100"}, []string{"450", "60", "231", "85"}, rounding},
		{"pump-time", "time", values{"area": 10, "depth": 1, "flow": 452.571, "reaching": 100},
			[]string{"10", "27154.286"}, []string{"452.571", "60"}, 1e-6},
	} {
		s := catalogue.Find(c.calculation)
		if s == nil {
			t.Fatalf("there is no %s in %q", c.calculation, catalogue.Names())
		}
		o, err := s.Evaluate(c.given)
		if err != nil {
			t.Fatal(err)
		}
		want := exact(t, c.over, c.under)
		if got := o.Value(c.answer).Value; math.Abs(got-want) > c.within*want {
			t.Errorf("%s %v: %s is %v, want %v", c.calculation, c.given, c.answer, got, want)
		}
	}
	longer, err := catalogue.Find("pump-time").Evaluate(values{"area": 100, "depth": 1, "flow": 450, "reaching": 85})
	if said := longer.Said(); err != nil || len(said) != 1 || said[0].Signal != sheet.Notice {
		t.Errorf("pumping for %v says %v, %v", longer.Value("time"), said, err)
	}
}

// Whoever asks for a calculation hears of what is wrong with calculations, and of nothing else in the folder.
func TestCatalogueTellsOfCalculationsOnly(t *testing.T) {
	const good = "title: T\nsummary: S.\ngivens:\n  a: {label: A, example: 1 in, range: 0 to 2}\nwork: b = a * 2\n" +
		"answers:\n  b: {label: B, unit: in}\n"
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	content := fstest.MapFS{
		"calculations/good.yaml":      file(good),
		"calculations/deep/also.yaml": file(good),
		"calculations/bad.yaml":       file("title: T\n"),
		"guides/page.md":              file("no metadata, [a link](nowhere.md)\n\n```calculation here\n" + good + "```\n"),
		"guides/faulty.md":            file("```calculation worse\ntitle: T\n```\n\n```worksheet\n```\n"),
		"guides/plain.md":             file("```worksheet\n```\n"),
		"guides/unreadable.md":        file("```calculation\n\x00"),
	}
	catalogue, messages := Catalogue(Options{Content: content, Name: "c"})
	for _, name := range []string{"good", "also", "here"} {
		if catalogue.Find(name) == nil {
			t.Errorf("%s is not there", name)
		}
	}
	for _, name := range []string{"bad", "worse"} {
		if catalogue.Find(name) != nil || !catalogue.Faulty(name) {
			t.Errorf("%s is not faulty", name)
		}
	}
	if !message.HasFault(messages) {
		t.Error("there is no message about the calculations with a fault")
	}
	for _, m := range messages {
		if name := m.Source.Name; name != "c/calculations/bad.yaml" && name != "c/guides/faulty.md" ||
			m.ID == "block-name-missing" {
			t.Errorf("%s: %s: %s", name, m.ID, m.Text)
		}
	}
}
