// Command carry writes the finished calculators into a file that a release
// build of slipbook embeds. It exists so that the released program needs no Go:
//
//	go generate ./generator/assets
//	go build -tags carried -trimpath -o slipbook ./generator
package main

import (
	"fmt"
	"os"

	"slipbook/generator/assets"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("usage: carry FILE")
	}
	data, err := assets.Calculators()
	if err != nil {
		return err
	}
	return os.WriteFile(args[0], data, 0o644)
}
