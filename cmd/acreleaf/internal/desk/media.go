package desk

import (
	"path"
	"strings"
)

// mediaTypes are what browsers need to be told. They are not asked of the system: on some computers another program has
// written there that a script is plain text, and a browser then does not run it.
var mediaTypes = map[string]string{
	".avif":  "image/avif",
	".css":   "text/css; charset=utf-8",
	".csv":   "text/csv; charset=utf-8",
	".gif":   "image/gif",
	".ico":   "image/vnd.microsoft.icon",
	".jpeg":  "image/jpeg",
	".jpg":   "image/jpeg",
	".js":    "text/javascript; charset=utf-8",
	".json":  "application/json",
	".mp3":   "audio/mpeg",
	".mp4":   "video/mp4",
	".pdf":   "application/pdf",
	".png":   "image/png",
	".svg":   "image/svg+xml",
	".txt":   "text/plain; charset=utf-8",
	".vtt":   "text/vtt; charset=utf-8",
	".wasm":  "application/wasm",
	".webm":  "video/webm",
	".webp":  "image/webp",
	".woff2": "font/woff2",
	".xml":   "application/xml",
}

// mediaType is what the file is, as the IANA media types name it; bytes to be saved when it is none of these.
func mediaType(name string) string {
	if kind, known := mediaTypes[strings.ToLower(path.Ext(name))]; known {
		return kind
	}
	return "application/octet-stream"
}
