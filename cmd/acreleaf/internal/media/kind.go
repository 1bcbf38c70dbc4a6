// Package media is the list of the kinds of files that a site publishes beside its pages, and what a file of each kind
// must be like. A file that a browser would run, with the rights of the site, is of none of them.
//
// It must not read files, or know who links to them.
package media

import (
	"bytes"
	"net/http"
	"path"
	"slices"
	"strings"
)

// A Use is what a reader does with a file.
type Use uint8

// The uses.
const (
	Picture  Use = iota // a page shows it
	Document            // a browser shows it, or saves it for another program
	Play                // a browser plays it
)

// A Kind is a kind of files.
type Kind struct {
	Ending string // of the name, in small letters
	Type   string // as the IANA media types name it
	Use    Use
	Most   int64                  // bytes
	begins func(head []byte) bool // what Head holds
	whole  func(w *walk) error    // whether all of it is there; nil where that cannot be told, or CheckSVG tells it
}

// Sizes in bytes.
const (
	Heavy       = 2 << 20 // more than this is much for a picture
	mostPicture = 20 << 20
	mostOther   = 100 << 20
)

// Head is how many bytes at the start of a file tell its kind.
const Head = 512

// Kinds are all kinds, in the order of the manual.
var Kinds = []Kind{
	{".png", "image/png", Picture, mostPicture, at(0, "\x89PNG\r\n\x1a\n"), wholePNG},
	{".jpg", "image/jpeg", Picture, mostPicture, at(0, "\xff\xd8\xff"), wholeJPEG},
	{".jpeg", "image/jpeg", Picture, mostPicture, at(0, "\xff\xd8\xff"), wholeJPEG},
	{".gif", "image/gif", Picture, mostPicture, any(at(0, "GIF87a"), at(0, "GIF89a")), wholeGIF},
	{".webp", "image/webp", Picture, mostPicture, all(at(0, "RIFF"), at(8, "WEBP")), wholeWebP},
	{".avif", "image/avif", Picture, mostPicture, any(at(4, "ftypavif"), at(4, "ftypavis")), wholeAVIF},
	{".svg", "image/svg+xml", Picture, mostPicture, func([]byte) bool { return true }, nil}, // CheckSVG reads all of it
	{".pdf", "application/pdf", Document, mostOther, at(0, "%PDF-"), wholePDF},
	{".csv", "text/csv; charset=utf-8", Document, mostOther, isText, nil},
	{".txt", "text/plain; charset=utf-8", Document, mostOther, isText, nil},
	{".json", "application/json", Document, mostOther, isText, nil},
	{".docx", "application/vnd.openxmlformats-officedocument.wordprocessingml.document", Document, mostOther,
		isZIP, wholeZIP},
	{".xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", Document, mostOther,
		isZIP, wholeZIP},
	{".epub", "application/epub+zip", Document, mostOther, all(isZIP, at(30, "mimetypeapplication/epub+zip")), wholeZIP},
	{".zip", "application/zip", Document, mostOther, isZIP, wholeZIP},
	{".mp3", "audio/mpeg", Play, mostOther, any(at(0, "ID3"), isFrame), wholeMP3},
	{".mp4", "video/mp4", Play, mostOther, at(4, "ftyp"), wholeMP4},
	{".webm", "video/webm", Play, mostOther, at(0, "\x1a\x45\xdf\xa3"), wholeWebM},
}

// Of gives the kind of a file by its name.
func Of(name string) (Kind, bool) {
	ending := strings.ToLower(path.Ext(name))
	i := slices.IndexFunc(Kinds, func(k Kind) bool { return k.Ending == ending })
	if i < 0 {
		return Kind{}, false
	}
	return Kinds[i], true
}

func at(offset int, sign string) func([]byte) bool {
	return func(head []byte) bool {
		return len(head) >= offset && bytes.HasPrefix(head[offset:], []byte(sign))
	}
}

func any(tests ...func([]byte) bool) func([]byte) bool {
	return func(head []byte) bool {
		return slices.ContainsFunc(tests, func(test func([]byte) bool) bool { return test(head) })
	}
}

func all(tests ...func([]byte) bool) func([]byte) bool {
	return func(head []byte) bool {
		return !slices.ContainsFunc(tests, func(test func([]byte) bool) bool { return !test(head) })
	}
}

var isZIP = at(0, "PK\x03\x04")

// isFrame says whether a sound begins with a frame of MPEG audio: eleven bits that are set, of layer III.
func isFrame(head []byte) bool { return len(head) > 1 && head[0] == 0xff && head[1]&0xe6 == 0xe2 }

// isText says whether a browser takes it for text, and not for a page, whatever a server says of it. The rule is that
// of the standard "MIME Sniffing".
func isText(head []byte) bool { return strings.HasPrefix(http.DetectContentType(head), "text/plain") }
