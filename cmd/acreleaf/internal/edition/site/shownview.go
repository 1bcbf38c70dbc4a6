package site

import (
	"strings"
	"sync"

	"acreleaf/calc/sheet"
	"acreleaf/calc/unit"
	"acreleaf/cmd/acreleaf/internal/render"
)

// shown is a given, step or answer of a sheet with its unit, tied to its cell.
func shown(o sheet.Outcome, name string) *render.Shown {
	cell, _ := o.Use.Cell(name)
	v := &render.Shown{Cell: cell, Day: o.Use.Sheet.IsDate(name), Typed: o.Use.TypedElsewhere(name)}
	if v.Day {
		v.Text = o.Text(name)
	} else {
		r := o.Range(name)
		v.Text, v.Kind = o.RangeNumbers(name, r), otherKind(o, name)
		v.Before, v.After = around(r.Unit)
		if result := o.Use.Sheet.FindResult(name); result != nil {
			v.Also = also(o.Use, result, cell, r)
		}
	}
	present(v, o.Use, name)
	if !o.There(name) || !o.Stated(name) {
		v.Text = render.Absent
		if v.Also != nil {
			v.Also.Text = render.Absent
		}
	}
	return v
}

// present ties the number of an optional given to the cell that says whether it is filled in.
func present(v *render.Shown, u *sheet.Use, name string) {
	cell, optional := u.Presence(name)
	if !optional {
		return
	}
	v.Presence = cell
	if v.Kind != nil {
		v.Kind.Other.Presence = cell
	}
}

// around is what comes before and after a number of a unit: "$" and "/ac", or "" and " lb N/ac".
func around(u unit.Unit) (before, after string) {
	const number = 7
	before, after, _ = strings.Cut(unit.Quantity{Value: number, Unit: u}.String(), unit.Text(number))
	return before, after
}

// spokenAround is what comes before and after a number of a unit in a sentence: "" and " lb of nitrogen an acre".
func spokenAround(u unit.Unit, language string) (before, after string) {
	const number = "7"
	before, after, _ = strings.Cut(u.Spoken(number, language), number)
	return before, after
}

// inWords puts the unit of a number into words, or leaves it out where the sentence says it.
func inWords(v *render.Shown, o sheet.Outcome, piece sheet.Piece) {
	if v.Day {
		return
	}
	v.Before, v.After = "", ""
	own, _ := o.Use.Sheet.UnitOf(piece.Name)
	if !piece.Bare {
		v.Before, v.After = spokenAround(own, o.Use.Language())
	}
	if v.Also == nil {
		return
	}
	v.Also.Before, v.Also.After = "", ""
	if !piece.Bare {
		v.Also.Before, v.Also.After = spokenAround(alsoUnit(o.Use.Sheet.FindResult(piece.Name)), o.Use.Language())
	}
}

// A conversion is a second unit that a result is shown in.
type conversion struct {
	unit          unit.Unit
	before, after string
	factor        unit.Factor
}

var conversions sync.Map // of conversion by *sheet.Result; the same calculation stands behind many worksheets

// alsoUnit is the second unit that a result is shown in.
func alsoUnit(r *sheet.Result) unit.Unit { return unit.MustParse(r.Also).Like(r.Unit) }

// also is a value of a result in its second unit; nil if it has none.
func also(use *sheet.Use, r *sheet.Result, cell int, value unit.Range) *render.Shown {
	if r.Also == "" {
		return nil
	}
	known, ok := conversions.Load(r)
	if !ok {
		known, _ = conversions.LoadOrStore(r, conversionOf(r.Unit, alsoUnit(r)))
	}
	return known.(conversion).shown(use, cell, value)
}

func conversionOf(from, to unit.Unit) conversion {
	factor, err := from.To(to)
	if err != nil {
		panic(err) // the sheet, or a test of the pictures, has refused it
	}
	c := conversion{unit: to, factor: factor}
	c.before, c.after = around(to)
	return c
}

// shown is the value of a cell after the conversion.
func (c conversion) shown(use *sheet.Use, cell int, value unit.Range) *render.Shown {
	low, high := c.unit.Number(c.factor.Apply(value.Low)), c.unit.Number(c.factor.Apply(value.High))
	return &render.Shown{
		Cell: cell, Before: c.before, Text: use.RangeText(low, high), After: c.after, By: c.factor.Text(),
	}
}

// otherKind says how a given of two kinds of quantity reads while it is of the other one; nil for what has one kind.
func otherKind(o sheet.Outcome, name string) *render.Kind {
	cell, may := o.Use.OtherCell(name)
	if !may {
		return nil
	}
	given := o.Use.Sheet.FindGiven(name)
	k := &render.Kind{Cell: cell, Second: o.High[cell] != 0}
	other := secondUnit(given)
	if k.Second {
		other = given.Unit
	}
	own, _ := o.Use.Cell(name)
	k.Other = &render.Shown{Cell: own, Text: o.Numbers(name)}
	k.Other.Before, k.Other.After = around(other)
	return k
}

// secondUnit is the unit of the second kind of quantity that a given takes.
func secondUnit(g *sheet.Given) unit.Unit {
	u := unit.MustParse(g.Else.Unit).Like(g.Unit)
	if g.Else.Written != "" {
		u = u.As(g.Else.Written)
	}
	return u
}
