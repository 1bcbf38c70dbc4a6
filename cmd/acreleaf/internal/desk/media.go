package desk

import (
	"path"
	"strings"

	"acreleaf/cmd/acreleaf/internal/media"
)

// ownTypes are the media types of the files that a site brings along itself. Neither these nor those of package media
// are asked of the system: on some computers another program has written there that a script is plain text, and a
// browser then does not run it.
var ownTypes = map[string]string{
	".css":  "text/css; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".wasm": "application/wasm",
}

// mediaType is what a file is, as the IANA media types name it; bytes to be saved when it is none of these.
func mediaType(name string) string {
	if kind, known := media.Of(name); known {
		return kind.Type
	}
	if own, known := ownTypes[strings.ToLower(path.Ext(name))]; known {
		return own
	}
	return "application/octet-stream"
}
