// Package diag holds findings: what is wrong in the maker's files or on a
// label, where, why (the clause), and what to do. Stages return a List beside
// their value and go on; only I/O faults and bugs are Go errors.
//
// Wording: lower case start, no full stop; the message says what is wrong, the
// hint says what to do; numbers carry units.
package diag

import (
	"slices"
	"strconv"
)

// Severity orders findings.
type Severity int

// Note informs, Warning asks for a look, Error blocks printing.
const (
	Note Severity = iota
	Warning
	Error
)

func (s Severity) String() string {
	return [...]string{"note", "warning", "error"}[s]
}

// Pos is a place in a text file; Line and Column count from 1, Column in
// characters (runes). EndColumn is exclusive; 0 means "one character".
type Pos struct {
	Line, Column, EndColumn int
}

// Command is the File of findings about what was written on the command line:
// no file is to blame for them.
const Command = "command line"

// Diagnostic is one finding.
type Diagnostic struct {
	Severity Severity
	Code     string // stable, kebab-case: "unknown-key", "net-too-small"
	File     string // name of the file the finding is about; may be empty
	Path     string // TOML path in it, 0-based: "ingredient[1].amount"
	Pos      Pos    // resolved place; zero until a source.File fills it in
	Message  string
	Hint     string
	Cite     string // "21 CFR 101.7(i)", or "common practice, no source"

	// Instead is the TOML that mends what stands at Pos, where there is one
	// answer; else empty.
	Instead string
}

// List is a set of findings in the order they were made.
type List []Diagnostic

// Errorf, Warnf and Notef append a finding and return it for more detail
// (Hint, Cite). The pointer is valid until the next append.
func (l *List) Errorf(code, file, path, format string, args ...any) *Diagnostic {
	return l.addf(Error, code, file, path, format, args...)
}

// Warnf appends a warning; see Errorf.
func (l *List) Warnf(code, file, path, format string, args ...any) *Diagnostic {
	return l.addf(Warning, code, file, path, format, args...)
}

// Notef appends a note; see Errorf.
func (l *List) Notef(code, file, path, format string, args ...any) *Diagnostic {
	return l.addf(Note, code, file, path, format, args...)
}

// Hinted sets the hint and returns the finding.
func (d *Diagnostic) Hinted(hint string) *Diagnostic { d.Hint = hint; return d }

// Meant hints at the text that was meant by the value at Pos.
func (d *Diagnostic) Meant(text string) *Diagnostic {
	d.Hint, d.Instead = "did you mean "+text+"?", strconv.Quote(text)
	return d
}

// Cited sets the source and returns the finding.
func (d *Diagnostic) Cited(cite string) *Diagnostic { d.Cite = cite; return d }

// Errors gives the findings that block printing.
func (l List) Errors() (out List) {
	for _, d := range l {
		if d.Severity == Error {
			out = append(out, d)
		}
	}
	return out
}

// HasErrors reports whether any finding is an Error.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(d Diagnostic) bool { return d.Severity == Error })
}

// Once drops findings told before: those of a kitchen come with every batch.
func (l List) Once() (out List) {
	seen := map[Diagnostic]bool{}
	for _, d := range l {
		if !seen[d] {
			seen[d] = true
			out = append(out, d)
		}
	}
	return out
}

// Repeats is how often one finding is told of a file: after that, only how many
// more there are.
const Repeats = 20

// Brief keeps the first findings of each code and file, and says in the place
// of the rest how many more there are.
func (l List) Brief() List {
	type kind struct {
		severity   Severity
		code, file string
	}
	seen := map[kind]int{}
	var out List
	var over []kind
	at := map[kind]Pos{}
	for _, d := range l {
		k := kind{d.Severity, d.Code, d.File}
		if seen[k]++; seen[k] <= Repeats {
			out = append(out, d)
			continue
		}
		if seen[k] == Repeats+1 {
			over, at[k] = append(over, k), d.Pos
		}
	}
	if len(over) == 0 {
		return l
	}
	for _, k := range over {
		out.addf(k.severity, "more-findings", k.file, "", "%d more findings like these (%s) are not listed", seen[k]-Repeats, k.code).
			Hinted("mend these first, then check again").Pos = at[k]
	}
	return out
}

// Capped keeps the first n findings and says how many more there are.
func (l List) Capped(n int) List {
	if len(l) <= n {
		return l
	}
	more := l[n:]
	worst, file := Note, more[0].File
	for _, d := range more {
		worst = max(worst, d.Severity)
	}
	out := append(List(nil), l[:n]...)
	out.addf(worst, "more-findings", file, "", "%d more findings are not listed", len(more)).
		Hinted("mend these first, then check again").Pos = more[0].Pos
	return out
}
