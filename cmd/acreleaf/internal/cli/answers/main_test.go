package main

import (
	"encoding/json"
	"strings"
	"testing"

	"acreleaf/cmd/acreleaf/internal/cli"
)

// Asked twice and between others, a command answers what it answers alone.
func TestAnswersAreThoseOfTheCommandLine(t *testing.T) {
	asked := [][]string{
		{"reckon", "soil-nitrogen", "nitrate=12 ppm NO3-N", "depth=12 in", "--json"},
		{"reckon", "soil-nitrogen", "nitrate=much", "depth=12 in", "--json"},
		{"reckon", "--no-such-option"},
		{"reckon", "soil-nitrogen", "nitrate=12 ppm NO3-N", "depth=12 in", "--json"},
	}
	var in, out strings.Builder
	for _, words := range asked {
		if err := json.NewEncoder(&in).Encode(words); err != nil {
			t.Fatal(err)
		}
	}
	if err := answer(strings.NewReader(in.String()), &out); err != nil {
		t.Fatal(err)
	}
	replies := json.NewDecoder(strings.NewReader(out.String()))
	codes := map[int]bool{}
	for _, words := range asked {
		var got reply
		if err := replies.Decode(&got); err != nil {
			t.Fatal(err)
		}
		var stdout, stderr strings.Builder
		code := cli.Run(words, &stdout, &stderr)
		if want := (reply{code, stdout.String(), stderr.String()}); got != want {
			t.Errorf("%q: %+v, want %+v", words, got, want)
		}
		codes[code] = true
	}
	if len(codes) != 3 {
		t.Errorf("the commands ended with the codes %v, and all three should be tried", codes)
	}
	if err := answer(strings.NewReader("words\n"), &out); err == nil {
		t.Error("a line that is no list of words was taken")
	}
}
