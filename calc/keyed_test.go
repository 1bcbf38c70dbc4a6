package calc_test

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strings"
	"time"
)

// A calculator keys in a printed formula as a person does: number by number, in exact decimals, knowing of units only
// what a % and a "per 1000" say, and that a ppm is a millionth where it is the answer alone. It is written without a
// look at what prints the work.
type calculator struct {
	rest string
	and  int // how many calls wait for the "and" between their two numbers
}

// A keyedLine is a printed line with a formula in numbers and what is printed as its result.
type keyedLine struct{ formula, result string }

// keyedLines finds the formulas in numbers of one line of the work.
func keyedLines(line string) []keyedLine {
	var found []keyedLine
	for i, part := range strings.Split(line, "; at ") {
		sides := strings.Split(part, " = ")
		switch {
		case i > 0:
			_, formula, _ := strings.Cut(sides[0], "t ") // least, most
			found = append(found, keyedLine{formula, sides[1]})
		case len(sides) == 4:
			found = append(found, keyedLine{sides[len(sides)-2], sides[len(sides)-1]})
		}
	}
	return found
}

// check says what is wrong with a line; "" when its result is what the calculator shows, rounded as it is printed.
func (l keyedLine) check() (wrong string) {
	defer func() {
		if r := recover(); r != nil {
			wrong = fmt.Sprint(r)
		}
	}()
	c := &calculator{rest: l.formula}
	got := c.sum()
	if c.rest != "" {
		return "cannot key in " + c.rest
	}
	if day, is := dayOf(l.result); is {
		if got.Cmp(day) != 0 {
			return "it is day " + got.FloatString(4)
		}
		return ""
	}
	number := numberPattern.FindString(l.result)
	if number == "" {
		return "no number in " + l.result
	}
	unit := strings.TrimPrefix(l.result, number)
	got.Quo(got, scaleOf(unit))
	if strings.HasPrefix(unit, " ppm") && !strings.Contains(l.formula, "ppm") {
		got.Mul(got, big.NewRat(1_000_000, 1))
	}
	printed, places := decimal(number)
	if shown := rounded(got, places); shown.Cmp(printed) != 0 {
		return "the calculator shows " + got.FloatString(8)
	}
	return ""
}

var (
	numberPattern = regexp.MustCompile(`^-?\$?-?\d[\d,]*(\.\d+)?( × 10\^-?\d+)?`)
	datePattern   = regexp.MustCompile(`^[A-Z][a-z]{2} \d{1,2}, \d{4}`)
	endOfUnit     = regexp.MustCompile(` [×÷+−=] |\)|$| to the power `)
)

// sum reads terms with + and − between them.
func (c *calculator) sum() *big.Rat {
	total := c.product()
	for {
		switch {
		case c.take(" + "):
			total = new(big.Rat).Add(total, c.product())
		case c.take(" − "):
			total = new(big.Rat).Sub(total, c.product())
		default:
			return total
		}
	}
}

func (c *calculator) product() *big.Rat {
	total := c.power()
	for {
		switch {
		case c.take(" × "):
			total = new(big.Rat).Mul(total, c.power())
		case c.take(" ÷ "):
			divisor := c.power()
			if divisor.Sign() == 0 {
				panic("divided by 0")
			}
			total = new(big.Rat).Quo(total, divisor)
		default:
			return total
		}
	}
}

func (c *calculator) power() *big.Rat {
	base := c.one()
	if !c.take(" to the power ") {
		return base
	}
	n, _ := decimal(c.number())
	total := big.NewRat(1, 1)
	for range n.Num().Int64() {
		total.Mul(total, base)
	}
	return total
}

// one reads a number, a day, brackets, or a call.
func (c *calculator) one() *big.Rat {
	switch {
	case c.take("("):
		defer c.need(")")
		waiting := c.and
		c.and = 0
		defer func() { c.and = waiting }()
		return c.sum()
	case c.take("π"):
		return real(math.Pi)
	case c.take("√"):
		return real(math.Sqrt(float(c.one())))
	case c.take("arccos "):
		return real(math.Acos(float(c.one())))
	case c.take("rounded up: "):
		return whole(c.one(), 1)
	case c.take("rounded down: "):
		return whole(c.one(), -1)
	case c.take("the size of "):
		return new(big.Rat).Abs(c.one())
	case c.take("the smaller of "):
		return c.pair(-1)
	case c.take("the larger of "):
		return c.pair(1)
	}
	if day, is := dayOf(c.rest); is {
		c.rest = c.rest[len(datePattern.FindString(c.rest)):]
		return day
	}
	value, _ := decimal(c.number())
	return value.Mul(value, scaleOf(c.unit()))
}

func (c *calculator) pair(sign int) *big.Rat {
	c.and++
	first := c.one()
	c.and--
	c.need(" and ")
	second := c.one()
	if second.Cmp(first) == sign {
		return second
	}
	return first
}

func (c *calculator) take(text string) bool {
	rest, found := strings.CutPrefix(c.rest, text)
	if found {
		c.rest = rest
	}
	return found
}

func (c *calculator) need(text string) {
	if !c.take(text) {
		panic("no " + text + " before " + c.rest)
	}
}

func (c *calculator) number() string {
	number := numberPattern.FindString(c.rest)
	if number == "" {
		panic("no number before " + c.rest)
	}
	c.rest = c.rest[len(number):]
	return number
}

// unit reads what comes after a number, up to the next sign.
func (c *calculator) unit() string {
	end := endOfUnit.FindStringIndex(c.rest)[0]
	if and := strings.Index(c.rest, " and "); c.and > 0 && and >= 0 && and < end {
		end = and
	}
	unit := c.rest[:end]
	c.rest = c.rest[end:]
	return unit
}

// scaleOf is what a unit makes of its number: 35 % is 0.35.
func scaleOf(unit string) *big.Rat {
	scale := big.NewRat(1, 1)
	above, below, _ := strings.Cut(unit, " per ")
	if strings.HasPrefix(strings.TrimSpace(above), "%") {
		scale.SetFrac64(1, 100)
	}
	if strings.HasPrefix(below, "1000 ") {
		scale.Quo(scale, big.NewRat(1000, 1))
	}
	return scale
}

// decimal reads a printed number and how many decimal places it has.
func decimal(text string) (value *big.Rat, places int) {
	text = strings.NewReplacer("$", "", ",", "").Replace(text)
	digits, power, _ := strings.Cut(text, " × 10^")
	value, ok := new(big.Rat).SetString(digits + "e" + cmpOr(power, "0"))
	if !ok {
		panic("no number: " + text)
	}
	if _, fraction, has := strings.Cut(digits, "."); has {
		places = len(fraction)
	}
	var exponent int
	fmt.Sscan(power, &exponent)
	return value, places - exponent
}

func cmpOr(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// rounded rounds to so many decimal places, a tie away from nothing.
func rounded(v *big.Rat, places int) *big.Rat {
	ten := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(places, -places))), nil))
	if places < 0 {
		ten.Inv(ten)
	}
	shifted := new(big.Rat).Mul(new(big.Rat).Abs(v), ten)
	shifted = whole(shifted.Add(shifted, big.NewRat(1, 2)), -1)
	if v.Sign() < 0 {
		shifted.Neg(shifted)
	}
	return shifted.Quo(shifted, ten)
}

// whole is the whole number not below (1) or not above (-1).
func whole(v *big.Rat, way int) *big.Rat {
	quotient, rest := new(big.Int).DivMod(v.Num(), v.Denom(), new(big.Int))
	if way > 0 && rest.Sign() != 0 {
		quotient.Add(quotient, big.NewInt(1))
	}
	return new(big.Rat).SetInt(quotient)
}

func dayOf(text string) (*big.Rat, bool) {
	day, err := time.Parse("Jan 2, 2006", datePattern.FindString(text))
	if err != nil {
		return nil, false
	}
	return big.NewRat(day.Unix()/86400, 1), true
}

func real(v float64) *big.Rat {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		panic("no number")
	}
	return new(big.Rat).SetFloat64(v)
}

func float(v *big.Rat) float64 {
	f, _ := v.Float64()
	return f
}
