package message

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Printer shows messages on a terminal or in a file.
type Printer struct {
	Color bool // use ANSI colours; the caller has looked at NO_COLOR and at what kind of file it writes to
}

// mostPrinted is how many messages are printed for people, who correct some and ask again.
const mostPrinted = 100

// Print writes the messages in the order given and a line that counts them; nothing at all for an empty list. Of a long
// list it writes the first, errors before advice, and how many more there are.
// A message looks like this:
//
//	content/guides/soil.md:18:17: error: the prose says 46 lb/ac, the worksheet answers 48 lb N/ac [figure-differs]
//	   18 | the top foot is [46 lb/ac](worked:soil.nitrogen) of nitrogen
//	      |                 ^~~~~~~~~~
//	   note: write 48, or change the givens of worksheet "soil" on line 9
func (p Printer) Print(w io.Writer, l List) {
	if len(l) == 0 {
		return
	}
	var b bytes.Buffer
	for _, m := range Place(first(l)) {
		p.message(&b, m)
	}
	fmt.Fprintln(&b, Summary(l))
	if more := len(l) - mostPrinted; more > 0 {
		fmt.Fprintf(&b, "These are the first %d; acreleaf proof --json prints the other %d too.\n", mostPrinted, more)
	}
	// A terminal that is gone is no reason to stop: the caller's exit code says that there were faults.
	_, _ = w.Write(b.Bytes())
}

// first is the part of a list that is printed, in the order of the list.
func first(l List) List {
	if len(l) <= mostPrinted {
		return l
	}
	faults, _ := Count(l)
	advice := max(0, mostPrinted-faults)
	var part List
	for _, m := range l {
		if m.Level == Advice && advice == 0 {
			continue
		}
		if m.Level == Advice {
			advice--
		}
		if part = append(part, m); len(part) == mostPrinted {
			break
		}
	}
	return part
}

// PrintOne writes one message of many that come as they are found, and does not count.
func (p Printer) PrintOne(w io.Writer, m Message) {
	var b bytes.Buffer
	p.message(&b, Place(List{m})[0])
	_, _ = w.Write(b.Bytes()) // as in Print
}

func (p Printer) message(b *bytes.Buffer, m Placed) {
	if m.File != "" {
		fmt.Fprintf(b, "%s ", p.paint(bold, fmt.Sprintf("%s:%d:%d:", m.File, m.Line, m.Column)))
	}
	levelColor := red
	if m.Level == Advice {
		levelColor = blue
	}
	fmt.Fprintf(b, "%s %s", p.paint(levelColor, m.Level.String()+":"), m.Text)
	if m.ID != "" {
		fmt.Fprintf(b, " %s", p.paint(dim, "["+m.ID+"]"))
	}
	b.WriteByte('\n')
	if m.File != "" {
		p.excerpt(b, m, levelColor)
	}
	for i, line := range m.Note {
		label := "note:"
		if i > 0 {
			label = "     "
		}
		fmt.Fprintf(b, "   %s %s\n", label, line)
	}
}

func (p Printer) excerpt(b *bytes.Buffer, m Placed, levelColor string) {
	number := fmt.Sprintf("%5d", m.Line)
	blank := strings.Repeat(" ", len(number))
	e := m.Excerpt
	line := strings.TrimRight(e.Before+e.Marked+e.After, " ")
	fmt.Fprintln(b, strings.TrimRight(p.paint(dim, number+" |")+" "+line, " "))
	caret := "^" + strings.Repeat("~", max(0, cells(e.Marked)-1))
	lead := strings.Repeat(" ", cells(e.Before))
	fmt.Fprintf(b, "%s %s%s\n", p.paint(dim, blank+" |"), lead, p.paint(levelColor, caret))
}

// cells counts the terminal cells of a text that has been made visible.
func cells(text string) int {
	sum := 0
	for _, r := range text {
		sum += width(r)
	}
	return sum
}

// Count counts the faults and the advice of a list.
func Count(l List) (faults, advice int) {
	for _, m := range l {
		if m.Level == Fault {
			faults++
		} else {
			advice++
		}
	}
	return faults, advice
}

// Summary counts messages in words: "2 errors, 1 piece of advice". It is empty for an empty list.
func Summary(l List) string {
	faults, advice := Count(l)
	var parts []string
	switch {
	case faults == 1:
		parts = append(parts, "1 error")
	case faults > 1:
		parts = append(parts, strconv.Itoa(faults)+" errors")
	}
	switch {
	case advice == 1:
		parts = append(parts, "1 piece of advice")
	case advice > 1:
		parts = append(parts, strconv.Itoa(advice)+" pieces of advice")
	}
	return strings.Join(parts, ", ")
}

// ANSI codes ("select graphic rendition", ECMA-48). Only these are ever sent to a terminal.
const (
	bold = "1"
	dim  = "2"
	red  = "1;31"
	blue = "1;34"
)

func (p Printer) paint(code, text string) string {
	if !p.Color {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}
