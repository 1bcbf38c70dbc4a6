package main

import "math"

// inputs is how many times each program is run.
const inputs = 10_000

// A draw gives the same random numbers here and in the browser: xorshift32 (Marsaglia 2003, "Xorshift RNGs") on
// whole numbers of 32 bits, and divisions that IEEE 754 rounds alike everywhere. browser/parity-page.mjs is its twin.
type draw struct{ state uint32 }

// newDraw starts the numbers of the program numbered n; the state must not be 0.
func newDraw(n int) *draw { return &draw{state: uint32(n)*0x9e3779b9 | 1} }

func (d *draw) word() uint32 {
	d.state ^= d.state << 13
	d.state ^= d.state >> 17
	d.state ^= d.state << 5
	return d.state
}

// special are the numbers at which floating-point code goes wrong, as bits.
var special = [...]uint64{
	0x0000000000000000, 0x8000000000000000, // 0, -0
	0x3ff0000000000000, 0xbff0000000000000, // 1, -1
	0x3fe0000000000000, 0x4004000000000000, // 0.5, 2.5
	0x7ff0000000000000, 0xfff0000000000000, // the infinities
	0x7ff8000000000000,                     // not a number
	0x7fefffffffffffff, 0x0000000000000001, // the largest and the smallest
	0x0010000000000000, 0x4340000000000001, // the smallest normal, 2^53 + 2
}

// number gives one input: any bits at all, a special number, a small whole number such as a choice or a presence, or
// a number as growers type them.
func (d *draw) number() float64 {
	switch d.word() % 10 {
	case 0:
		low, high := d.word(), d.word()
		return math.Float64frombits(uint64(high)<<32 | uint64(low))
	case 1:
		return math.Float64frombits(special[d.word()%uint32(len(special))])
	case 2, 3:
		return float64(d.word() % 6)
	}
	return float64(d.word()%200_000) / 1000
}

// A sum is an order-sensitive hash of the bits of a run's outputs in two lanes of 32 bits, so that the browser can
// keep the same one with whole numbers. Every NaN counts as the same one: which bits a NaN has is the engine's own
// choice (WebAssembly Core Specification 2.0, section 4.3.3), and no page ever shows one.
type sum struct{ a, b uint32 }

func newSum() sum { return sum{a: 0x811c9dc5, b: 0x9e3779b9} }

func (s *sum) add(v float64) {
	bits := math.Float64bits(v)
	if v != v {
		bits = 0x7ff8000000000000
	}
	for _, word := range [2]uint32{uint32(bits), uint32(bits >> 32)} {
		s.a = (s.a ^ word) * 0x01000193
		s.a ^= s.a >> 15
		s.b = (s.b + word) * 0x85ebca6b
		s.b ^= s.b >> 13
	}
}
