package output

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"acreleaf/cmd/acreleaf/internal/message"
)

// Check finds output paths that cannot all be written, or that would not be the same on every disk and server. The
// messages have no place, because a path may come from several sources.
func Check(paths []string) message.List {
	var l message.List
	same := map[string]string{} // lower-case path → the path that came first
	told := map[string]bool{}   // what paths that are too long begin with
	for _, p := range paths {
		if text := checkPath(p); text != "" {
			l = append(l, message.Message{ID: "output-name", Text: text,
				Note: "rename the source file: small letters, digits and hyphens always work"})
			continue
		}
		if len(p) > longestPath {
			if told[p[:longestPath]] {
				continue // another one in the same folder
			}
			told[p[:longestPath]] = true
			l = append(l, message.Message{ID: "output-name",
				Text: fmt.Sprintf("the name %q has %d bytes, and may have %d", shortened(p), len(p), longestPath),
				Note: "put the source file into fewer folders, or give them shorter names"})
			continue
		}
		folded := norm.NFC.String(strings.ToLower(p))
		first, taken := same[folded]
		switch {
		case !taken:
			same[folded] = p
		case first == p:
			l = append(l, message.Message{ID: "output-twice",
				Text: fmt.Sprintf("two files want to be %q in the site", p),
				Note: "rename one of the two source files"})
		case !strings.EqualFold(first, p):
			l = append(l, message.Message{ID: "output-accent",
				Text: fmt.Sprintf("there are two files %q: the letters with accents are written as one sign in one name, "+
					"and as two in the other, and many disks treat them as one", norm.NFC.String(p)),
				Note: "use letters without accents, and rename one of the two source files"})
		default:
			l = append(l, message.Message{ID: "output-case",
				Text: fmt.Sprintf("%q and %q differ only in capitals, and many disks treat them as one", first, p),
				Note: "use small letters only, and rename one of the two source files"})
		}
	}
	return slices.Concat(l, checkFolders(same), checkSpelling(paths))
}

// checkSpelling finds folders whose names differ only in capitals. Of each two it tells once.
func checkSpelling(paths []string) message.List {
	first, told := map[string]string{}, map[string]bool{}
	var l message.List
	for _, p := range paths {
		for folder := path.Dir(p); folder != "." && folder != "/"; folder = path.Dir(folder) {
			folded := strings.ToLower(folder)
			one, known := first[folded]
			if !known {
				first[folded] = folder
				continue
			}
			// Where the folders that they lie in differ, those are told.
			if one == folder || told[folded] || path.Dir(one) != path.Dir(folder) {
				continue
			}
			told[folded] = true
			l = append(l, message.Message{ID: "output-case",
				Text: fmt.Sprintf("the folders %q and %q differ only in capitals, and many disks treat them as one",
					one, folder),
				Note: "use small letters only, and put the files of both into one folder"})
		}
	}
	return l
}

// checkFolders finds files that are where another file needs a folder.
func checkFolders(same map[string]string) message.List {
	found := map[string]string{}
	for folded, p := range same {
		for folder := path.Dir(folded); folder != "."; folder = path.Dir(folder) {
			if file, taken := same[folder]; taken && (found[file] == "" || p < found[file]) {
				found[file] = p
			}
		}
	}
	var l message.List
	for file, p := range found {
		l = append(l, message.Message{ID: "output-folder",
			Text: fmt.Sprintf("%q is a file, and %q needs a folder of that name", file, p),
			Note: "rename one of the two source files"})
	}
	message.Sort(l)
	return l
}

// checkPath gives what is wrong with a path, or nothing.
func checkPath(p string) string {
	switch {
	case p == "":
		return "a file of the site has no name"
	case strings.HasPrefix(p, "/"):
		return fmt.Sprintf("%q must not begin with a slash: it would lie outside the site's folder", p)
	}
	for element := range strings.SplitSeq(p, "/") {
		if text := checkElement(element); text != "" {
			return fmt.Sprintf("the name %q %s", p, text)
		}
	}
	return ""
}

const (
	longestElement = 255 // bytes, the limit of the usual file systems
	longestPath    = 800 // bytes: macOS allows 1,024 with the folder that the site is in, Linux 4,096
)

func checkElement(element string) string {
	switch {
	case element == "":
		return "has two slashes in a row, or one at its end"
	case element == "." || element == "..":
		return fmt.Sprintf("has the step %q, which may lead out of the site's folder", element)
	case len(element) > longestElement:
		return fmt.Sprintf("has a part longer than %d bytes", longestElement)
	case strings.HasPrefix(strings.ToLower(element), ownPrefix):
		return fmt.Sprintf("begins a part with %q, which Acreleaf keeps for itself", ownPrefix)
	case strings.ContainsAny(element, `<>:"|?*\`) || strings.ContainsFunc(element, isControl):
		return "has a character that not every disk allows"
	case strings.HasSuffix(element, ".") || strings.HasSuffix(element, " "):
		return "has a part that ends with a dot or a space, which some disks drop"
	case IsDevice(element):
		return fmt.Sprintf("has the part %q, which names a device on Windows", element)
	}
	return ""
}

func isControl(r rune) bool { return r < 0x20 || r == 0x7F || r == '\uFFFD' }

// IsDevice knows the names that Windows keeps for devices, whatever the letters after a dot, and with spaces before it.
// The raised digits are those of an old code page of Windows, which takes them for the plain ones.
func IsDevice(element string) bool {
	stem, _, _ := strings.Cut(strings.ToLower(element), ".")
	stem = strings.TrimRight(stem, " ")
	if slices.Contains([]string{"con", "prn", "aux", "nul", "conin$", "conout$"}, stem) {
		return true
	}
	port, isCom := strings.CutPrefix(stem, "com")
	if !isCom {
		port, isCom = strings.CutPrefix(stem, "lpt")
	}
	return isCom && utf8.RuneCountInString(port) == 1 && strings.Contains("0123456789¹²³", port)
}
