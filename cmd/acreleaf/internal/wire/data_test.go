package wire_test

import (
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"testing"

	"acreleaf/cmd/acreleaf/internal/wire"
)

// full has something in every field.
var full = wire.Data{
	Module: []byte{0, 97, 255},
	Sheets: []wire.Part{{Refusals: []int{7, 8}, After: []int{0}}, {}},
	Fixed:  []wire.Fixed{{Cell: 1, Low: 2.5, High: 2.5}, {Cell: 2, Low: 1e-7, High: 1e21}},
	Guards: []wire.Guarded{{Cell: 3, Guard: 4}},
	Trends: []wire.Trend{{Of: 5, From: 6, Up: 1}},
	Tables: []wire.Grid{{
		Of: 1, Down: wire.Axis{Cell: 9, Values: []float64{1, 2}}, Across: wire.Axis{Cell: 10, Values: []float64{0.5}},
		Show: 11, Mark: &wire.Span{Low: wire.End(math.Inf(-1)), High: 4}, Follow: &wire.Follow{Down: 12, Across: 13},
	}},
	Exercises: []wire.Varying{{
		Sheets: []int{2, 3}, Deal: wire.Deal{Offset: 5, Stride: 38, Of: 63}, Cards: 40,
		Picks: []wire.Pick{
			{Cells: []int{14, 15}, Values: []float64{0.5}, Names: []string{`<"½"`}},
			{Names: []string{"7 units"}, Alone: &wire.Deal{Offset: 0, Stride: 1, Of: 1}},
		},
		Asks: []wire.Ask{{Right: 16, Digits: 3, Answer: 17, Again: -1,
			Slips: []wire.Slip{{Value: 18, Open: 19, Again: 1}}}},
	}},
	Marker: 20,
}

func TestJSON(t *testing.T) {
	const want = `{"m":"0061ff","sheets":[{"refusals":[7,8],"after":[0]},{"refusals":[]}],` +
		`"fixed":[[1,2.5],[2,1e-07,1e+21]],"guards":[[3,4]],"trends":[[5,6,1]],"tables":[{"of":1,"down":[9,[1,2]],` +
		`"across":[10,[0.5]],"show":11,"mark":[null,4],"follow":[12,13]}],` +
		`"exercises":[{"sheets":[2,3],"deal":[5,38,63],"cards":40,"picks":[{"cells":[14,15],"values":[0.5],` +
		`"names":["\u003c\"½\""]},{"cells":[],"values":[],"names":["7 units"],"alone":[0,1,1]}],` +
		`"asks":[[16,3,17,-1,[[18,19,1]]]]}],"marker":20}`
	if got := string(full.JSON()); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// What is written has the fields that the types say, in their order, and no others.
func TestJSONHasTheFieldsOfTheTypes(t *testing.T) {
	var data, sheet, table map[string]json.RawMessage
	decode := func(text []byte, into any) {
		t.Helper()
		if err := json.Unmarshal(text, into); err != nil {
			t.Fatal(err)
		}
	}
	first := func(list json.RawMessage) []byte {
		var all []json.RawMessage
		decode(list, &all)
		return all[0]
	}
	decode(full.JSON(), &data)
	decode(first(data["sheets"]), &sheet)
	decode(first(data["tables"]), &table)
	for of, got := range map[reflect.Type]map[string]json.RawMessage{
		reflect.TypeFor[wire.Data](): data, reflect.TypeFor[wire.Part](): sheet, reflect.TypeFor[wire.Grid](): table,
	} {
		want := fields(of)
		for _, name := range want {
			if got[name] == nil {
				t.Errorf("%s: the field %s is not written", of, name)
			}
		}
		for name := range got {
			if !slices.Contains(want, name) {
				t.Errorf("%s: there is no field %s", of, name)
			}
		}
	}
}
