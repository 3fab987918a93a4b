package main

import (
	"encoding/json"
	"fmt"
	"io"
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
	if err != nil {
		return err
	}
	return a.list(o, []string{"sheet", "labels", "for", "title"}, env.SheetRows())
}

func runDesigns(a *app, o *options, _ []string) error {
	env, _, err := a.own(o)
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

// runPlaces lists the rule sets, or prints one whole: every value with its
// source and how it was verified.
func runPlaces(a *app, o *options, args []string) error {
	env, _, err := a.own(o)
	if err != nil {
		return err
	}
	if len(args) == 0 {
		return a.list(o, []string{"place", "name", "programmes", "statement read", "checked"}, env.PlaceRows())
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

// writePlace prints a rule set to read: its tables one after another, where
// each comes from and how far to trust it, and its values wrapped to the
// width of a terminal.
func writePlace(w io.Writer, rows [][]string) {
	const width, indent = 78, 4
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
		line := "  " + key + ":"
		for _, word := range strings.Fields(r[1]) {
			if utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
				fmt.Fprintln(w, line)
				line = strings.Repeat(" ", indent-1)
			}
			line += " " + word
		}
		fmt.Fprintln(w, line)
	}
}

// runAlign writes the printer alignment page of a sheet.
func runAlign(a *app, o *options, args []string) error {
	if len(args) != 1 {
		return usagef("jarmark sheets lists them", "align: name one sheet")
	}
	env, err := a.envOf(os.DirFS("."))
	if err != nil {
		return err
	}
	f, found, err := env.Align(args[0])
	a.print(found, nil)
	if err != nil {
		return err
	}
	if found.HasErrors() {
		return errProblem
	}
	return a.write(o.out, "align-"+args[0], []job.File{f}, nil)
}
