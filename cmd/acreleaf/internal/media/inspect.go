package media

import (
	"fmt"
	"net/http"
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Refused says why a file is not published, by its name, and what to do. It is for a name that has no kind.
func Refused(name string) (text, note string) {
	ending := strings.ToLower(path.Ext(name))
	if ending == "" {
		return "a file without an ending in its name is not published: no browser would know what it is",
			"give it the ending of its kind, such as .pdf"
	}
	text = fmt.Sprintf("a file whose name ends in %s is not published", ending)
	if running[ending] {
		return text + ": a browser would run what is in it as part of the site",
			"write what it says as a page, link to it on another site, or put it into a ZIP file"
	}
	if better := instead[ending]; better != "" {
		return text + ": few readers could open it", "save it as " + better
	}
	return text, "save it as one of " + endings() + "; or put it into a ZIP file"
}

// running are the endings of what a browser runs, or takes markup from.
var running = map[string]bool{".html": true, ".htm": true, ".xhtml": true, ".xht": true, ".shtml": true, ".mhtml": true,
	".mht": true, ".xml": true, ".xsl": true, ".xslt": true, ".rss": true, ".atom": true, ".mml": true, ".js": true,
	".mjs": true, ".css": true, ".wasm": true, ".swf": true, ".svgz": true, ".hta": true, ".php": true}

// instead says what to save a file as.
var instead = map[string]string{".heic": "JPEG", ".heif": "JPEG", ".tif": "PNG", ".tiff": "PNG", ".bmp": "PNG",
	".ico": "PNG", ".doc": "PDF or .docx", ".xls": ".xlsx or .csv", ".ppt": "PDF", ".pptx": "PDF", ".odt": "PDF or .docx",
	".ods": ".xlsx or .csv", ".mov": "MP4", ".avi": "MP4", ".mkv": "WebM", ".wav": "MP3", ".m4a": "MP3", ".ogg": "MP3"}

func endings() string {
	list := make([]string, len(Kinds))
	for i, k := range Kinds {
		list[i] = k.Ending
	}
	return strings.Join(list, " ")
}

// TooLarge reports a file that has more bytes than one of its kind may have.
func (k Kind) TooLarge() message.Message {
	note := "put it on a server for such files, and link to it there"
	if k.Use == Picture {
		note = "save it smaller: 1,600 dots are enough for its longer side"
	}
	return message.Message{ID: "file-large", Note: note,
		Text: fmt.Sprintf("this file has more than the %d MB that one whose name ends in %s may have", k.Most>>20, k.Ending)}
}

// IsHeavy gives advice about a picture that is slow to load; nil for one that is not.
func (k Kind) IsHeavy(size int64) message.List {
	if k.Use != Picture || size <= Heavy || size > k.Most {
		return nil
	}
	return message.List{{Level: message.Advice, ID: "picture-heavy",
		Text: fmt.Sprintf("this picture has %.1f MB: on a slow connection a reader waits long for it",
			float64(size)/(1<<20)),
		Note: "save it smaller: 1,600 dots are enough for its longer side, and 0.5 MB for most pictures"}}
}

// CheckHead compares the first bytes of a file with those of its kind. A name can be given to anything; a browser that
// is told nothing by a server goes by the bytes.
func (k Kind) CheckHead(head []byte) message.List {
	if k.begins(head) {
		return nil
	}
	return message.List{{ID: "file-bytes",
		Text: fmt.Sprintf("the name of this file ends in %s, and it does not begin like such a file: %s",
			k.Ending, guess(head)),
		Note: "save it again from the program that made it, as its name says"}}
}

// guess says what a file seems to be.
func guess(head []byte) string {
	kind := http.DetectContentType(head)
	switch {
	case len(head) == 0:
		return "it is empty"
	case strings.HasPrefix(kind, "text/html"):
		return "it seems to be a web page"
	case strings.HasPrefix(kind, "text/xml"):
		return "it seems to be XML"
	case strings.HasPrefix(kind, "text/"):
		return "it seems to be text"
	case kind == "application/octet-stream":
		return "it is no file of a known kind"
	}
	return "it seems to be " + kind
}
