package formula_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"acreleaf/calc/formula"
	"acreleaf/calc/sheet"
)

// A writer writes random formulas of plain numbers and lengths. It knows which a part is, and nothing of its value.
type writer struct {
	r     *rand.Rand
	atoms []string // what stands for a plain number
}

func newWriter(seed uint64, more ...string) writer {
	numbers := []string{"1", "2", "3", "7", "0.5", "2.25", ".75", "12", "1e2"}
	return writer{rand.New(rand.NewPCG(seed, seed)), append(numbers, more...)}
}

var inches = map[string]int64{"in": 1, "ft": 12, "yd": 36, "mi": 63360}

func (w writer) pick(list ...string) string { return list[w.r.IntN(len(list))] }

func (w writer) number() string { return w.pick(w.atoms...) }

func (w writer) plain(depth int) string {
	if depth == 0 {
		return w.number()
	}
	a, b := func() string { return w.plain(depth - 1) }, func() string { return w.plain(w.r.IntN(depth)) }
	switch w.r.IntN(9) {
	case 0:
		return fmt.Sprintf("%s %s %s", a(), w.pick("+", "-"), b())
	case 1, 2:
		return fmt.Sprintf("%s %s %s", a(), w.pick("*", "/", "+", "-"), b())
	case 3:
		return "(" + a() + ")" + w.pick("*", "/", "-") + "(" + b() + ")"
	case 4:
		return fmt.Sprintf("%s(%s, %s)", w.pick("min", "max"), a(), b())
	case 5:
		return fmt.Sprintf("pow(%s, %d)", b(), 2+w.r.IntN(2))
	case 6:
		return "size(" + a() + ")"
	case 7:
		return "-" + w.number() + w.pick("*", "+") + a()
	}
	return "((" + w.length(depth-1) + ") / (" + w.length(w.r.IntN(depth)) + "))"
}

func (w writer) length(depth int) string {
	if depth == 0 {
		return `"` + w.pick("1", "2", "5", "7.5") + ` ` + w.pick("in", "ft", "yd", "mi") + `"`
	}
	a, b := func() string { return w.length(depth - 1) }, func() string { return w.length(w.r.IntN(depth)) }
	switch w.r.IntN(5) {
	case 0, 1:
		return fmt.Sprintf("%s %s %s", a(), w.pick("+", "-"), b())
	case 2:
		return fmt.Sprintf("%s(%s, %s)", w.pick("min", "max"), a(), b())
	case 3:
		return "(" + a() + ") " + w.pick("*", "/") + " (" + w.plain(w.r.IntN(depth)) + ")"
	}
	return w.number() + " * (" + a() + ")"
}

// A sum is an exact value, in inches if it is a length, and a bound on how far rounding may take a float64 from it.
type sum struct {
	v   *big.Rat
	far float64
}

const rounding = 0x1p-51 // each operation, and a conversion with it

func (s sum) size() float64 { f, _ := s.v.Float64(); return math.Abs(f) }

func (s sum) rounded() sum { s.far += rounding * s.size(); return s }

// A reckoner works a formula exactly. It shares nothing with the package: it reads the text itself.
type reckoner struct {
	rest string
	bad  bool // a division by nothing, or by so little that rounding decides
}

func (k *reckoner) take(token string) bool {
	k.rest = strings.TrimLeft(k.rest, " ")
	rest, found := strings.CutPrefix(k.rest, token)
	k.rest = rest
	return found
}

func (k *reckoner) sum() sum {
	a := k.product()
	for {
		switch {
		case k.take("+"):
			b := k.product()
			a = sum{new(big.Rat).Add(a.v, b.v), a.far + b.far}.rounded()
		case k.take("-"):
			b := k.product()
			a = sum{new(big.Rat).Sub(a.v, b.v), a.far + b.far}.rounded()
		default:
			return a
		}
	}
}

func (k *reckoner) product() sum {
	a := k.atom()
	for {
		switch {
		case k.take("*"):
			a = times(a, k.atom())
		case k.take("/"):
			b := k.atom()
			if b.v.Sign() == 0 || b.far > 1e-3*b.size() {
				k.bad = true
				b.v = big.NewRat(1, 1)
			}
			q := sum{v: new(big.Rat).Quo(a.v, b.v)}
			q.far = (a.far + q.size()*b.far) / (b.size() * 0.9)
			a = q.rounded()
		default:
			return a
		}
	}
}

func times(a, b sum) sum {
	return sum{new(big.Rat).Mul(a.v, b.v), a.size()*b.far + b.size()*a.far + a.far*b.far}.rounded()
}

func (k *reckoner) atom() sum {
	switch {
	case k.take("-"):
		a := k.atom()
		return sum{new(big.Rat).Neg(a.v), a.far}
	case k.take("("):
		a := k.sum()
		k.take(")")
		return a
	case k.take(`"`):
		text, after, _ := strings.Cut(k.rest, `"`)
		k.rest = after
		number, unit, _ := strings.Cut(text, " ")
		v, _ := new(big.Rat).SetString(number)
		return sum{v: v.Mul(v, big.NewRat(inches[unit], 1))}
	}
	for _, call := range []string{"min(", "max(", "pow(", "size("} {
		if k.take(call) {
			return k.call(call)
		}
	}
	end := strings.IndexFunc(k.rest, func(r rune) bool { return !strings.ContainsRune("0123456789.e", r) })
	if end < 0 {
		end = len(k.rest)
	}
	v, _ := new(big.Rat).SetString(k.rest[:end])
	k.rest = k.rest[end:]
	return sum{v: v}
}

func (k *reckoner) call(name string) sum {
	a := k.sum()
	if k.take(")") {
		return sum{new(big.Rat).Abs(a.v), a.far}
	}
	k.take(",")
	b := k.sum()
	k.take(")")
	switch smaller := a.v.Cmp(b.v) < 0; {
	case name == "pow(":
		p := a
		for i, _ := b.v.Float64(); i > 1; i-- {
			p = times(p, a)
		}
		return p
	case smaller == (name == "min("):
		return sum{a.v, a.far + b.far}
	}
	return sum{b.v, a.far + b.far}
}

func TestRandomFormulasGiveTheirExactValue(t *testing.T) {
	const seed = 3
	t.Logf("random formulas from seed %d", seed)
	w := newWriter(seed)
	compared := 0
	for range 3000 {
		text, unit := w.plain(1+w.r.IntN(4)), formula.PlainNumber
		if w.r.IntN(2) == 0 {
			text, unit = w.length(1+w.r.IntN(4)), "in"
		}
		k := &reckoner{rest: text}
		want := k.sum()
		if k.rest != "" {
			t.Fatalf("%s: the test cannot read %q", text, k.rest)
		}
		if k.bad || len(text) > 900 {
			continue
		}
		s := &script{}
		d := &formula.Definition{Name: s.text("random"), Title: "Random", Summary: "Random.",
			Work: []formula.Text{s.text("answer = " + text)}, Answers: []formula.Result{s.result("answer", unit)}}
		made, faults := formula.Make(d)
		if faults != nil {
			t.Fatalf("%s: %s", s.at(faults[0].Span), faults[0].Text)
		}
		o, err := made.Evaluate(nil)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		got := o.Value("answer").Value
		exact, _ := want.v.Float64()
		if math.Abs(got-exact) > want.far+rounding*math.Abs(exact) {
			t.Errorf("%s is %s, want %s within %g", text, strconv.FormatFloat(got, 'g', -1, 64),
				strconv.FormatFloat(exact, 'g', -1, 64), want.far)
		}
		compared++
	}
	if compared < 2000 {
		t.Errorf("only %d formulas were compared", compared)
	}
}

// FuzzWork feeds lines that nobody would write. Each is a sheet with finite answers, or has faults with a place.
func FuzzWork(f *testing.F) {
	for _, c := range botched {
		f.Add(c.formula)
	}
	for _, text := range []string{everything, "if(rate > 0, rate, 0)", "flow / (ground_speed * width)",
		"rate / (count - 3)", "sqrt(count - share)",
		"pow(pow(rate, 8), 8) / pow(pow(rate, 8), 8)", "if(count > 3, rate / (count - 3), 0)",
		"round_up(share) / round_down(share)", "max(0, 0)", "-0 * rate", "size(-rate) % 2"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := &script{}
		line := strings.ToValidUTF8(strings.ReplaceAll(text, "\n", " "), "?")
		d := sprayer(s, "lb/ac", everything, "other = "+line, "answer = rate")
		whole := len(strings.Join(s.lines, "\n"))
		made, faults := formula.Make(d)
		if (made == nil) == (len(faults) == 0) {
			t.Fatalf("%q: a sheet %v, and faults %v", text, made != nil, faults)
		}
		for _, fault := range faults {
			if fault.ID == "calculation-unmade" || fault.Text == "" || fault.Note == "" ||
				fault.Span.Start < 0 || fault.Span.End < fault.Span.Start || fault.Span.End > whole {
				t.Errorf("%q: %+v of %d bytes", text, fault, whole)
			}
		}
		if made != nil {
			checkFinite(t, text, made)
		}
	})
}

// checkFinite works a sheet for the ends of its givens: there is an answer, or a sentence that says why there is none.
func checkFinite(t *testing.T, text string, s *sheet.Sheet) {
	t.Helper()
	for _, high := range []bool{false, true} {
		values := map[string]float64{}
		for _, g := range s.Givens {
			values[g.Name] = g.Low
			if high {
				values[g.Name] = g.High
			}
		}
		o, err := s.Evaluate(values)
		if err == nil && (math.IsNaN(o.Value("other").Value) || math.IsInf(o.Value("other").Value, 0)) {
			t.Errorf("%q: the line gives %v", text, o.Value("other"))
		}
	}
}
