package unit

import "testing"

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := Parse("lb soil/ac per 6 in"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseNew(b *testing.B) {
	for b.Loop() {
		if _, err := parse("lb soil/ac per 6 in"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTimes(b *testing.B) {
	u, v := MustParse("ppm NO3-N"), MustParse("lb soil/ac per 6 in")
	for b.Loop() {
		u.Times(v)
	}
}

func BenchmarkTo(b *testing.B) {
	u, v := MustParse("lb N/ac"), MustParse("kg N/ha")
	for b.Loop() {
		if _, err := u.To(v); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParseQuantity(b *testing.B) {
	for b.Loop() {
		if _, err := ParseQuantity("12 ppm NO3-N"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkText(b *testing.B) {
	for b.Loop() {
		Text(27154.2857)
	}
}
