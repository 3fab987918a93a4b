package main

import (
	"fmt"
	"strings"
)

const manualHelp = `  jarmark manual > jarmark.1 && man ./jarmark.1`

// runManual prints the manual page, made from the command table.
func runManual(a *app, _ *options, args []string) error {
	if len(args) > 0 {
		return usagef("jarmark help COMMAND is about one command", "the manual takes no arguments")
	}
	_, err := fmt.Fprint(a.out, manual())
	return err
}

// troff writes a text so that troff prints it as it stands: no escapes, no
// request at the start of a line, a hyphen that can be copied.
func troff(s string) string {
	lines := strings.Split(strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}

// manual is the page in the man macros, section 1.
func manual() string {
	var b strings.Builder
	b.WriteString(".TH JARMARK 1\n.SH NAME\njarmark \\- from batch notes to labelled, packed, traceable jars\n" +
		".SH SYNOPSIS\n.B jarmark\n.I COMMAND\n[\\fIFLAGS\\fR] [\\fIARGUMENTS\\fR]\n.SH COMMANDS\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, ".SS \"jarmark %s\"\n%s.\n", strings.ReplaceAll(troff(strings.TrimSpace(c.name+" "+c.args)), `"`, `\(dq`), troff(c.short))
		if c.long != "" {
			fmt.Fprintf(&b, ".PP\n.nf\n%s\n.fi\n", troff(c.long))
		}
		for _, o := range c.options() {
			fmt.Fprintf(&b, ".TP\n\\fB%s\\fR", troff(o.name))
			if o.takes != "" {
				fmt.Fprintf(&b, " \\fI%s\\fR", troff(o.takes))
			}
			fmt.Fprintf(&b, "\n%s\n", troff(o.use))
		}
	}
	b.WriteString(".SH EXIT STATUS\n0 done; 1 a problem in the maker's files; 2 wrong usage.\n" +
		".SH ENVIRONMENT\n.TP\n.B SOURCE_DATE_EPOCH\nthe day rules are read on and documents bear, in seconds since 1970\n" +
		".SH FILES\n.TP\n.I kitchen.toml\nwho makes the jam, and where\n.TP\n.I ledger.csv\nwhere the jars went\n.TP\n.IR designs/ ,\\  sheets/\ndesigns and sheets of the maker's own\n" +
		".SH NOTES\nRules change: the food agency where you sell has the last word, and nothing here is legal advice.\n")
	return b.String()
}
