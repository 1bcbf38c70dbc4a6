package markdown

import (
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/construct"
	"acreleaf/cmd/acreleaf/internal/message"
)

// linkSchemes are the schemes that only show or fetch something. Any other is refused, so that none that runs code,
// known today or not, can reach a page.
var linkSchemes = []string{"ftp", "geo", "http", "https", "mailto", "sms", "tel"}

// codeSchemes run code, or stand for a page of their own, when they are followed.
var codeSchemes = []string{"data", "javascript", "vbscript"}

// checkScheme tells whether a link may be printed, and says what is wrong when not.
func (r *reading) checkScheme(l *Link) bool {
	scheme, ok := schemeOf(l.Destination)
	if !ok || slices.Contains(linkSchemes, scheme) {
		return true
	}
	at := l.DestinationSpan
	if slices.Contains(codeSchemes, scheme) {
		r.fault("link-unsafe", at, "a “"+scheme+":” link can run code in the reader's browser",
			"link to a page, or leave the link out")
		return false
	}
	if s, _, figure := cutFigure(l.Destination); figure {
		r.fault("figure-text", at, "this figure has no number to show", s.Row().Example)
		return false
	}
	if near, ok := message.Nearest(scheme, construct.SchemeWords()); ok {
		r.fault("link-scheme", at, "“"+scheme+":” is not a kind of link", "did you mean “"+near+":”?")
		return false
	}
	r.fault("link-scheme", at, "“"+scheme+":” links do not work for readers",
		"use one of "+strings.Join(linkSchemes, ", ")+", or a page of this site")
	return false
}

var (
	figureStart = regexp.MustCompile(`^(` + strings.Join(construct.SchemeWords(), "|") + `)(?:[.;,/ ](.*))?$`)
	webStart    = regexp.MustCompile(`^(?:www\.\S+|(?:[a-z0-9-]+\.)+(?:com|edu|gov|net|org)(?:/\S*)?)$`)
)

// WholeAddress is the address that was most likely meant by one that lacks its start: size for size:, or
// www.example.org for https://www.example.org. It is "" for any other.
func WholeAddress(destination string) string {
	if found := figureStart.FindStringSubmatch(destination); found != nil && !strings.HasSuffix(destination, ".md") {
		return found[1] + ":" + found[2]
	}
	if webStart.MatchString(destination) {
		return "https://" + destination
	}
	return ""
}

// schemeOf reads the scheme of an address as a browser would: capitals do not count, controls and spaces before it and
// tabs and line ends inside it are dropped.
func schemeOf(address string) (string, bool) {
	var b strings.Builder
	for i := range len(address) {
		c := address[i]
		switch {
		case c == ':':
			return b.String(), b.Len() > 0
		case c == '\t' || c == '\n' || c == '\r' || c <= ' ' && b.Len() == 0:
			continue
		case 'A' <= c && c <= 'Z':
			b.WriteByte(c + 'a' - 'A')
		case 'a' <= c && c <= 'z':
			b.WriteByte(c)
		case b.Len() > 0 && ('0' <= c && c <= '9' || c == '+' || c == '-' || c == '.'):
			b.WriteByte(c)
		default:
			return "", false
		}
	}
	return "", false
}
