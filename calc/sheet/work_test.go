package sheet_test

import (
	"fmt"
	"html"
	"regexp"
	"strings"
	"testing"

	"acreleaf/calc/sheet"
)

// A print is a formula over a (12 ft), b (3 ft), n (0.5) and c ($2/lb), and how its one line of work must read.
type print struct {
	name    string
	unit    string
	formula func(s *sheet.Sheet, a, b, n, c *sheet.Given) sheet.Value
	words   string
	symbols string // MathML, without what is around the formula, and without the rows that hold numbers to units
	numbers string
}

var prints = []print{
	{"a sum of sums", "ft", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return a.Plus(b).Minus(b.Plus(a))
	},
		"answer = a + b − (b + a) = 12 ft + 3 ft − (3 ft + 12 ft) = 0 ft",
		`<mi>a</mi><mo>+</mo><mi>b</mi><mo>−</mo><mo>(</mo><mi>b</mi><mo>+</mo><mi>a</mi><mo>)</mo>`,
		`<mn>12</mn><mtext> ft</mtext><mo>+</mo><mn>3</mn><mtext> ft</mtext><mo>−</mo>` +
			`<mo>(</mo><mn>3</mn><mtext> ft</mtext><mo>+</mo><mn>12</mn><mtext> ft</mtext><mo>)</mo>` +
			`<mo>=</mo><mn>0</mn><mtext> ft</mtext>`},
	{"a difference first", "ft", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Minus(b).Plus(a) },
		"answer = a − b + a = 12 ft − 3 ft + 12 ft = 21 ft",
		`<mi>a</mi><mo>−</mo><mi>b</mi><mo>+</mo><mi>a</mi>`,
		`<mn>12</mn><mtext> ft</mtext><mo>−</mo><mn>3</mn><mtext> ft</mtext><mo>+</mo><mn>12</mn><mtext> ft</mtext>` +
			`<mo>=</mo><mn>21</mn><mtext> ft</mtext>`},
	{"a name alone", "ft", func(_ *sheet.Sheet, a, _, _, _ *sheet.Given) sheet.Value { return a },
		"answer = a = 12 ft", `<mi>a</mi>`, `<mn>12</mn><mtext> ft</mtext>`},
	{"a sum with a product", "ft", func(_ *sheet.Sheet, a, b, n, _ *sheet.Given) sheet.Value { return a.Plus(b.Times(n)) },
		"answer = a + b × n = 12 ft + 3 ft × 0.5 = 13.5 ft",
		`<mi>a</mi><mo>+</mo><mi>b</mi><mo>×</mo><mi>n</mi>`,
		`<mn>12</mn><mtext> ft</mtext><mo>+</mo><mn>3</mn><mtext> ft</mtext><mo>×</mo><mn>0.5</mn>` +
			`<mo>=</mo><mn>13.5</mn><mtext> ft</mtext>`},
	{"nothing of another unit", "ft", func(s *sheet.Sheet, a, _, _, _ *sheet.Given) sheet.Value {
		return a.Most(s.Zero("in"))
	},
		"answer = the larger of a and 0 ft = the larger of 12 ft and 0 ft = 12 ft",
		`<mtext>the larger of </mtext><mi>a</mi><mtext> and </mtext><mn>0</mn><mtext> ft</mtext>`,
		`<mtext>the larger of </mtext><mn>12</mn><mtext> ft</mtext><mtext> and </mtext><mn>0</mn><mtext> ft</mtext>` +
			`<mo>=</mo><mn>12</mn><mtext> ft</mtext>`},
	{"a power of less than nothing", "", func(s *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value {
		return s.Number(-2).Power(2).Times(n)
	},
		"answer = (-2) to the power 2 × n = (-2) to the power 2 × 0.5 = 2",
		`<msup><mrow><mo>(</mo><mn>-2</mn><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mi>n</mi>`,
		`<msup><mrow><mo>(</mo><mn>-2</mn><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mn>0.5</mn><mo>=</mo><mn>2</mn>`},
	{"a power of a figure", "ft2", func(s *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value {
		return s.Constant("side", "2 ft", known).Power(2).Times(n)
	},
		"answer = (2 ft) to the power 2 × n = (2 ft) to the power 2 × 0.5 = 2 ft2",
		`<msup><mrow><mo>(</mo><mn>2</mn><mtext> ft</mtext><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mi>n</mi>`,
		`<msup><mrow><mo>(</mo><mn>2</mn><mtext> ft</mtext><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mn>0.5</mn>` +
			`<mo>=</mo><mn>2</mn><mtext> ft2</mtext>`},
	{"a power of a saying", "", func(s *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value {
		fact := known
		fact.Reads = "two of a kind"
		return s.Constant("two", "2", fact).Power(2).Times(n)
	},
		"answer = (two of a kind) to the power 2 × n = (two of a kind) to the power 2 × 0.5 = 2",
		`<msup><mrow><mo>(</mo><mn>two of a kind</mn><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mi>n</mi>`,
		`<msup><mrow><mo>(</mo><mn>two of a kind</mn><mo>)</mo></mrow><mn>2</mn></msup><mo>×</mo><mn>0.5</mn>` +
			`<mo>=</mo><mn>2</mn>`},
	{"a power of a root", "", func(s *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value {
		return s.Number(4).SquareRoot().Power(3).Times(n)
	},
		"answer = (√4) to the power 3 × n = (√4) to the power 3 × 0.5 = 4",
		`<msup><mrow><mo>(</mo><msqrt><mn>4</mn></msqrt><mo>)</mo></mrow><mn>3</mn></msup><mo>×</mo><mi>n</mi>`,
		`<msup><mrow><mo>(</mo><msqrt><mn>4</mn></msqrt><mo>)</mo></mrow><mn>3</mn></msup><mo>×</mo><mn>0.5</mn>` +
			`<mo>=</mo><mn>4</mn>`},
	{"a product of sums", "ft2", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return a.Plus(b).Times(a.Minus(b))
	},
		"answer = (a + b) × (a − b) = (12 ft + 3 ft) × (12 ft − 3 ft) = 135 ft2",
		`<mo>(</mo><mi>a</mi><mo>+</mo><mi>b</mi><mo>)</mo><mo>×</mo><mo>(</mo><mi>a</mi><mo>−</mo><mi>b</mi><mo>)</mo>`,
		`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>+</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo><mo>×</mo>` +
			`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>−</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo>` +
			`<mo>=</mo><mn>135</mn><mtext> ft2</mtext>`},
	{"a sum of products", "ft2", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return a.Times(a).Minus(a.Times(b))
	},
		"answer = a × a − a × b = 12 ft × 12 ft − 12 ft × 3 ft = 108 ft2",
		`<mi>a</mi><mo>×</mo><mi>a</mi><mo>−</mo><mi>a</mi><mo>×</mo><mi>b</mi>`,
		`<mn>12</mn><mtext> ft</mtext><mo>×</mo><mn>12</mn><mtext> ft</mtext><mo>−</mo>` +
			`<mn>12</mn><mtext> ft</mtext><mo>×</mo><mn>3</mn><mtext> ft</mtext><mo>=</mo><mn>108</mn><mtext> ft2</mtext>`},
	{"a quotient of a product", "", func(_ *sheet.Sheet, a, b, n, _ *sheet.Given) sheet.Value {
		return a.Over(b.Times(n))
	},
		"answer = a ÷ (b × n) = 12 ft ÷ (3 ft × 0.5) = 8",
		`<mi>a</mi><mo>÷</mo><mo>(</mo><mi>b</mi><mo>×</mo><mi>n</mi><mo>)</mo>`,
		`<mn>12</mn><mtext> ft</mtext><mo>÷</mo>` +
			`<mo>(</mo><mn>3</mn><mtext> ft</mtext><mo>×</mo><mn>0.5</mn><mo>)</mo><mo>=</mo><mn>8</mn>`},
	{"a quotient of quotients", "", func(_ *sheet.Sheet, a, b, n, _ *sheet.Given) sheet.Value {
		return a.Over(b).Over(a.Over(b))
	},
		"answer = a ÷ b ÷ (a ÷ b) = 12 ft ÷ 3 ft ÷ (12 ft ÷ 3 ft) = 1",
		`<mi>a</mi><mo>÷</mo><mi>b</mi><mo>÷</mo><mo>(</mo><mi>a</mi><mo>÷</mo><mi>b</mi><mo>)</mo>`,
		`<mn>12</mn><mtext> ft</mtext><mo>÷</mo><mn>3</mn><mtext> ft</mtext><mo>÷</mo>` +
			`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>÷</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo>` +
			`<mo>=</mo><mn>1</mn>`},
	{"a power of a name", "ft2", func(_ *sheet.Sheet, a, _, _, _ *sheet.Given) sheet.Value { return a.Power(2) },
		"answer = a to the power 2 = (12 ft) to the power 2 = 144 ft2",
		`<msup><mrow><mi>a</mi></mrow><mn>2</mn></msup>`,
		`<msup><mrow><mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>)</mo></mrow><mn>2</mn></msup>` +
			`<mo>=</mo><mn>144</mn><mtext> ft2</mtext>`},
	{"a power of a fraction", "", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Over(b).Power(3) },
		"answer = (a ÷ b) to the power 3 = (12 ft ÷ 3 ft) to the power 3 = 64",
		`<msup><mrow><mo>(</mo><mi>a</mi><mo>÷</mo><mi>b</mi><mo>)</mo></mrow><mn>3</mn></msup>`,
		`<msup><mrow><mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>÷</mo>` +
			`<mn>3</mn><mtext> ft</mtext><mo>)</mo></mrow><mn>3</mn></msup><mo>=</mo><mn>64</mn>`},
	{"a power in a product", "ft3", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return b.Times(a.Power(2))
	},
		"answer = b × a to the power 2 = 3 ft × (12 ft) to the power 2 = 432 ft3",
		`<mi>b</mi><mo>×</mo><msup><mrow><mi>a</mi></mrow><mn>2</mn></msup>`,
		`<mn>3</mn><mtext> ft</mtext><mo>×</mo><msup><mrow><mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>)</mo></mrow>` +
			`<mn>2</mn></msup><mo>=</mo><mn>432</mn><mtext> ft3</mtext>`},
	{"a root", "ft", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Times(b).SquareRoot() },
		"answer = √(a × b) = √(12 ft × 3 ft) = 6 ft",
		`<msqrt><mi>a</mi><mo>×</mo><mi>b</mi></msqrt>`,
		`<msqrt><mn>12</mn><mtext> ft</mtext><mo>×</mo><mn>3</mn><mtext> ft</mtext></msqrt>` +
			`<mo>=</mo><mn>6</mn><mtext> ft</mtext>`},
	{"a root of a figure", "", func(s *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value {
		return s.Number(9).SquareRoot().Times(n)
	},
		"answer = √9 × n = √9 × 0.5 = 1.5",
		`<msqrt><mn>9</mn></msqrt><mo>×</mo><mi>n</mi>`,
		`<msqrt><mn>9</mn></msqrt><mo>×</mo><mn>0.5</mn><mo>=</mo><mn>1.5</mn>`},
	{"the larger of sums", "ft", func(s *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return s.Zero("ft").Most(a.Minus(b)).Plus(b)
	},
		"answer = (the larger of 0 ft and (a − b)) + b = (the larger of 0 ft and (12 ft − 3 ft)) + 3 ft = 12 ft",
		`<mo>(</mo><mtext>the larger of </mtext><mn>0</mn><mtext> ft</mtext><mtext> and </mtext>` +
			`<mo>(</mo><mi>a</mi><mo>−</mo><mi>b</mi><mo>)</mo><mo>)</mo><mo>+</mo><mi>b</mi>`,
		`<mo>(</mo><mtext>the larger of </mtext><mn>0</mn><mtext> ft</mtext><mtext> and </mtext>` +
			`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>−</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo><mo>)</mo><mo>+</mo>` +
			`<mn>3</mn><mtext> ft</mtext><mo>=</mo><mn>12</mn><mtext> ft</mtext>`},
	{"the smaller alone", "ft", func(s *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Least(b) },
		"answer = the smaller of a and b = the smaller of 12 ft and 3 ft = 3 ft",
		`<mtext>the smaller of </mtext><mi>a</mi><mtext> and </mtext><mi>b</mi>`,
		`<mtext>the smaller of </mtext><mn>12</mn><mtext> ft</mtext><mtext> and </mtext>` +
			`<mn>3</mn><mtext> ft</mtext><mo>=</mo><mn>3</mn><mtext> ft</mtext>`},
	{"a quotient of rounded parts", "", func(s *sheet.Sheet, a, b, n, _ *sheet.Given) sheet.Value {
		return n.RoundDown().Over(a.Over(b).RoundDown())
	},
		"answer = (rounded down: n) ÷ (rounded down: (a ÷ b)) = (rounded down: 0.5) ÷ (rounded down: (12 ft ÷ 3 ft)) = 0",
		`<mo>(</mo><mtext>rounded down: </mtext><mi>n</mi><mo>)</mo><mo>÷</mo>` +
			`<mo>(</mo><mtext>rounded down: </mtext><mo>(</mo><mi>a</mi><mo>÷</mo><mi>b</mi><mo>)</mo><mo>)</mo>`,
		`<mo>(</mo><mtext>rounded down: </mtext><mn>0.5</mn><mo>)</mo><mo>÷</mo>` +
			`<mo>(</mo><mtext>rounded down: </mtext><mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>÷</mo>` +
			`<mn>3</mn><mtext> ft</mtext><mo>)</mo><mo>)</mo><mo>=</mo><mn>0</mn>`},
	{"rounded up", "", func(_ *sheet.Sheet, a, b, n, _ *sheet.Given) sheet.Value { return n.RoundUp() },
		"answer = rounded up: n = rounded up: 0.5 = 1",
		`<mtext>rounded up: </mtext><mi>n</mi>`,
		`<mtext>rounded up: </mtext><mn>0.5</mn><mo>=</mo><mn>1</mn>`},
	{"an angle", "", func(_ *sheet.Sheet, _, _, n, _ *sheet.Given) sheet.Value { return n.Arccosine() },
		"answer = arccos n = arccos 0.5 = 1.05",
		`<mtext>arccos </mtext><mi>n</mi>`,
		`<mtext>arccos </mtext><mn>0.5</mn><mo>=</mo><mn>1.05</mn>`},
	{"a conversion", "in", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Plus(b) },
		"answer = (a + b) × 12 = (12 ft + 3 ft) × 12 = 180 in",
		`<mo>(</mo><mi>a</mi><mo>+</mo><mi>b</mi><mo>)</mo><mo>×</mo><mn>12</mn>`,
		`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>+</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo><mo>×</mo>` +
			`<mn>12</mn><mo>=</mo><mn>180</mn><mtext> in</mtext>`},
	{"a conversion that divides", "yd", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Minus(b) },
		"answer = (a − b) ÷ 3 = (12 ft − 3 ft) ÷ 3 = 3 yd",
		`<mo>(</mo><mi>a</mi><mo>−</mo><mi>b</mi><mo>)</mo><mo>÷</mo><mn>3</mn>`,
		`<mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>−</mo><mn>3</mn><mtext> ft</mtext><mo>)</mo><mo>÷</mo>` +
			`<mn>3</mn><mo>=</mo><mn>3</mn><mtext> yd</mtext>`},
	{"a conversion to six digits", "ac", func(_ *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value { return a.Times(b) },
		"answer = a × b ÷ 43,560 = 12 ft × 3 ft ÷ 43,560 = 0.000826 ac",
		`<mi>a</mi><mo>×</mo><mi>b</mi><mo>÷</mo><mn>43,560</mn>`,
		`<mn>12</mn><mtext> ft</mtext><mo>×</mo><mn>3</mn><mtext> ft</mtext><mo>÷</mo><mn>43,560</mn>` +
			`<mo>=</mo><mn>0.000826</mn><mtext> ac</mtext>`},
	{"a conversion by millions", "in2", func(s *sheet.Sheet, a, b, _, _ *sheet.Given) sheet.Value {
		return s.Number(1).Times(s.Constant("block", "2 ac", known))
	},
		"answer = 1 × 2 ac × 6,272,640 = 12,545,280 in2",
		`<mn>1</mn><mo>×</mo><mn>2</mn><mtext> ac</mtext><mo>×</mo><mn>6,272,640</mn>`,
		`<mn>1</mn><mo>×</mo><mn>2</mn><mtext> ac</mtext><mo>×</mo><mn>6,272,640</mn>` +
			`<mo>=</mo><mn>12,545,280</mn><mtext> in2</mtext>`},
	{"a conversion that the unit says itself", "km", func(s *sheet.Sheet, a, _, _, _ *sheet.Given) sheet.Value {
		return a.In("m").Size()
	},
		"answer = the size of (a × 0.3048) = the size of (12 ft × 0.3048) = 0.00366 km",
		`<mtext>the size of </mtext><mo>(</mo><mi>a</mi><mo>×</mo><mn>0.3048</mn><mo>)</mo>`,
		`<mtext>the size of </mtext><mo>(</mo><mn>12</mn><mtext> ft</mtext><mo>×</mo><mn>0.3048</mn><mo>)</mo>` +
			`<mo>=</mo><mn>0.00366</mn><mtext> km</mtext>`},
	{"money to the ton", "$/ton", func(_ *sheet.Sheet, _, _, _, c *sheet.Given) sheet.Value { return c },
		"answer = c × 2,000 = $2/lb × 2,000 = $4,000/ton",
		`<mi>c</mi><mo>×</mo><mn>2,000</mn>`,
		`<mtext>$</mtext><mn>2</mn><mtext>/lb</mtext><mo>×</mo><mn>2,000</mn>` +
			`<mo>=</mo><mtext>$</mtext><mn>4,000</mn><mtext>/ton</mtext>`},
}

// one is the one sheet that a print is of.
func (p print) one(s *sheet.Sheet) {
	a, b := s.Given("a", "ft", number), s.Given("b", "ft", number)
	n, c := s.Given("n", "", number), s.Given("c", "$/lb", number)
	s.Answer("answer", p.unit, p.formula(s, a, b, n, c), sheet.Says{Label: "Answer"})
}

const mathOpen = `<math><mrow>`

func TestWorkIsPrintedAsItIsWorked(t *testing.T) {
	for _, p := range prints {
		t.Run(p.name, func(t *testing.T) {
			o, err := build(t, "print", p.one).Evaluate(map[string]float64{"a": 12, "b": 3, "n": 0.5, "c": 2})
			if err != nil {
				t.Fatal(err)
			}
			line := o.Lines(nil)[0]
			same(t, "words", line.Words(), p.words)
			same(t, "symbols", line.Symbols, mathOpen+`<mi>answer</mi><mo>=</mo>`+p.symbols+`</mrow></math>`)
			same(t, "numbers", line.Numbers[0], mathOpen+`<mo>=</mo>`+p.numbers+`</mrow></math>`)
		})
	}
}

// quantityRow is the row around a number and its unit, which keeps the two on one line.
var quantityRow = regexp.MustCompile(
	`<mrow>((?:<mtext>[^<]*</mtext>)?<mn[^>]*>[^<]*</mn>(?:<mtext>[^<]*</mtext>)?)</mrow>`)

func same(t testing.TB, what, got, want string) {
	t.Helper()
	got = strings.NewReplacer("&nbsp;", " ", ` stretchy="false"`, "").Replace(got)
	got = quantityRow.ReplaceAllString(got, "$1")
	if got != want {
		t.Errorf("%s:\n got  %s\n want %s", what, got, want)
	}
}

// A page puts other values where the numbers stand, so each number of a given, step or answer carries its mark, in the
// order of the formula, and a figure that never changes carries none.
func TestNumbersAreMarkedWithTheirCells(t *testing.T) {
	s := build(t, "marked", func(s *sheet.Sheet) {
		nitrate := s.Given("nitrate", "ppm NO3-N", number)
		depth := s.Given("depth", "in", number)
		layers := s.Step("layers", "", depth.Over(s.Constant("slice", "6 in", known)), sheet.Says{})
		s.Answer("sum", "ppm NO3-N", nitrate.Times(layers), sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"nitrate": 12, "depth": 18})
	if err != nil {
		t.Fatal(err)
	}
	lines := o.Lines(func(cell int) string { return fmt.Sprintf(` id="c%d"`, cell) })
	number := regexp.MustCompile(`<mn( id="c\d+")?>([^<]*)</mn>`)
	for i, want := range [][]string{{"depth", "", "layers"}, {"nitrate", "layers", "sum"}} {
		found := number.FindAllStringSubmatch(lines[i].Numbers[0], -1)
		if len(found) != len(want) {
			t.Fatalf("%d numbers in %s", len(found), lines[i].Numbers[0])
		}
		for k, name := range want {
			mark, text := "", "6"
			if name != "" {
				cell, _ := o.Use.Cell(name)
				mark = fmt.Sprintf(` id="c%d"`, cell)
				text = strings.Fields(o.Value(name).String())[0]
			}
			if found[k][1] != mark || found[k][2] != text {
				t.Errorf("number %d of %s is %q, want%s %s", k, lines[i].Words(), found[k][0], mark, text)
			}
		}
	}
}

// A line of the work may end between two parts of a formula, but not between a number and its unit.
func TestANumberAndItsUnitStayTogether(t *testing.T) {
	s := build(t, "marked", func(s *sheet.Sheet) {
		n, price := s.Given("n", "lb", number), s.Given("price", "$/lb", number)
		s.Answer("cost", "$", price.Times(n), sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"n": 2, "price": 3})
	if err != nil {
		t.Fatal(err)
	}
	want := `<math><mrow><mo>=</mo><mrow><mtext>$</mtext><mn>3</mn><mtext>/lb</mtext></mrow>` +
		`<mo>×</mo><mrow><mn>2</mn><mtext>&nbsp;lb</mtext></mrow>` +
		`<mo>=</mo><mrow><mtext>$</mtext><mn>6</mn></mrow></mrow></math>`
	if got := o.Lines(nil)[0].Numbers[0]; got != want {
		t.Errorf("\n got  %s\n want %s", got, want)
	}
}

// A constant may read as the trade says it, and what it reads is text, never markup.
func TestConstantsReadAsTheTradeSaysThem(t *testing.T) {
	s := build(t, "rule", func(s *sheet.Sheet) {
		fact := known
		fact.Reads = `<2 lb & "a bit">`
		rule := s.Constant("rule", "2 lb N/ac per ppm NO3-N", fact)
		s.Answer("nitrogen", "lb N/ac", s.Given("nitrate", "ppm NO3-N", number).Times(rule), sheet.Says{})
	})
	o, err := s.Evaluate(map[string]float64{"nitrate": 12})
	if err != nil {
		t.Fatal(err)
	}
	line := o.Lines(nil)[0]
	same(t, "words", line.Words(),
		`nitrogen = nitrate × <2 lb & "a bit"> = 12 ppm NO3-N × <2 lb & "a bit"> = 24 lb N/ac`)
	escaped := `<mn>` + html.EscapeString(`<2 lb & "a bit">`) + `</mn>`
	if !strings.Contains(line.Symbols, escaped) || !strings.Contains(line.Numbers[0], escaped) {
		t.Errorf("the constant is not escaped: %s %s", line.Symbols, line.Numbers[0])
	}
}
