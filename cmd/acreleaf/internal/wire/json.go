package wire

import (
	"encoding/hex"
	"encoding/json"
	"math"
	"strconv"
)

// JSON gives the data block as the script reads it. It is numbers but for the module itself, so it is written directly.
func (d *Data) JSON() []byte {
	w := &writer{}
	w.raw(`{"m":"`)
	w.text = hex.AppendEncode(w.text, d.Module)
	w.raw(`","sheets":`)
	list(w, d.Sheets, (*writer).part)
	some(w, `,"fixed":`, d.Fixed, (*writer).fixed)
	some(w, `,"guards":`, d.Guards, func(w *writer, g Guarded) { w.integers(g.Cell, g.Guard) })
	some(w, `,"trends":`, d.Trends, func(w *writer, t Trend) { w.integers(t.Of, t.From, t.Up) })
	some(w, `,"tables":`, d.Tables, (*writer).grid)
	some(w, `,"exercises":`, d.Exercises, (*writer).exercise)
	if d.Marker > 0 {
		w.raw(`,"marker":`)
		w.integer(d.Marker)
	}
	w.raw("}")
	return w.text
}

type writer struct{ text []byte }

func (w *writer) raw(s string) { w.text = append(w.text, s...) }

func (w *writer) integer(v int) { w.text = strconv.AppendInt(w.text, int64(v), 10) }

// number writes the shortest decimals that read back as the same number; null for an infinity.
func (w *writer) number(v float64) {
	if math.IsInf(v, 0) {
		w.raw("null")
		return
	}
	w.text = strconv.AppendFloat(w.text, v, 'g', -1, 64)
}

// list writes an array.
func list[T any](w *writer, all []T, one func(*writer, T)) {
	w.raw("[")
	for i, v := range all {
		if i > 0 {
			w.raw(",")
		}
		one(w, v)
	}
	w.raw("]")
}

// some writes a list by its name, unless it is empty.
func some[T any](w *writer, name string, all []T, one func(*writer, T)) {
	if len(all) > 0 {
		w.raw(name)
		list(w, all, one)
	}
}

func (w *writer) integers(all ...int) { list(w, all, (*writer).integer) }

func (w *writer) part(p Part) {
	w.raw(`{"refusals":`)
	w.integers(p.Refusals...)
	some(w, `,"after":`, p.After, (*writer).integer)
	w.raw("}")
}

func (w *writer) fixed(f Fixed) {
	w.raw("[")
	w.integer(f.Cell)
	w.raw(",")
	w.number(f.Low)
	if f.High != f.Low {
		w.raw(",")
		w.number(f.High)
	}
	w.raw("]")
}

func (w *writer) grid(g Grid) {
	w.raw(`{"of":`)
	w.integer(g.Of)
	w.raw(`,"down":`)
	w.axis(g.Down)
	w.raw(`,"across":`)
	w.axis(g.Across)
	w.raw(`,"show":`)
	w.integer(g.Show)
	if g.Mark != nil {
		w.raw(`,"mark":`)
		list(w, []float64{float64(g.Mark.Low), float64(g.Mark.High)}, (*writer).number)
	}
	if g.Follow != nil {
		w.raw(`,"follow":`)
		w.integers(g.Follow.Down, g.Follow.Across)
	}
	w.raw("}")
}

func (w *writer) axis(a Axis) {
	w.raw("[")
	w.integer(a.Cell)
	w.raw(",")
	list(w, a.Values, (*writer).number)
	w.raw("]")
}

func (w *writer) exercise(e Varying) {
	w.raw(`{"sheets":`)
	w.integers(e.Sheets...)
	w.raw(`,"deal":`)
	w.deal(e.Deal)
	w.raw(`,"cards":`)
	w.integer(e.Cards)
	w.raw(`,"picks":`)
	list(w, e.Picks, (*writer).pick)
	w.raw(`,"asks":`)
	list(w, e.Asks, (*writer).ask)
	w.raw("}")
}

func (w *writer) ask(a Ask) {
	w.raw("[")
	for _, one := range []int{a.Right, a.Digits, a.Answer, a.Again} {
		w.integer(one)
		w.raw(",")
	}
	list(w, a.Slips, func(w *writer, s Slip) { w.integers(s.Value, s.Open, s.Again) })
	w.raw("]")
}

func (w *writer) pick(p Pick) {
	w.raw(`{"cells":`)
	w.integers(p.Cells...)
	w.raw(`,"values":`)
	list(w, p.Values, (*writer).number)
	w.raw(`,"names":`)
	list(w, p.Names, (*writer).string)
	if p.Alone != nil {
		w.raw(`,"alone":`)
		w.deal(*p.Alone)
	}
	w.raw("}")
}

func (w *writer) deal(d Deal) { w.integers(d.Offset, d.Stride, d.Of) }

func (w *writer) string(s string) {
	quoted, err := json.Marshal(s)
	if err != nil {
		panic(err) // any string has a JSON
	}
	w.raw(string(quoted))
}
