package raster

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

type point struct{ x, y float64 }

func (p point) plus(o point) point  { return point{p.x + o.x, p.y + o.y} }
func (p point) minus(o point) point { return point{p.x - o.x, p.y - o.y} }

// A line is a run of segments without a gap. The first has where it begins.
type line []segment

// A segment leads to a point, straight or by two others that it bends to.
type segment struct {
	to, first, second point
	curved            bool
}

// word is a command of a path, or a number. A number ends where another begins: "3c.5 6.5-3" has four.
var word = regexp.MustCompile(`^[ ,]*([A-Za-z]|-?(?:\d+\.?\d*|\.\d+))`)

// read reads the data of a path.
func read(data string) ([]line, error) {
	r := &reader{}
	for rest := strings.TrimSpace(data); rest != ""; {
		found := word.FindStringSubmatch(rest)
		if found == nil {
			return nil, fmt.Errorf("%q in a path is neither a command nor a number", rest)
		}
		rest = rest[len(found[0]):]
		n, err := strconv.ParseFloat(found[1], 64)
		if err == nil {
			r.numbers = append(r.numbers, n)
		} else if err := r.begin(found[1][0]); err != nil {
			return nil, err
		}
		if err := r.step(); err != nil {
			return nil, err
		}
	}
	if len(r.numbers) > 0 {
		return nil, fmt.Errorf("the path %q ends with numbers that are of no command", data)
	}
	return r.lines, nil
}

// A reader follows a path.
type reader struct {
	lines   []line
	at      point
	command byte
	numbers []float64 // of the command, as far as they are read
}

// takes are how many numbers a command takes.
var takes = map[byte]int{'m': 2, 'l': 2, 'h': 1, 'v': 1, 'c': 6, 'z': 0}

func (r *reader) begin(command byte) error {
	if _, known := takes[command|0x20]; !known || len(r.numbers) > 0 {
		return fmt.Errorf("a path may not go on with %q", command)
	}
	r.command = command
	if command|0x20 == 'z' {
		return r.close()
	}
	return nil
}

// close goes back to where the line begins.
func (r *reader) close() error {
	if len(r.lines) == 0 {
		return fmt.Errorf("a path begins with M or m")
	}
	last := &r.lines[len(r.lines)-1]
	r.at = (*last)[0].to
	*last = append(*last, segment{to: r.at})
	return nil
}

// step goes on once all numbers of a command are there. More numbers repeat it.
func (r *reader) step() error {
	small := r.command | 0x20
	if want := takes[small]; want == 0 || len(r.numbers) < want {
		if len(r.numbers) > 0 && want == 0 {
			return fmt.Errorf("a path begins with M or m, and nothing follows z but a command")
		}
		return nil
	}
	n, from := r.numbers, point{}
	if r.command == small { // from where the path is
		from = r.at
	}
	r.numbers = nil
	s := segment{}
	switch small {
	case 'm':
		r.at = from.plus(point{n[0], n[1]})
		r.lines = append(r.lines, line{{to: r.at}})
		r.command-- // what follows are lines: l is before m
		return nil
	case 'l':
		s.to = from.plus(point{n[0], n[1]})
	case 'h':
		s.to = point{from.x + n[0], r.at.y}
	case 'v':
		s.to = point{r.at.x, from.y + n[0]}
	case 'c':
		s = segment{from.plus(point{n[4], n[5]}), from.plus(point{n[0], n[1]}), from.plus(point{n[2], n[3]}), true}
	}
	if len(r.lines) == 0 {
		return fmt.Errorf("a path begins with M or m")
	}
	last := &r.lines[len(r.lines)-1]
	*last = append(*last, s)
	r.at = s.to
	return nil
}
