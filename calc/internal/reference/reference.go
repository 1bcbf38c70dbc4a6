// Package reference gives tests the published values that the nitrogen arithmetic is checked against: one value a row,
// each with its inputs, its tolerance and its source. SOURCES.md beside the file lists the publications.
//
// The package is for tests only. It owns the reading of the rows and the comparing; the tolerance of a row is the
// rounding that its source printed, so no test may pass another. It must not calculate anything itself.
package reference

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
	"testing"
)

//go:embed nitrogen-references.csv
var file string

// A Value is one row of the file.
type Value struct {
	ID       string            // "C03": stable, cited beside the check
	Topic    string            // "c-water-nitrate"
	Quantity string            // what is checked: "lb_N_from_irrigation"
	Inputs   map[string]string // what goes in; the unit is in the name: "acre_in" is "24"
	Expected float64           // the number to get
	Unit     string            // its unit, in the words of the source
	Source   string            // who says so
	Kind     string            // standard, handbook, worked-example, common-practice or from-memory
	SeenAt   string            // where it was read

	tolerance tolerance
}

// A tolerance is how far a result may lie from the printed number.
type tolerance struct {
	size     float64
	relative bool // size is a part of the expected number, not a number of its unit
}

// rows reads the file once.
var rows = sync.OnceValues(func() ([]*Value, error) { return read(file) })

// Row gives the row with an id. It ends the test when there is none.
func Row(t testing.TB, id string) *Value {
	t.Helper()
	for _, v := range all(t) {
		if v.ID == id {
			return v
		}
	}
	t.Fatalf("the reference file has no row %s", id)
	return nil
}

// Topic gives the rows of a topic, such as "a-constants", in the order of the file. It ends the test when there are
// none.
func Topic(t testing.TB, topic string) []*Value {
	t.Helper()
	var found []*Value
	for _, v := range all(t) {
		if v.Topic == topic {
			found = append(found, v)
		}
	}
	if len(found) == 0 {
		t.Fatalf("the reference file has no topic %s", topic)
	}
	return found
}

func all(t testing.TB) []*Value {
	t.Helper()
	values, err := rows()
	if err != nil {
		t.Fatal(err)
	}
	return values
}

// Input gives an input as a number. It ends the test when the row has no such input or it is a word.
func (v *Value) Input(t testing.TB, name string) float64 {
	t.Helper()
	number, err := strconv.ParseFloat(v.Inputs[name], 64)
	if err != nil {
		t.Fatalf("%s has no number %q among its inputs %v", v.ID, name, v.Inputs)
	}
	return number
}

// Check fails the test, naming the row and its source, when got lies outside the tolerance of the row.
func (v *Value) Check(t testing.TB, got float64) {
	t.Helper()
	if !v.Accepts(got) {
		t.Errorf("%s %s: got %v, want %v ± %v %s (%s)", v.ID, v.Quantity, got, v.Expected, v.allowed(), v.Unit, v.Source)
	}
}

// Accepts says whether got lies within the tolerance of the row.
func (v *Value) Accepts(got float64) bool {
	return math.Abs(got-v.Expected) <= v.allowed()
}

// allowed is the tolerance in the unit of the row.
func (v *Value) allowed() float64 {
	if v.tolerance.relative {
		return math.Abs(v.tolerance.size * v.Expected)
	}
	return v.tolerance.size
}

// read reads the whole file; a fault in any row is an error that names it.
func read(text string) ([]*Value, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = 10
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("the reference file can not be read: %w", err)
	}
	var values []*Value
	seen := map[string]bool{}
	for _, record := range records[1:] {
		v, err := readRow(record)
		if err != nil {
			return nil, fmt.Errorf("reference row %s: %w", record[0], err)
		}
		if seen[v.ID] {
			return nil, fmt.Errorf("reference row %s is there twice", v.ID)
		}
		seen[v.ID] = true
		values = append(values, v)
	}
	return values, nil
}

func readRow(record []string) (*Value, error) {
	expected, err := strconv.ParseFloat(record[4], 64)
	if err != nil {
		return nil, fmt.Errorf("the expected value is no number: %w", err)
	}
	allowed, err := readTolerance(record[6])
	if err != nil {
		return nil, err
	}
	v := &Value{
		ID: record[0], Topic: record[1], Quantity: record[2], Inputs: map[string]string{},
		Expected: expected, Unit: record[5], tolerance: allowed, Source: record[7], Kind: record[8], SeenAt: record[9],
	}
	for _, input := range strings.Split(record[3], ";") {
		name, value, found := strings.Cut(input, "=")
		if !found {
			return nil, fmt.Errorf("the input %q is not of the form name=value", input)
		}
		v.Inputs[name] = value
	}
	return v, nil
}

func readTolerance(text string) (tolerance, error) {
	how, size, _ := strings.Cut(text, ":")
	number, err := strconv.ParseFloat(size, 64)
	if err != nil || number < 0 || how != "abs" && how != "rel" {
		return tolerance{}, fmt.Errorf("the tolerance %q is not of the form abs:x or rel:x", text)
	}
	return tolerance{number, how == "rel"}, nil
}
