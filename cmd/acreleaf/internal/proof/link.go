package proof

import (
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"

	"acreleaf/cmd/acreleaf/internal/markdown"
)

// links looks at the descriptions of pictures for those who cannot see them, at where pictures are from, and at the
// texts of links.
func (c *textCheck) links() {
	for _, l := range c.page.Document.Links {
		switch {
		case l.Image:
			c.image(l)
		case phone.MatchString(l.Destination) && len(strings.Trim(digits(l.Destination), " .")) < fewDigits:
			c.fault(l.DestinationSpan, "link-phone", fmt.Sprintf("%q calls no number", l.Destination),
				"write the number with its area code, as in tel:+1-530-555-0100")
		case reachesNobody(l.Destination):
			c.fault(l.DestinationSpan, "link-address", fmt.Sprintf("%q is not a whole address", l.Destination),
				"write it whole, as in mailto:office@example.org or https://example.org/notes")
		case unopened(l.Destination) != "":
			c.fault(l.DestinationSpan, "link-unopened", "no browser opens this address: "+unopened(l.Destination),
				"copy it from the bar of the browser while the page is open, as https://example.org/notes")
		case c.rules.Advice:
			c.linkText(l)
		}
	}
}

var phone = regexp.MustCompile(`(?i)^\s*(?:tel|sms):`)

// fewDigits is the length of the shortest numbers that are called, such as 911.
const fewDigits = 3

// webAddress and mailAddress are addresses with all their parts: a host, and somebody there.
var (
	webAddress  = regexp.MustCompile(`(?i)^\s*(?:https?|ftp)://[^\s/?#]`)
	mailAddress = regexp.MustCompile(`(?i)^\s*mailto:[^@\s?]+@[^@\s?]`)
)

// reachesNobody says whether a link off the site lacks a part of its address.
func reachesNobody(destination string) bool {
	scheme, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(destination)), ":")
	switch scheme {
	case "http", "https", "ftp":
		return !webAddress.MatchString(destination)
	case "mailto":
		return !mailAddress.MatchString(destination)
	}
	return false
}

// elsewhere are the ways off the site that a link may go; markdown refuses all others, for pictures too.
var elsewhere = regexp.MustCompile(`(?i)^\s*(?:ftp|geo|https?|mailto|sms|tel):`)

// image checks one picture. A picture of another site would not be shown: a page fetches nothing from elsewhere, so
// that it works without a network and tells nobody who reads it.
func (c *textCheck) image(l *markdown.Link) {
	if elsewhere.MatchString(l.Destination) {
		c.fault(l.DestinationSpan, "image-elsewhere", "this picture is on another site, and a page shows only its own",
			"save the picture in the content folder, if its owner allows that, and write the way to it")
	}
	text := strings.ToLower(oneLine(l.Text))
	if text == "" {
		return // markdown reports it
	}
	if slices.Contains(emptyDescriptions, text) || isFileName(text, l.Destination) {
		c.fault(l.Span, "image-name", fmt.Sprintf("%q does not say what this picture shows", oneLine(l.Text)),
			"write between the brackets what a reader should see in it")
	}
}

// emptyDescriptions are words that are where a description should (WCAG 2.2, failure F30).
var emptyDescriptions = []string{"image", "picture", "photo", "figure", "graphic", "imagen", "foto", "figura", "dibujo"}

var pictureName = regexp.MustCompile(`^\S+\.(?:avif|gif|jpe?g|png|svg|tiff?|webp)$`)

// isFileName says whether a description is the name of a file: of any picture, or of the one that is shown.
func isFileName(text, destination string) bool {
	name := strings.ToLower(path.Base(destination))
	stem := strings.TrimSuffix(name, path.Ext(name))
	return pictureName.MatchString(text) || text == name || text == stem && strings.ContainsAny(stem, "-_0123456789")
}

// emptyTexts are link texts that say nothing to those who go from link to link (WCAG 2.2, 2.4.4).
var emptyTexts = []string{
	"click here", "here", "link", "more", "read more", "see more", "this", "this link", "this page",
	"aquí", "clic aquí", "este enlace", "esta página", "haga clic aquí", "leer más", "más", "pulse aquí", "ver más",
	"enlace",
}

func (c *textCheck) linkText(l *markdown.Link) {
	text := strings.Trim(oneLine(l.Text), " .,;:!…»«“”\"'")
	if slices.Contains(emptyTexts, strings.ToLower(text)) {
		c.advise(l.Span, "link-empty-words", fmt.Sprintf("%q does not say where this link leads", oneLine(l.Text)),
			"write between the brackets what the reader finds there")
	}
}
