package media

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"image"
	_ "image/gif" // so that image knows the formats
	_ "image/jpeg"
	_ "image/png"
	"io"
	"math"
	"strconv"
	"strings"
)

// A Size is how many dots a picture has across and down. The zero value is of a picture that does not tell.
type Size struct{ Width, Height int }

// mostRead is how much of a picture is looked at for its size: a camera may put a small picture before it.
const mostRead = 256 << 10

// mostDots is more than any picture for a page has across or down.
const mostDots = 1 << 16

// SizeOf reads the size of a picture from the start of its file.
func (k Kind) SizeOf(file io.Reader) Size {
	head, err := io.ReadAll(io.LimitReader(file, mostRead))
	if err != nil {
		return Size{} // whoever publishes the file says so
	}
	var s Size
	switch k.Ending {
	case ".svg":
		s = sizeOfSVG(head)
	case ".webp":
		s = sizeOfWebP(head)
	case ".avif":
		s = sizeOfAVIF(head)
	default:
		config, _, err := image.DecodeConfig(bytes.NewReader(head))
		if err != nil {
			return Size{}
		}
		s = Size{config.Width, config.Height}
		if isTurned(head) {
			s = Size{s.Height, s.Width}
		}
	}
	if s.Width < 1 || s.Height < 1 || s.Width > mostDots || s.Height > mostDots {
		return Size{}
	}
	return s
}

// isTurned says whether a camera was held upright, so that a browser turns its JPEG (Exif 2.3, tag 0x0112, 5 to 8).
func isTurned(head []byte) bool {
	at := bytes.Index(head, []byte("Exif\x00\x00"))
	if at < 0 || !bytes.HasPrefix(head, []byte("\xff\xd8")) {
		return false
	}
	tiff := head[at+6:]
	var order binary.ByteOrder = binary.BigEndian
	if bytes.HasPrefix(tiff, []byte("II")) {
		order = binary.LittleEndian
	}
	if len(tiff) < 8 {
		return false
	}
	const entry = 12
	from := int(order.Uint32(tiff[4:]))
	if from < 0 || from+2 > len(tiff) {
		return false
	}
	for i := range int(order.Uint16(tiff[from:])) {
		field := from + 2 + i*entry
		if field+entry > len(tiff) {
			return false
		}
		if order.Uint16(tiff[field:]) == 0x0112 {
			turn := order.Uint16(tiff[field+8:])
			return turn >= 5 && turn <= 8
		}
	}
	return false
}

// column is about how wide the text of a page is, in dots.
const column = 640

// sizeOfSVG takes the width and the height of a drawing in dots. A drawing that has none has no size of its own: its
// viewBox says how wide it is for its height, in whatever measure, and it is shown as large as the text is wide.
func sizeOfSVG(head []byte) Size {
	decoder := xml.NewDecoder(bytes.NewReader(head))
	for {
		token, err := decoder.Token()
		if err != nil {
			return Size{}
		}
		root, is := token.(xml.StartElement)
		if !is {
			continue
		}
		values := map[string]string{}
		for _, a := range root.Attr {
			values[a.Name.Local] = a.Value
		}
		dots := func(v float64) int {
			if !(v >= 1 && v < mostDots) {
				return 0
			}
			return int(v + 0.5)
		}
		if s := (Size{dots(length(values["width"])), dots(length(values["height"]))}); s.Width > 0 && s.Height > 0 {
			return s
		}
		box := strings.FieldsFunc(values["viewBox"], func(r rune) bool { return r == ' ' || r == ',' })
		if len(box) != 4 {
			return Size{}
		}
		wide, high := length(box[2]), length(box[3])
		s := Size{dots(column * min(1, wide/high)), dots(column * min(1, high/wide))}
		if s.Width == 0 || s.Height == 0 {
			return Size{}
		}
		return s
	}
}

// length reads a length of a drawing; no number for one that is in percent or the like.
func length(text string) float64 {
	v, err := strconv.ParseFloat(strings.TrimSuffix(strings.TrimSpace(text), "px"), 64)
	if err != nil || !(v > 0) || math.IsInf(v, 0) {
		return math.NaN()
	}
	return v
}

// sizeOfWebP reads the first chunk (RFC 9649): the canvas of an extended file, or the frame of a simple one.
func sizeOfWebP(head []byte) Size {
	const first = 12 // after RIFF, the length and WEBP
	if len(head) < first+18 {
		return Size{}
	}
	data := head[first+8:]
	low := binary.LittleEndian
	switch string(head[first : first+4]) {
	case "VP8X":
		three := func(b []byte) int { return int(b[0]) | int(b[1])<<8 | int(b[2])<<16 }
		return Size{three(data[4:]) + 1, three(data[7:]) + 1}
	case "VP8L":
		bits := low.Uint32(data[1:])
		return Size{int(bits&0x3fff) + 1, int(bits>>14&0x3fff) + 1}
	case "VP8 ":
		return Size{int(low.Uint16(data[6:]) & 0x3fff), int(low.Uint16(data[8:]) & 0x3fff)}
	}
	return Size{}
}

// sizeOfAVIF takes the largest of the sizes that the file states (ISO/IEC 23008-12, the property ispe): parts of the
// picture have theirs too.
func sizeOfAVIF(head []byte) Size {
	var s Size
	for {
		_, after, found := bytes.Cut(head, []byte("ispe"))
		if !found || len(after) < 12 {
			return s
		}
		own := Size{int(binary.BigEndian.Uint32(after[4:])), int(binary.BigEndian.Uint32(after[8:]))}
		if own.Width <= mostDots && own.Height <= mostDots && own.Width*own.Height > s.Width*s.Height {
			s = own
		}
		head = after
	}
}
