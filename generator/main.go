// Command slipbook turns a folder of Markdown lessons on decorating ceramics
// into a handbook with calculators that any static web server can hold. It
// exists so that an instructor gives the talk once, and every student has it at
// the bench, on a phone, with the sums done.
//
// Each command has a file of its name. The stages that publish, show and
// proof share stand in handbook.go, in their order. Here are only the parts
// that all commands have in common: how they are chosen, and with which status
// they end.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/alecthomas/kong"

	"slipbook/generator/preview"
	"slipbook/generator/shelf"
)

// commands is the whole command line; kong makes the help from it.
type commands struct {
	Publish publishCommand `cmd:"" help:"Print the handbook into a folder, for any static web server."`
	Show    showCommand    `cmd:"" help:"Show the handbook in your own browser while you write; every save shows at once."`
	Proof   proofCommand   `cmd:"" help:"Say everything that is wrong with the lessons, with file, line and column."`
	Calc    calcCommand    `cmd:"" help:"Use the handbook's calculators here."`
}

const about = "Turns a folder of lessons into a handbook with calculators for the decorating bench. " +
	"Ends with 0 when done, with 1 when something is wrong with the lessons or the work failed, with 2 when it was asked for something it cannot do."

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// The statuses that slipbook ends with.
const (
	done    = 0
	failed  = 1 // findings that stop the work, or work that failed
	refused = 2 // wrong use, or refused input
)

// run runs one command and gives its status. Asked for help, it prints that
// and ends the program with status 0.
func run(args []string, out, say io.Writer) int {
	parser := kong.Must(&commands{}, kong.Name("slipbook"), kong.Description(about), kong.Writers(out, say),
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

// streams are where a command writes: results to out, the rest to say.
type streams struct{ out, say io.Writer }

// progress prints a line for somebody who watches, and nothing for a file or
// another program.
func (s *streams) progress(format string, args ...any) {
	if s.watched() {
		fmt.Fprintf(s.say, format+"\n", args...)
	}
}

// watched says whether a terminal shows what is said.
func (s *streams) watched() bool {
	file, ok := s.say.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// errSaid is the error of a command that has said what is wrong already.
var errSaid = errors.New("said already")

// refusal is the error for a command that was asked for what it cannot do.
type refusal struct{ error }

func (r refusal) Unwrap() error { return r.error }

// refuse makes a refusal of words for a person.
func refuse(format string, args ...any) error {
	return refusal{fmt.Errorf(format, args...)}
}

// status gives the program's status for the error of a command.
func status(err error) int {
	var own refusal
	var folder *shelf.Refusal
	var address *preview.Refusal
	switch {
	case err == nil:
		return done
	case errors.As(err, &own), errors.As(err, &folder), errors.As(err, &address):
		return refused
	}
	return failed
}
