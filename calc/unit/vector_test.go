package unit

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
)

var update = flag.Bool("update", false, "write testdata/number-text.csv anew")

// vectorFile holds numbers and their text, for Go and for the page's script: on each line the 16 hexadecimal digits of
// the number's bits, and its text as each of the writers has it. A text with commas is in quotes.
const vectorFile = "testdata/number-text.csv"

// TestVectors holds Text to the file. After a change of Text or of the numbers, run the test with -update.
func TestVectors(t *testing.T) {
	numbers := vectorNumbers()
	if *update {
		writeVectors(t, numbers)
	}
	text, err := os.ReadFile(vectorFile)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) < 2500 || len(lines) != len(numbers) {
		t.Fatalf("the file has %d numbers, want %d and no fewer than 2500", len(lines), len(numbers))
	}
	for i, line := range lines {
		bits, err := strconv.ParseUint(line[0], 16, 64)
		if err != nil || bits != math.Float64bits(numbers[i]) {
			t.Fatalf("line %d has the bits %s, want those of %v", i+1, line[0], numbers[i])
		}
		for j, got := range written(numbers[i]) {
			if got != line[1+j] {
				t.Errorf("line %d: text %d of %v is %q, want %q", i+1, j+1, numbers[i], got, line[1+j])
			}
		}
	}
}

// written is a number as each of the functions that the script has too writes it.
func written(v float64) []string {
	dollars := MustParse("$")
	return []string{Text(v), Digits(v, 3, 2), MustParse("").Operand(v, 6, 6, 1), Money(v, 0), dollars.Operand(v, 6, 3, 1)}
}

func writeVectors(t *testing.T, numbers []float64) {
	t.Helper()
	var file bytes.Buffer
	w := csv.NewWriter(&file)
	for _, v := range numbers {
		line := append([]string{fmt.Sprintf("%016x", math.Float64bits(v))}, written(v)...)
		if err := w.Write(line); err != nil {
			t.Fatal(err)
		}
	}
	w.Flush()
	if err := os.WriteFile(vectorFile, file.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// vectorNumbers makes the numbers of the file, the same every time.
func vectorNumbers() []float64 {
	numbers := []float64{
		0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1),
		math.MaxFloat64, math.SmallestNonzeroFloat64, 2 * math.SmallestNonzeroFloat64,
		0x1p-1022, math.Nextafter(0x1p-1022, 0), math.MaxInt64, 1 << 53, 1<<53 - 1, 1<<53 + 2, math.Pi, math.E,
		0.1 + 0.2, 1.0 / 3, 2.0 / 3, 48, 110.0000000001, 20.571428571428573, 0.226613, 14.007 / 62.004,
	}
	numbers = append(numbers, powersOfTen()...)
	numbers = append(numbers, ties()...)
	return append(numbers, randomNumbers()...)
}

// withNeighbours gives v, the numbers just below and above it, and all three negative.
func withNeighbours(v float64) []float64 {
	below, above := math.Nextafter(v, math.Inf(-1)), math.Nextafter(v, math.Inf(1))
	return []float64{v, below, above, -v, -below, -above}
}

// powersOfTen are where the number of digits changes; the ends of the plain notation are among them.
func powersOfTen() []float64 {
	var numbers []float64
	for power := -9; power <= 18; power++ {
		numbers = append(numbers, withNeighbours(decimal("1e"+strconv.Itoa(power)))...)
	}
	for power := -323; power <= 308; power += 3 {
		v := decimal("1e" + strconv.Itoa(power))
		numbers = append(numbers, v, math.Nextafter(v, 0), math.Nextafter(v, math.Inf(1)))
	}
	return numbers
}

// ties are halfway between two texts in decimal digits, which most are not in binary: 2.675, 0.1235, 1234.5.
func ties() []float64 {
	r := rand.New(rand.NewPCG(5, 6))
	var numbers []float64
	for power := -8; power <= 16; power++ {
		for _, digits := range []string{"1005", "1235", "1245", "9985", "9995", "2675", strconv.Itoa(1000 + r.IntN(9000))} {
			numbers = append(numbers, decimal(digits[:3]+"5e"+strconv.Itoa(power-3)))
		}
	}
	for range 60 {
		half := float64(r.IntN(1_000_000)) + 0.5
		numbers = append(numbers, withNeighbours(half)...)
	}
	carries := []string{"9.995", "99.95", "999.5", "9999.5", "999999.5", "0.9995", "0.09995", "999999999999999.5"}
	for _, text := range carries {
		numbers = append(numbers, withNeighbours(decimal(text))...)
	}
	return numbers
}

// randomNumbers are of the sizes that a guide shows, and then of all sizes.
func randomNumbers() []float64 {
	r := rand.New(rand.NewPCG(7, 8))
	var numbers []float64
	for range 1000 {
		v := math.Pow(10, 9*r.Float64()-3)
		places := math.Pow(10, float64(r.IntN(5)))
		numbers = append(numbers, math.Round(v*places)/places)
	}
	for range 500 {
		v := math.Float64frombits(r.Uint64())
		if math.IsNaN(v) { // the bits of a NaN do not live through every engine
			v = r.NormFloat64()
		}
		numbers = append(numbers, v)
	}
	return numbers
}

func decimal(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return v
}
