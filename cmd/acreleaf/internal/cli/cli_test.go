package cli

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What the commands print is held by the scripts in cmd/acreleaf/testdata; here are the exit codes, which a script
// only tells apart as good and bad.
func TestExitCodes(t *testing.T) {
	t.Chdir(siteFolder(t))
	for _, c := range []struct {
		line string
		code int
	}{
		{"", exitClean},
		{"--help", exitClean},
		{"press --help", exitClean},
		{"reckon", exitClean},
		{"reckon tree-density pattern=square tree=18ft", exitClean},
		{"proof", exitClean},
		{"press", exitClean},
		{"proof --from faulty", exitFault},
		{"proof --json", exitClean},
		{"proof --sarif", exitClean},
		{"proof --today 2026-11-02", exitClean},
		{"proof --from faulty --json", exitFault},
		{"proof --from faulty --sarif", exitFault},
		{"proof --from nowhere --json", exitFault},
		{"proof --json --sarif", exitUsage},
		{"proof --today 2026-02-29", exitUsage},
		{"proof --today tomorrow", exitUsage},
		{"proof --today", exitUsage},
		{"proof --language es", exitUsage},      // of what sentence?
		{"press --today 2026-11-02", exitUsage}, // a press reads no clock
		{"press --from faulty", exitFault},
		{"handout", exitUsage},
		{"handout report --cards 0", exitUsage},
		{"handout report --cards 5-2", exitUsage},
		{"handout report --paper a5", exitUsage},
		{"handout report", exitFault}, // there is none
		{"handout report --to content/handout", exitUsage},
		{"press --from nowhere", exitFault},
		{"desk --from nowhere", exitFault},
		{"press --to content/home.md/x", exitUsage}, // it lies in the content folder
		{"press --to taken", exitFault},             // it is a file
		{"reckon soil-nitrogn", exitFault},
		{"reckon soil-nitrogn --json", exitFault},
		{"reckon tree-density pattern=rectangle tree=18ft", exitFault},
		{"pres", exitUsage},
		{"press here", exitUsage},
		{"press --too here", exitUsage},
		{"press --to", exitUsage},
		{"press --to content", exitUsage},
		{"desk --port -1", exitUsage},
	} {
		var out, err bytes.Buffer
		if code := Run(strings.Fields(c.line), &out, &err); code != c.code {
			t.Errorf("acreleaf %s: exit code %d, not %d\n%s%s", c.line, code, c.code, &out, &err)
		}
		asked := strings.Contains(c.line, "--json") || strings.Contains(c.line, "--sarif")
		if failed := c.code != exitClean; failed && (!asked || c.code == exitUsage) {
			if out.Len() > 0 || !strings.HasPrefix(err.String(), "error: ") && !strings.Contains(err.String(), ": error: ") {
				t.Errorf("acreleaf %s: a failure is told on standard error alone\n%s--\n%s", c.line, &out, &err)
			}
		}
	}
}

// siteFolder makes a folder with a site that is good and one that is not.
func siteFolder(t *testing.T) string {
	t.Helper()
	const office = "office: Test Row Orchard Office\n"
	folder := t.TempDir()
	for name, text := range map[string]string{
		"content/site.yaml": office, "faulty/site.yaml": office, "taken": "",
		"content/home.md": "---\ntitle: Test Row\nsummary: No guides yet.\n---\n",
		"faulty/home.md":  "---\ntitle: Test Row\nsummary: No guides yet.\n---\nSee [it](guides/gone.md).\n",
	} {
		write(t, filepath.Join(folder, filepath.FromSlash(name)), text)
	}
	return folder
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Every key of the JSON is there even when it holds nothing, so that a program that reads it needs no ifs.
func TestJSONKeys(t *testing.T) {
	var out, err bytes.Buffer
	code := Run([]string{"reckon", "--json", "tree-density", "pattern=square", "tree=18 ft"}, &out, &err)
	var found map[string]json.RawMessage
	if code != exitClean || json.Unmarshal(out.Bytes(), &found) != nil {
		t.Fatalf("exit code %d: %s%s", code, &out, &err)
	}
	for key, start := range map[string]string{
		"calculation": `"tree-density"`,
		"given":       "{", "answers": "{", "says": "[", "work": "[", "notes": "[", "cautions": "[",
	} {
		if !strings.HasPrefix(string(found[key]), start) {
			t.Errorf("%s is %s", key, found[key])
		}
		delete(found, key)
	}
	if len(found) > 0 {
		t.Errorf("keys that nobody asked for: %v", found)
	}
}
