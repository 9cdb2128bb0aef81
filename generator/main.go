// Command slipbook turns a folder of Markdown lessons on decorating ceramics
// into a handbook with calculators that any static web server can hold. It
// exists so that an instructor gives the talk once, and every student has it at
// the bench, on a phone, with the sums done.
//
// Each command has a file of its name. The stages that publish, show and
// proof share stand in handbook.go, in their order; where all write, and with
// which status they end, in streams.go. Here is only how they are chosen.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/alecthomas/kong"

	"slipbook/generator/finding"
	"slipbook/generator/notices"
)

// commands is the whole command line; kong makes the help from it.
type commands struct {
	Publish publishCommand `cmd:"" help:"Print the handbook into a folder, for any static web server."`
	Show    showCommand    `cmd:"" help:"Show the handbook in your own browser while you write; every save shows at once."`
	Proof   proofCommand   `cmd:"" help:"Say everything that is wrong with the lessons, with file, line and column."`
	Calc    calcCommand    `cmd:"" help:"Use the handbook's calculators here."`

	Notices noticesFlag `help:"Print the licences of the libraries in this program."`
}

// noticesFlag prints the notices of everybody else's code, which have to go
// with the program, and ends it.
type noticesFlag bool

// BeforeApply does so before any command runs.
func (noticesFlag) BeforeApply(app *kong.Kong) error {
	if err := notices.Write(app.Stdout); err != nil {
		return err
	}
	app.Exit(done)
	return nil
}

const about = "Turns a folder of lessons into a handbook with calculators for the decorating bench. " +
	"Ends with 0 when done, with 1 when something is wrong with the lessons or the work failed, with 2 when it was asked for something it cannot do, with 128 and the number of the signal when one stopped it."

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run runs one command and returns its status. Asked for help, it prints that
// and ends the program with status 0.
func run(args []string, out, say io.Writer) int {
	parser := kong.Must(&commands{}, kong.Name("slipbook"), kong.Description(about), kong.Writers(out, say),
		kong.Vars{"formats": strings.Join(finding.Formats(), ",")},
		kong.ConfigureHelp(kong.HelpOptions{WrapUpperBound: 100}))
	parser.Model.HelpFlag.Help = "Show what can be written."
	chosen, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(say, "slipbook: %v\nTo see what can be written: slipbook --help\n", err)
		return refused
	}
	err = chosen.Run(&streams{out, say})
	if err != nil && !errors.Is(err, errSaid) {
		fmt.Fprintf(say, "slipbook: %v\n", err)
	}
	return status(err)
}
