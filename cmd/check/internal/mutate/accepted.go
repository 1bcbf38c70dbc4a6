package mutate

import (
	"fmt"
	"os"
	"strings"
)

// Accepted are the survivors that mean the same as the code, by Key, each with the reason.
type Accepted map[string]string

// ReadAccepted reads the file of accepted survivors: a key a line and, on the next line, its reason set in by two
// spaces. Empty lines and those with a # are for people. A file that is not there accepts nothing.
func ReadAccepted(name string) (Accepted, error) {
	text, err := os.ReadFile(name)
	if os.IsNotExist(err) {
		return Accepted{}, nil
	}
	if err != nil {
		return nil, err
	}
	accepted, last := Accepted{}, ""
	for i, line := range strings.Split(string(text), "\n") {
		reason, is := strings.CutPrefix(line, "  ")
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
		case is && last == "":
			return nil, fmt.Errorf("%s:%d: a reason stands below the survivor that it is for", name, i+1)
		case is:
			accepted[last] += strings.TrimSpace(reason) + " "
		case last != "" && accepted[last] == "":
			return nil, fmt.Errorf("%s:%d: the survivor above has no reason; write it below, set in by two spaces", name, i+1)
		default:
			last = line
			accepted[last] = ""
		}
	}
	if last != "" && accepted[last] == "" {
		return nil, fmt.Errorf("%s: the last survivor has no reason; write it below, set in by two spaces", name)
	}
	return accepted, nil
}
