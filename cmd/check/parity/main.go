// Command parity makes the material for comparing Chromium with the native run, bit for bit: for every calculation
// of the catalogue, 200 random programs and each page of a pressed site, the module and a hash of the native answers
// to each of 10,000 random inputs; and every calculation worked for ranges. browser/parity.mjs has Chromium work the
// same inputs and compares, and browser/spread.mjs the ranges.
//
//	parity -site DIR -to DIR              write the material
//	parity -site DIR -show NAME -input N  print one run as the native side works it
//
// It is a program of its own, apart from cmd/check, so that the other checks still run when the calculations do
// not compile.
package main

import (
	"flag"
	"fmt"
	"os"

	"acreleaf/cmd/check/internal/pressed"
)

func main() {
	site := flag.String("site", "", "the pressed site whose modules are compared too")
	to := flag.String("to", "", "the folder to write the material to")
	show := flag.String("show", "", "the program to print a run of")
	input := flag.Int("input", 0, "which of its inputs")
	flag.Parse()
	if err := run(*site, *to, *show, *input); err != nil {
		fmt.Fprintln(os.Stderr, "parity:", err)
		os.Exit(1)
	}
}

func run(siteDir, to, show string, input int) error {
	site, err := pressed.Read(siteDir)
	if err != nil {
		return err
	}
	all, err := subjects(site)
	if err != nil {
		return err
	}
	if show != "" {
		return showRun(os.Stdout, all, show, input)
	}
	if err := write(to, all); err != nil {
		return err
	}
	return writeSpreads(to)
}
