package media

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// IsSVG says whether a kind is a drawing, of which CheckSVG reads all.
func (k Kind) IsSVG() bool { return k.Ending == ".svg" }

// Limits of a drawing. A browser takes long over more.
const (
	mostDepth    = 64
	mostElements = 50_000
	mostShown    = 200_000 // with the copies that <use> makes
)

// A drawing is an SVG file while it is read. Opened alone it is a document of the site, with the site's rights, so it
// may have nothing but what draws: the names in drawing.go. None of these does anything in another language of the Web
// either, so that it does not matter which one a browser takes them for.
type drawing struct {
	source  *message.Source
	decoder *xml.Decoder
	open    []xml.Name
	count   int
	style   []byte       // the text of the style element that is open
	styleAt message.Span // where it begins
	copies  copies
	said    message.List
}

// mostSaid messages are enough to see what a file is.
const mostSaid = 5

const saveAgain = `save the drawing again as "plain SVG", or as PNG`

// CheckSVG reports what a drawing may not have.
func CheckSVG(source *message.Source) message.List {
	d := &drawing{source: source, decoder: xml.NewDecoder(bytes.NewReader(source.Text)), copies: newCopies()}
	for len(d.said) < mostSaid {
		start := int(d.decoder.InputOffset())
		token, err := d.decoder.Token()
		span := d.span(start)
		if errors.Is(err, io.EOF) {
			if d.count == 0 {
				d.say(span, "svg-markup", "there is no drawing in this file", saveAgain)
			}
			if n := d.copies.shown(); n > mostShown {
				d.say(message.Span{}, "svg-markup", fmt.Sprintf("the <use> elements of this drawing show more than %d "+
					"elements, over which a browser stops", mostShown), "save it as PNG")
			}
			break
		}
		if err != nil {
			d.say(span, "svg-markup", "this drawing is not written as XML must be: "+plainly(err), saveAgain)
			break
		}
		if !d.read(token, span) {
			break
		}
	}
	return d.said
}

// plainly is an error of the XML reader without its line, which the message has.
func plainly(err error) string {
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		return syntax.Msg
	}
	return strings.TrimPrefix(err.Error(), "xml: ")
}

// span is from an offset to where the reader is, to the end of the line at most.
func (d *drawing) span(start int) message.Span {
	end := min(int(d.decoder.InputOffset()), len(d.source.Text))
	start = min(start, end)
	if line := bytes.IndexByte(d.source.Text[start:end], '\n'); line > 0 {
		end = start + line
	}
	return message.Span{Start: start, End: end}
}

func (d *drawing) say(span message.Span, id, text, note string) {
	d.said = append(d.said, message.Message{ID: id, Source: d.source, Span: span, Text: text, Note: note})
}

// declaration is the one that a drawing may begin with. Another could name an encoding in which the same bytes are
// other text.
var declaration = regexp.MustCompile(`^version=["']1\.[01]["'](\s+encoding=["'](?i:utf-8)["'])?` +
	`(\s+standalone=["'](yes|no)["'])?\s*$`)

// read looks at the next part of a drawing, and says whether to go on.
func (d *drawing) read(token xml.Token, span message.Span) bool {
	switch part := token.(type) {
	case xml.ProcInst:
		if part.Target == "xml" && declaration.Match(part.Inst) {
			return true
		}
		d.say(span, "svg-markup", fmt.Sprintf("a drawing may not have this line <?%s ...?>: such lines bring a style or "+
			"an encoding from elsewhere", part.Target), "take it out, or "+saveAgain)
	case xml.Directive:
		d.say(span, "svg-markup", "a drawing may not have <!DOCTYPE ...> or another <!...>, which can change what the rest "+
			"means", "take it out to its last >, or "+saveAgain)
		return false // what it defines would be reported as unknown
	case xml.StartElement:
		return d.start(part, span)
	case xml.EndElement:
		if part.Name == (xml.Name{Space: svgSpace, Local: "style"}) {
			d.checkStyle("<style>", string(d.style), d.styleAt)
			d.style = nil
		}
		d.open = d.open[:len(d.open)-1]
		d.copies.end()
	case xml.CharData:
		if len(d.open) > 0 && d.open[len(d.open)-1].Local == "style" {
			if d.style == nil {
				d.styleAt = span
			}
			d.style = append(d.style, part...)
		}
	}
	return true
}

// start looks at an element and its attributes.
func (d *drawing) start(e xml.StartElement, span message.Span) bool {
	d.count++
	d.open = append(d.open, e.Name)
	d.copies.start(e)
	switch {
	case d.count == 1 && e.Name != xml.Name{Space: svgSpace, Local: "svg"}:
		d.say(span, "svg-markup", fmt.Sprintf("this file begins with <%s>, and a drawing begins with "+
			`<svg xmlns="%s">`, e.Name.Local, svgSpace), saveAgain)
		return false
	case len(d.open) > mostDepth:
		d.say(span, "svg-markup", fmt.Sprintf("elements are more than %d deep in each other here", mostDepth), saveAgain)
		return false
	case d.count > mostElements:
		d.say(span, "svg-markup", fmt.Sprintf("this drawing has more than %d elements", mostElements), "save it as PNG")
		return false
	case silent[e.Name.Space]:
		return true // what the program that drew it notes for itself; no browser reads it
	case e.Name.Space != svgSpace || !elements[e.Name.Local]:
		d.say(span, "svg-element", fmt.Sprintf("a drawing may not have <%s>%s", e.Name.Local, reasons[e.Name.Local]),
			"take it out with all that is in it, or "+saveAgain)
		return true
	}
	for _, a := range e.Attr {
		d.attribute(e.Name.Local, a, span)
	}
	return true
}

// attribute looks at an attribute of an element that draws.
func (d *drawing) attribute(element string, a xml.Attr, span message.Span) {
	name := a.Name.Local
	of := "of <" + element + ">"
	switch {
	case a.Name.Space == "xmlns" || a.Name.Space == "" && name == "xmlns": // a name for a language, which is not fetched
	case silent[a.Name.Space]:
	case a.Name.Space == linkSpace && inertLink[name]:
	case a.Name.Space == xmlSpace && (name == "space" || name == "lang"):
	case name == "href" && (a.Name.Space == "" || a.Name.Space == linkSpace):
		if !leadsInside(element, a.Value) {
			d.say(span, "svg-reference", fmt.Sprintf("the href %s leads out of the drawing: %s", of, short(a.Value)),
				"let it lead to a part of the drawing, as #name does; or "+saveAgain)
		}
	case a.Name.Space != "" || !attributes[name] && !strings.HasPrefix(name, "aria-") && !strings.HasPrefix(name, "data-"):
		reason := ""
		if strings.HasPrefix(strings.ToLower(name), "on") {
			reason = ": a browser runs what is in it"
		}
		d.say(span, "svg-attribute", fmt.Sprintf("a drawing may not have the attribute %s %s%s", name, of, reason),
			"take it out, or "+saveAgain)
	case attributes[name] && !plainText[name]:
		d.checkStyle("the attribute "+name+" "+of, a.Value, span)
	}
}

// leadsInside says whether a href leads to a part of the drawing, or has the picture in it.
func leadsInside(element, href string) bool {
	if strings.HasPrefix(href, "#") {
		return true
	}
	return element == "image" && pictureInside.MatchString(href)
}

var pictureInside = regexp.MustCompile(`^data:image/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*$`)

func short(text string) string {
	const most = 60
	if len(text) > most {
		text = strings.ToValidUTF8(text[:most], "") + "..."
	}
	return fmt.Sprintf("%q", text)
}
