package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// own loads what the lists show: the built-in data under the maker's folder.
func (a *app) own(o *options) (*job.Env, job.Input, error) {
	env, err := a.envOf(os.DirFS(o.dir))
	if err != nil {
		return nil, job.Input{}, err
	}
	kitchen, ok, err := store.KitchenIn(o.dir)
	if err != nil {
		return nil, job.Input{}, err
	}
	var in job.Input
	if ok {
		in.Kitchen = job.Doc{Name: kitchen.Name, Data: kitchen.Data}
	}
	return env, in, nil
}

// list prints rows under headings, or the values as JSON.
func (a *app) list(o *options, head []string, rows [][]string) error {
	if o.json {
		return a.rowsJSON(head, rows)
	}
	w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
	fmt.Fprintln(w, strings.Join(head, "\t"))
	for _, r := range rows {
		fmt.Fprintln(w, strings.Join(r, "\t"))
	}
	return w.Flush()
}

func (a *app) rowsJSON(head []string, rows [][]string) error {
	out := make([]map[string]string, 0, len(rows))
	for _, r := range rows {
		m := map[string]string{}
		for i, h := range head {
			m[h] = r[i]
		}
		out = append(out, m)
	}
	enc := json.NewEncoder(a.out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}

func runSheets(a *app, o *options, _ []string) error {
	env, _, err := a.own(o)
	if err == nil {
		err = env.Fault()
	}
	if err != nil {
		return err
	}
	return a.list(o, []string{"sheet", "labels", "for", "title"}, env.SheetRows())
}

func runDesigns(a *app, o *options, _ []string) error {
	env, _, err := a.own(o)
	if err == nil {
		err = env.Fault()
	}
	if err != nil {
		return err
	}
	return a.list(o, []string{"design", "season", "for", "about"}, env.DesignRows())
}

func runJars(a *app, o *options, _ []string) error {
	env, in, err := a.own(o)
	if err != nil {
		return err
	}
	rows, found := env.JarRows(in.Kitchen)
	a.print(found, []job.Input{in})
	return a.list(o, []string{"jar", "description", "fills", "about", "panel", "source"}, rows)
}

func runRecipes(a *app, o *options, _ []string) error {
	env, _, err := a.own(o)
	if err != nil {
		return err
	}
	return a.list(o, []string{"recipe", "publisher", "title", "jars", "minutes", "source"}, env.RecipeRows())
}

// runPlaces lists the rule sets, or prints one whole: every value with its
// source and how it was verified.
func runPlaces(a *app, o *options, args []string) error {
	env, _, err := a.own(o)
	if err != nil {
		return err
	}
	switch {
	case o.memory:
		return a.list(o, []string{"last looked up", "place", "value", "words or source"}, env.MemoryRows(a.today()))
	case o.sources && len(args) == 0:
		return usagef("jarmark places lists them", "places: --sources needs the name of a place")
	case len(args) == 0:
		return a.list(o, []string{"place", "name", "programmes", "statement read", "checked"}, env.PlaceRows())
	case o.sources:
		return a.placeSources(o, env, args[0])
	}
	rows, found := env.PlaceEffective(args[0], a.today())
	a.print(found, nil)
	if found.HasErrors() {
		return errProblem
	}
	if !o.json {
		writePlace(a.out, rows)
		return nil
	}
	return a.list(o, []string{"value", "is", "source", "verified"}, rows)
}

// placeSources prints the sentences the values of a place were read in.
func (a *app) placeSources(o *options, env *job.Env, place string) error {
	rows, found := env.QuoteRows(place, a.today())
	a.print(found, nil)
	if found.HasErrors() {
		return errProblem
	}
	if o.json {
		return a.rowsJSON([]string{"value", "words", "where", "read", "verified"}, rows)
	}
	if len(rows) == 0 {
		fmt.Fprintf(a.out, "no quotations are kept for %s yet; jarmark places %s names the source of each table\n", place, place)
	}
	for _, r := range rows {
		fmt.Fprintf(a.out, "\n%s  (%s, read %s)\n", r[0], r[4], r[3])
		wrapped(a.out, "  ", `"`+r[1]+`"`)
		wrapped(a.out, "  ", r[2])
	}
	return nil
}

// writePlace prints a rule set to read: its tables one after another, where
// each comes from and how far to trust it, and its values wrapped to the
// width of a terminal.
func writePlace(w io.Writer, rows [][]string) {
	table := ""
	for _, r := range rows {
		t, key, inTable := strings.Cut(r[0], ".")
		if !inTable {
			t, key = "", r[0]
		}
		if t != table {
			table = t
			fmt.Fprintf(w, "\n[%s]  %s: %s\n", t, r[3], r[2])
		}
		wrapped(w, "  "+key+": ", r[1])
	}
}

// wrapped prints words behind a head, wrapped to the width of a terminal.
func wrapped(w io.Writer, head, text string) {
	const width, indent = 78, 4
	line, sep := head, ""
	for _, word := range strings.Fields(text) {
		if utf8.RuneCountInString(line+sep+word) > width && sep != "" {
			fmt.Fprintln(w, line)
			line, sep = strings.Repeat(" ", indent), ""
		}
		line += sep + word
		sep = " "
	}
	fmt.Fprintln(w, line)
}

// runAlign writes the printer alignment page of a sheet.
func runAlign(a *app, o *options, args []string) error {
	if len(args) != 1 && !(o.tape && len(args) == 0) {
		return usagef("jarmark sheets lists them", "align: name one sheet")
	}
	env, err := a.envOf(os.DirFS("."))
	if err != nil {
		return err
	}
	make, name := env.Align, "jar-tape"
	switch {
	case !o.tape:
		name = "align-" + args[0]
	case len(args) == 0:
		kitchen, err := os.ReadFile(store.KitchenName)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		args = []string{env.PaperOf(job.Doc{Name: store.KitchenName, Data: kitchen}) + "-plain"}
		fallthrough
	default:
		make = env.Tape
	}
	f, found, err := make(args[0])
	a.print(found, nil)
	if err != nil {
		return err
	}
	if found.HasErrors() {
		return errProblem
	}
	return a.write(o.out, name, []job.File{f}, nil)
}
