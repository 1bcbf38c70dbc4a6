// Command check sets up what the checks need and then runs them all: go run ./cmd/check, from the project's folder.
// go run ./cmd/check release builds the program for every kind of computer, go run ./cmd/check mutate changes the code
// of a package to see whether its tests notice, go run ./cmd/check faults kills, pauses and doubles presses, and
// go run ./cmd/check fuzz 10m feeds each reader whatever comes up.
//
// It says what it installs, runs three steps at once, prints a line for each with its time, shows the whole output
// of a step that failed, goes on with every step that can still run, and ends with the line "N passed, N failed"
// and exit status 1 if anything failed. Nothing is skipped: a tool that is missing and cannot be installed is a
// failure that says how a person installs it.
//
// The command imports none of the code that it checks, so that it runs when that code does not compile.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"strings"
	"time"

	"acreleaf/cmd/check/internal/step"
	"acreleaf/cmd/check/internal/tool"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if len(os.Args) > 1 {
		switch os.Args[1] {
		case "fuzz":
			end(fuzz(ctx, os.Stdout, os.Args[2:]))
		case "mutate":
			end(mutatePackages(ctx, os.Stdout, os.Args[2:]))
		case "release":
			end(release(ctx, os.Stdout, os.Args[2:]))
		case "faults":
			end(faults(ctx, os.Stdout, os.Args[2:]))
		}
	}
	only := flag.String("only", "", "run one step, and those whose product it needs: "+strings.Join(names(), ", "))
	blocks := flag.Int("blocks", 0, "with -only block: try so many random blocks, and show each of them by guides")
	cards := flag.Int("cards", 0, "with -only handout: compare so many cards of every exercise on paper with its page")
	flag.Parse()
	end(run(ctx, *only, sizesAsked{*blocks, *cards}, flag.Args()))
}

// end ends the command: 0 when all passed, 1 when something failed, 2 for a wrong call.
func end(passed bool, err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, "check:", err)
		os.Exit(2)
	}
	if !passed {
		os.Exit(1)
	}
	os.Exit(0)
}

// sizesAsked are how much the steps try that may try more than they do every day; 0 for the usual.
type sizesAsked struct{ blocks, cards int }

// run gives whether every check passed; an error is a wrong call.
func run(ctx context.Context, only string, asked sizesAsked, arguments []string) (bool, error) {
	if len(arguments) > 0 {
		return false, fmt.Errorf("unknown argument %q", arguments[0])
	}
	if _, err := os.Stat("cmd/check/main.go"); err != nil {
		return false, fmt.Errorf("run this from the project's folder: go run ./cmd/check")
	}
	temporary, err := os.MkdirTemp("", "acreleaf-check-")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(temporary)
	bench := newBench(temporary)
	bench.blocks, bench.cards = asked.blocks, asked.cards
	steps, err := step.Choose(bench.steps(), only)
	if err != nil {
		return false, err
	}
	start := time.Now()
	missing := setUp(ctx, steps)
	report := step.Run(ctx, os.Stdout, steps, missing)
	fmt.Printf("\n%d steps in %.0f s; the longest: %s\n", len(steps), time.Since(start).Seconds(), report.Longest(5))
	fmt.Println(report.Tally)
	return report.Failed == 0, nil
}

// setUp makes sure of the tools that the steps call, and gives by name why one is not available.
func setUp(ctx context.Context, steps []step.Step) map[string]error {
	machine := tool.ThisMachine(os.Stdout)
	called := map[string]bool{}
	for _, s := range steps {
		for _, name := range s.Tools {
			called[name] = true
		}
	}
	wanted := slices.DeleteFunc(tool.All(), func(t tool.Tool) bool { return !called[t.Name] })
	missing := tool.Find(ctx, machine, wanted)
	if !called[packages] {
		return missing
	}
	missing[packages] = missing[tool.NPM.Name]
	if missing[packages] == nil {
		missing[packages] = tool.Packages(ctx, machine, browserFolder)
	}
	return missing
}

func names() []string {
	var all []string
	for _, s := range newBench("").steps() {
		all = append(all, s.Name)
	}
	return all
}
