package render

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// text writes s as text or as the value of a quoted attribute: the five characters that could end either are
// written as references. Bytes that are not UTF-8 and NUL become U+FFFD, which is what a browser would make of them.
func text(w *bytes.Buffer, s string) {
	if !utf8.ValidString(s) {
		s = strings.ToValidUTF8(s, "\uFFFD")
	}
	start := 0
	for i := range len(s) {
		if s[i] > '>' { // most letters; none of the five comes after it
			continue
		}
		reference := references[s[i]]
		if reference == "" {
			continue
		}
		w.WriteString(s[start:i])
		w.WriteString(reference)
		start = i + 1
	}
	w.WriteString(s[start:])
}

var references = ['>' + 1]string{'&': "&amp;", '<': "&lt;", '>': "&gt;", '"': "&#34;", '\'': "&#39;", 0: "\uFFFD"}

// attribute writes an attribute with its leading space.
func attribute(w *bytes.Buffer, name, value string) {
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="`)
	text(w, value)
	w.WriteByte('"')
}

// flag writes an attribute that has no value.
func flag(w *bytes.Buffer, name string) {
	w.WriteByte(' ')
	w.WriteString(name)
}

// numbered writes an attribute whose value is a whole number.
func numbered(w *bytes.Buffer, name string, value int) {
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="`)
	integer(w, value)
	w.WriteByte('"')
}

// measured writes an attribute whose value is a number in full digits, as the script reads it back. An infinite
// bound is no bound, and is left out.
func measured(w *bytes.Buffer, name string, value float64) {
	if math.IsInf(value, 0) || math.IsNaN(value) {
		return
	}
	w.WriteByte(' ')
	w.WriteString(name)
	w.WriteString(`="`)
	w.Write(strconv.AppendFloat(w.AvailableBuffer(), value, 'g', -1, 64))
	w.WriteByte('"')
}

func integer(w *bytes.Buffer, value int) {
	w.Write(strconv.AppendInt(w.AvailableBuffer(), int64(value), 10))
}

// place writes an href. A way that could run code, or that leaves the web, goes nowhere instead.
func place(w *bytes.Buffer, href string) {
	if !safe(href) {
		href = "#"
	}
	attribute(w, "href", href)
}

// safe says whether href is a way inside the site or an address of a kind that only shows something.
func safe(href string) bool {
	scheme, _, found := strings.Cut(href, ":")
	if !found || strings.ContainsAny(scheme, "/?#") {
		return !strings.HasPrefix(href, "//") && !strings.ContainsAny(href, "\\\x00\t\n\r")
	}
	switch strings.ToLower(scheme) {
	case "http", "https", "mailto", "tel":
		return true
	}
	return false
}

// element writes <tag class="class">s</tag>; nothing when s is empty.
func element(w *bytes.Buffer, tag, class, s string) {
	if s == "" {
		return
	}
	w.WriteByte('<')
	w.WriteString(tag)
	if class != "" {
		attribute(w, "class", class)
	}
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</")
	w.WriteString(tag)
	w.WriteByte('>')
}

// link writes a link with its text.
func link(w *bytes.Buffer, class, href, s string) {
	w.WriteString("<a")
	if class != "" {
		attribute(w, "class", class)
	}
	place(w, href)
	w.WriteByte('>')
	text(w, s)
	w.WriteString("</a>")
}

// sentence writes s with a full stop, unless it ends with a mark of its own, and a space. Nothing when s is empty.
func sentence(w *bytes.Buffer, s string) {
	if s == "" {
		return
	}
	text(w, s)
	if !ended(s) {
		w.WriteByte('.')
	}
	w.WriteByte(' ')
}

// ended says whether a text ends with a mark that a full stop would be too much after.
func ended(s string) bool { return s != "" && strings.IndexByte(".!?:", s[len(s)-1]) >= 0 }
