// Command answers runs the command line again and again in one process: for each line of standard input, a list of
// words as JSON, it prints a line with the exit code and what the command printed. The browser checks ask it thousands
// of times, and a process of its own for each takes longer than its answer.
//
// It must add nothing: what it answers is what cli.Run answers.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strings"

	"acreleaf/cmd/acreleaf/internal/cli"
)

func main() {
	if err := answer(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "answers:", err)
		os.Exit(1)
	}
}

// A reply is what came of one list of words.
type reply struct {
	Code int    `json:"code"`
	Out  string `json:"out"`
	Err  string `json:"err"`
}

func answer(in io.Reader, out io.Writer) error {
	lines := bufio.NewScanner(in)
	print := json.NewEncoder(out)
	for lines.Scan() {
		var words []string
		if err := json.Unmarshal(lines.Bytes(), &words); err != nil {
			return err
		}
		var stdout, stderr strings.Builder
		code := cli.Run(words, &stdout, &stderr)
		if err := print.Encode(reply{code, stdout.String(), stderr.String()}); err != nil {
			return err
		}
	}
	return lines.Err()
}
