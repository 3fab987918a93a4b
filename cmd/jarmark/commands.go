package main

import (
	"flag"
	"fmt"
	"io"
	"regexp"
	"strings"

	"jarmark/internal/kit/diag"
)

// command is one row of the table that drives dispatch, help and flags.
// To add a command: one row here and its run function in a file of its own.
type command struct {
	name  string
	args  string // how its arguments are written
	short string
	long  string
	flags func(*flag.FlagSet, *options)
	run   func(*app, *options, []string) error
}

func commands() []command {
	return []command{
		{"make", "[BATCH...]", "labels, packing list and public record into out/LOT/", makeHelp, makeFlags, runMake},
		{"check", "[BATCH...]", "facts and findings; prints nothing to paper", checkHelp, checkFlags, runCheck},
		{"labels", "BATCH...", "one PDF of labels", labelsHelp, labelsFlags, runLabels},
		{"pack", "[BATCH...]", "packing list as PDF, CSV or text", packHelp, packFlags, runPack},
		{"record", "[BATCH...]", "the public batch pages", recordHelp, recordFlags, runRecord},
		{"scale", "BATCH --jars \"24 x 8 fl oz\"", "the recipe scaled to exact jars", scaleHelp, scaleFlags, runScale},
		{"weigh", "BATCH | WEIGHT...", "the net contents sample weights allow", weighHelp, weighFlags, runWeigh},
		{"trace", "LOT | DAY", "who has the jars of a lot, a packet's lot or a day; recall sheet", traceHelp, traceFlags, runTrace},
		{"ledger", "[list | add]", "where the jars are; note what was given, sold, eaten", ledgerHelp, ledgerFlags, runLedger},
		{"season", "", "what became of the jars, and what they brought in", seasonHelp, seasonFlags, runSeason},
		{"sheets", "", "label sheets", "", listFlags, runSheets},
		{"designs", "", "label designs", "", listFlags, runDesigns},
		{"jars", "", "jars and what they hold", "", listFlags, runJars},
		{"recipes", "", "tested recipes a batch may rest on", "", listFlags, runRecipes},
		{"places", "[PLACE]", "rule sets, and what one of them asks", placesHelp, placesFlags, runPlaces},
		{"align", "SHEET", "a page to align the printer with, or to measure jars with", alignHelp, alignFlags, runAlign},
		{"new", "NAME", "starter files for a new batch", newHelp, newFlags, runNew},
		{"serve", "[DIR]", "the local page: see labels while you type", serveHelp, serveFlags, runServe},
		{"completion", "bash | zsh | fish", "what completes commands and flags in a shell", completionHelp, nil, runCompletion},
		{"manual", "", "the manual page, for man", manualHelp, nil, runManual},
		{"version", "", "which program this is", "", jsonFlag, runVersion},
	}
}

func find(name string) (command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return command{}, false
}

func usage() string {
	var b strings.Builder
	b.WriteString("jarmark: from batch notes to labelled, packed, traceable jars\n\nusage: jarmark COMMAND [FLAGS] [ARGUMENTS]\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-10s %s\n", c.name, c.short)
	}
	b.WriteString("\n  jarmark make                   try it with the built-in demo batch\n" +
		"  jarmark new \"plum jam\"         begin a batch of your own\n" +
		"  jarmark help COMMAND           flags and examples\n" +
		"  jarmark help batch             every key; also: kitchen, gifts, ledger\n" +
		"  jarmark help findings          what may be found, and what it stops\n\n" +
		"Labels must satisfy the rules where you sell: see what a place asks with\n" +
		"jarmark places, and let your food agency have the last word.\n")
	return b.String()
}

func (c command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "usage: jarmark %s %s\n\n%s\n", c.name, c.args, c.short)
	if c.long != "" {
		fmt.Fprintf(&b, "\n%s\n", c.long)
	}
	b.WriteString(c.flagTable())
	return b.String()
}

func (c command) flagTable() string {
	var b strings.Builder
	for _, o := range c.options() {
		fmt.Fprintf(&b, "  %-22s %s\n", strings.TrimSpace(o.name+" "+o.takes), o.use)
	}
	if b.Len() == 0 {
		return ""
	}
	return "\nflags:\n" + b.String()
}

// parse reads flags wherever they stand, before or after the arguments.
func parse(c command, o *options, args []string) ([]string, error) {
	fs := flag.NewFlagSet(c.name, flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	if c.flags != nil {
		c.flags(fs, o)
	}
	var rest []string
	for {
		if err := fs.Parse(args); err != nil {
			if err == flag.ErrHelp {
				return nil, err
			}
			return nil, wrongFlag(c.name, fs, err)
		}
		args = fs.Args()
		if len(args) == 0 {
			return rest, nil
		}
		rest, args = append(rest, args[0]), args[1:]
	}
}

// flagFaults are what package flag says, with the value and the name of the
// flag, and our words for it.
var flagFaults = []struct {
	of   *regexp.Regexp
	says func(m []string) string
}{
	{regexp.MustCompile(`^invalid value (".*") for flag -(\S+): (?:parse error|value out of range)$`), func(m []string) string { return "--" + m[2] + ": " + m[1] + " is not a whole number" }},
	{regexp.MustCompile(`^invalid value (".*") for flag -(\S+): (.*)$`), func(m []string) string { return "--" + m[2] + ": " + m[3] }},
	{regexp.MustCompile(`^invalid boolean value (".*") for -(\S+): `), func(m []string) string { return "--" + m[2] + " takes no value" }},
	{regexp.MustCompile(`^flag needs an argument: (-)(\S+)$`), func(m []string) string { return "--" + m[2] + " wants a value after it" }},
}

// wrongFlag words what package flag found, as the other messages are.
func wrongFlag(command string, fs *flag.FlagSet, err error) error {
	help := "jarmark help " + command + " lists the flags"
	if name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -"); unknown {
		if name != "" && name[0] >= '0' && name[0] <= '9' {
			return usagef("write it without the minus sign", "%s: -%s is less than nothing", command, name)
		}
		var names []string
		fs.VisitAll(func(f *flag.Flag) { names = append(names, f.Name) })
		if near, ok := diag.DidYouMean(name, names); ok {
			help = "did you mean --" + near + "? " + help
		}
		return usagef(help, "%s: there is no flag --%s", command, name)
	}
	for _, f := range flagFaults {
		if m := f.of.FindStringSubmatch(err.Error()); m != nil {
			return usagef(help, "%s: %s", command, f.says(m))
		}
	}
	return usagef(help, "%s: %v", command, err)
}
