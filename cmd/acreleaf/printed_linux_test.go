package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/cli"
)

// No command ends well when what it printed has no room. The file is the kernel's own, which is always full.
func TestNoRoomForWhatIsPrinted(t *testing.T) {
	const want = "error: what this command prints could not be written: no space left on device\n" +
		"   note: free some space, or let it print to another place, and try again\n"
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer full.Close()
	given := []string{"nitrate=12 ppm NO3-N", "depth=12 in"}
	site := "--from=testdata/site/content"
	for _, words := range [][]string{
		{"reckon"}, append([]string{"reckon", "soil-nitrogen"}, given...),
		append([]string{"reckon", "soil-nitrogen", "--json"}, given...), {"proof", site}, {"proof", "--json", site},
		{"proof", "--sarif", site}, {"proof", "--explain=12 lb"}, {"--help"}, {"reckon", "--help"}, {"--version"},
		{"--licences"}, {"press", site, "--to=" + t.TempDir() + "/public"},
	} {
		var said bytes.Buffer
		if exit := cli.Run(words, full, &said); exit != 1 || said.String() != want {
			t.Errorf("acreleaf %s: exit code %d\n%s", strings.Join(words, " "), exit, &said)
		}
	}
}
