package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/testdata/demo"
)

// inputs reads the batches named on the command line: files, or every batch of
// a folder. Each is paired with the kitchen.toml beside or above it. A file
// that cannot be read is told, and the others are gone on with.
func (a *app) inputs(args []string) ([]job.Input, error) {
	files, err := named(args, store.Batches)
	if err != nil {
		return nil, err
	}
	return a.inputsOf(files, args, nil)
}

// allInputs is inputs with those of the folders below: jars of another year are
// to be had too, and may be promised already.
func (a *app) allInputs(args []string) ([]job.Input, error) {
	var left []store.Unread
	files, err := named(args, func(dir string) ([]string, error) {
		files, unread := store.Below(dir)
		left = append(left, unread...)
		return slices.DeleteFunc(files, func(f string) bool { // the maker's own designs and sheets are told when they are read
			at := filepath.Dir(f)
			return at != filepath.Clean(dir) && slices.Contains([]string{"designs", "sheets"}, filepath.Base(at))
		}), nil
	})
	if err != nil {
		return nil, err
	}
	return a.inputsOf(files, args, left)
}

// inputsOf reads files; left could not be found out.
func (a *app) inputsOf(files, args []string, left []store.Unread) (out []job.Input, err error) {
	var fault error
	var found diag.List
	for _, u := range left {
		found.Errorf("unread", u.Path, "", "this could not be read, and is left out: %s", u.Why)
	}
	ledgers := map[string]job.Doc{}
	for _, f := range files {
		in, err := input(f, ledgers)
		if err != nil {
			found.Errorf("unread", f, "", "this could not be read, and is left out: %s", store.Reason(err)).Hinted(hintFor(err))
			fault = err
			continue
		}
		if !slices.Contains(args, f) && job.NoBatch(in.Batch) {
			continue // it lies beside the batches
		}
		out = append(out, in)
	}
	if len(out) == 0 && fault != nil {
		return nil, fault
	}
	if len(out) == 0 {
		return nil, usagef("name the folder they are in, or begin one with jarmark new NAME", "no batch files in %s", strings.Join(args, " "))
	}
	a.incomplete = a.incomplete || len(found) > 0
	a.print(found, nil)
	return out, nil
}

// named are the batch files the arguments mean; within gives those of a folder.
func named(args []string, within func(dir string) ([]string, error)) (out []string, err error) {
	for _, a := range args {
		if filepath.Base(a) == store.KitchenName && len(args) > 1 {
			continue // the shell's *.toml means the batches
		}
		files := []string{a}
		if st, err := os.Stat(a); err == nil && st.IsDir() {
			if files, err = within(a); err != nil {
				return nil, err
			}
			if len(files) == 0 {
				return nil, usagef("name the folder they are in, or begin one with jarmark new NAME", "no batch files in %s", a)
			}
		}
		out = append(out, files...)
	}
	return out, nil
}

// input reads a batch with its kitchen and ledger; each ledger is read once.
func input(path string, ledgers map[string]job.Doc) (job.Input, error) {
	doc, err := store.Read(path)
	if err != nil {
		return job.Input{}, err
	}
	in := job.Input{Batch: job.Doc{Name: doc.Name, Data: doc.Data}}
	kitchen, ok, err := store.Kitchen(path)
	if err != nil {
		return job.Input{}, err
	}
	if ok {
		in.Kitchen = job.Doc{Name: kitchen.Name, Data: kitchen.Data}
	}
	home := filepath.Dir(firstName(kitchen.Name, path))
	book, known := ledgers[home]
	if !known {
		doc, err := store.Ledger(kitchen.Name, path)
		if err != nil {
			return job.Input{}, err
		}
		book = job.Doc(doc)
		ledgers[home] = book
	}
	in.Ledger = book
	return in, nil
}

func firstName(names ...string) string {
	for _, n := range names {
		if n != "" {
			return n
		}
	}
	return ""
}

// demoInputs is the built-in demo: invented, and it says so.
func demoInputs([]string) ([]job.Input, error) {
	kitchen, err := demo.FS.ReadFile("kitchen.toml")
	if err != nil {
		return nil, err
	}
	data, err := demo.FS.ReadFile(demoBatch)
	if err != nil {
		return nil, err
	}
	return []job.Input{{Kitchen: job.Doc{Name: demoKitchen, Data: kitchen}, Batch: job.Doc{Name: "demo/" + demoBatch, Data: data}}}, nil
}

// builtin reports whether a batch is the demo inside the program.
func builtin(in job.Input) bool { return in.Kitchen.Name == demoKitchen }

// demoKitchen names the demo's kitchen as nobody names a file.
const demoKitchen = "<built-in>/kitchen.toml"

const demoBatch = "strawberry-rhubarb.toml"

// begin reads the batches and loads what every command on batches needs.
func (a *app) begin(o *options, args []string) (*job.Env, []job.Input, job.Choices, error) {
	in, err := a.inputs(args)
	if err != nil {
		return nil, nil, job.Choices{}, err
	}
	return a.beginWith(o, in)
}

func (a *app) beginWith(o *options, in []job.Input) (*job.Env, []job.Input, job.Choices, error) {
	c, err := a.choices(o)
	if err != nil {
		return nil, nil, c, err
	}
	env, err := a.env(in)
	return env, in, c, err
}

// here is the arguments, or this folder when there are none.
func here(args []string) []string {
	if len(args) == 0 {
		return []string{"."}
	}
	return args
}

// print writes findings to stderr with excerpts of the files they are about,
// each once.
func (a *app) print(l diag.List, in []job.Input) {
	text := map[string]string{}
	for _, i := range in {
		for _, d := range []job.Doc{i.Batch, i.Kitchen, i.Ledger} {
			text[d.Name] = string(d.Data)
		}
	}
	if a.told == nil {
		a.told = told{}
	}
	diag.Print(a.err, a.told.fresh(l), func(file string) string { return text[file] })
}

// told are findings printed already: those about the kitchen come back with
// every batch.
type told map[diag.Diagnostic]bool

// fresh gives the findings not told yet.
func (t told) fresh(l diag.List) (out diag.List) {
	for _, d := range l {
		if !t[d] {
			t[d] = true
			out = append(out, d)
		}
	}
	return out
}

// grave keeps warnings and errors: what is worth knowing once need not stand
// before every print run.
func grave(l diag.List) (out diag.List) {
	for _, d := range l {
		if d.Severity > diag.Note {
			out = append(out, d)
		}
	}
	return out
}

// notesLeft says how many notes were kept back.
func (a *app) notesLeft(n int) {
	switch n {
	case 0:
	case 1:
		fmt.Fprintln(a.err, "1 note more: jarmark check shows it")
	default:
		fmt.Fprintf(a.err, "%d notes more: jarmark check shows them\n", n)
	}
}

// choices turns flags into what the stages may choose.
func (a *app) choices(o *options) (job.Choices, error) {
	c := job.Choices{Place: o.place, Today: a.today(), Gift: o.gift, Design: o.design, Sheet: o.sheet,
		Size: o.size, Skip: o.skip, Copies: o.copies, Serials: o.serials, InkSaver: o.inkSaver, CutMarks: o.cutMarks,
		CutLines: o.cutLines, Trimmed: o.trimmed, DPI: float64(o.dpi)}
	if n, ok := a.epoch(); ok {
		c.Created = n
	}
	if c.Jar = o.jar; o.numbers != "" {
		var err error
		if c.Numbers, err = job.ParseNumbers(o.numbers); err != nil {
			return c, usagef(`write them like "17, 20-22"`, "--serial: %v", err)
		}
	}
	if o.skip < 0 || o.copies < 0 {
		return c, usagef("", "--skip and --copies cannot be negative")
	}
	if o.copies > job.MaxLabels {
		return c, usagef("print them in several runs", "--copies %d is more than the %d labels of one run", o.copies, job.MaxLabels)
	}
	for _, k := range strings.FieldsFunc(o.kind, func(r rune) bool { return r == ',' || r == '+' || r == ' ' }) {
		p := label.Piece(k)
		if !slices.Contains(label.Pieces, p) {
			return c, usagef(kindHint(k), "no label kind %q", k)
		}
		c.Pieces = append(c.Pieces, p)
	}
	return c, nil
}

func kindHint(word string) string {
	var names []string
	for _, p := range label.Pieces {
		names = append(names, string(p))
	}
	all := "kinds are " + strings.Join(names, ", ")
	if near, ok := diag.DidYouMean(word, names); ok {
		return fmt.Sprintf("did you mean %s? %s", near, all)
	}
	return all
}
