// Command jarmark turns a jam maker's batch notes into labels, packing lists
// and public batch records. It reads flags and files and prints; everything
// else happens in internal/app/job.
//
// Rules for its words: lower case, no final full stop; an error says what is
// wrong, a hint says what to do; results go to stdout, everything else to
// stderr. Exit status: 0 done, 1 a problem in the maker's files, 2 wrong usage.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"strconv"
	"time"

	"jarmark/internal/kit/unit"
)

// Memory in bytes: below small nothing is collected, which a run of a batch
// never leaves; above roomy the collector works harder.
const (
	small = 64 << 20
	roomy = 112 << 20
)

func main() {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		collectLate()
	}
	a := &app{in: os.Stdin, out: os.Stdout, err: os.Stderr, getenv: os.Getenv, now: time.Now}
	os.Exit(a.run(os.Args[1:]))
}

// collectLate leaves the collector out of a short run, a tenth of its time; the
// first collection of a longer one sets its usual pace.
func collectLate() {
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(small)
	runtime.SetFinalizer(new([16]byte), func(*[16]byte) {
		debug.SetGCPercent(200)
		debug.SetMemoryLimit(roomy)
	})
}

// app is the program's surroundings, replaced in tests.
type app struct {
	in       io.Reader // notes, for --from -
	out, err io.Writer
	getenv   func(string) string
	now      func() time.Time

	incomplete bool     // a file could not be read, and was told and left out
	force      bool     // --force: the maker's files make way, and are kept
	read       []string // what was read beside the batches: lists, designs, sheets
	told       told     // findings printed already
	wrote      bool     // something was written: "nothing was changed" is no longer true
}

// Exit states.
const (
	exitOK      = 0
	exitProblem = 1
	exitUsage   = 2
)

// errProblem ends a command whose findings have been printed already.
var errProblem = errors.New("problems found")

// usageError is a mistake on the command line.
type usageError struct{ msg, hint string }

func (e usageError) Error() string { return e.msg }

func usagef(hint, format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...), hint}
}

func (a *app) run(args []string) int {
	if len(args) == 0 {
		fmt.Fprint(a.err, usage())
		return exitUsage
	}
	switch args[0] {
	case "help", "-h", "--help", "-help":
		return a.help(args[1:])
	}
	c, ok := find(args[0])
	if !ok {
		return a.fail(usagef(suggest(args[0]), "no command %q", args[0]))
	}
	o := &options{}
	rest, err := parse(c, o, args[1:])
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(a.out, c.help())
		return exitOK
	}
	if err == nil {
		a.force = o.force
		err = c.run(a, o, rest)
	}
	if err == nil && a.incomplete {
		err = errProblem
	}
	return a.fail(err)
}

func (a *app) help(args []string) int {
	if len(args) == 0 {
		fmt.Fprint(a.out, usage())
		return exitOK
	}
	if args[0] == "findings" {
		return a.findings(args[1:])
	}
	c, ok := find(args[0])
	if !ok {
		if a.topic(args[0]) {
			return exitOK
		}
		return a.fail(usagef(suggest(args[0]), "no command %q", args[0]))
	}
	fmt.Fprint(a.out, c.help())
	if c.name == "ledger" { // a command and a file
		fmt.Fprintln(a.out)
		a.topic(c.name)
	}
	return exitOK
}

// fail prints an error once and gives the exit status.
func (a *app) fail(err error) int {
	var u usageError
	switch {
	case err == nil:
		return exitOK
	case errors.Is(err, errProblem):
		return exitProblem
	case errors.As(err, &u):
		fmt.Fprintf(a.err, "jarmark: error: %s\n", u.msg)
		if u.hint != "" {
			fmt.Fprintf(a.err, "hint: %s\n", u.hint)
		}
		return exitUsage
	}
	fmt.Fprintf(a.err, "jarmark: error: %v\n", err)
	if h := a.hintFor(err); h != "" {
		fmt.Fprintf(a.err, "hint: %s\n", h)
	}
	return exitProblem
}

// epoch gives SOURCE_DATE_EPOCH (reproducible-builds.org), if it is set.
func (a *app) epoch() (int64, bool) {
	n, err := strconv.ParseInt(a.getenv("SOURCE_DATE_EPOCH"), 10, 64)
	return n, err == nil && n >= 0
}

// today is the day rules are read on: SOURCE_DATE_EPOCH or the clock's.
func (a *app) today() unit.Date {
	t := a.now()
	if n, ok := a.epoch(); ok {
		t = time.Unix(n, 0).UTC()
	}
	return unit.Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
}
