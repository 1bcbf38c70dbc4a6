// Acreleaf turns Markdown extension guides into a static site whose worked examples run live.
package main

import (
	"os"

	"acreleaf/cmd/acreleaf/internal/cli"
)

func main() { os.Exit(cli.Run(os.Args[1:], os.Stdout, os.Stderr)) }
