package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/draw/presstest"
	"jarmark/testdata/demo"
)

var update = flag.Bool("update", false, "write what the program prints into the golden files of testdata/script")

// TestMain makes this test binary stand in for jarmark: scripts run it as a
// process of its own, with real files, streams and exit states.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"jarmark": main})
}

// TestScripts runs testdata/script/*.txtar. Each begins with the reason it
// exists. The clock stands at 25 November 2026; demo/ holds the built-in demo.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup:               surroundings,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"pdfsays":   pdfSays,
			"pdfpages":  pdfPages,
			"exits":     exits,
			"jsonkeys":  jsonKeys,
			"onlyfiles": onlyFiles,
			"zeros":     zeros,
		},
	})
}

func surroundings(e *testscript.Env) error {
	if at, err := filepath.Abs("../../fonts"); err == nil {
		e.Setenv("FONTS", at)
	}
	e.Setenv("SOURCE_DATE_EPOCH", "1795564800") // 2026-11-25 00:00 UTC
	return fs.WalkDir(demo.FS, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := demo.FS.ReadFile(p)
		if err != nil {
			return err
		}
		to := filepath.Join(e.WorkDir, "demo", p)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		return os.WriteFile(to, data, 0o644)
	})
}

// exits N COMMAND... runs a command that must end with exit state N.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits N COMMAND ARGUMENTS...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if x, ok := err.(interface{ ExitCode() int }); ok {
		got = x.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("exit state %d, want %d", got, want)
	}
}

// pdfSays FILE TEXT... opens a PDF with PDFium and looks for texts on any
// page, blanks not minded.
func pdfSays(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) < 2 {
		ts.Fatalf("usage: pdfsays FILE TEXT...")
	}
	all := ""
	onTest(ts, func(t testing.TB) {
		f := presstest.Open(t, []byte(ts.ReadFile(args[0])))
		for i := range f.Pages() {
			all += f.Squeezed(i)
		}
	})
	for _, want := range args[1:] {
		if strings.Contains(all, presstest.Squeeze(want)) == neg {
			ts.Fatalf("%s: %q found: %v\n%s", args[0], want, neg, all)
		}
	}
}

// pdfPages FILE N counts pages, and checks that the file asks for no scaling.
func pdfPages(ts *testscript.TestScript, neg bool, args []string) {
	onTest(ts, func(t testing.TB) {
		f := presstest.Open(t, []byte(ts.ReadFile(args[0])))
		if got := strconv.Itoa(f.Pages()); (got == args[1]) == neg {
			ts.Fatalf("%s has %s pages, want %s", args[0], got, args[1])
		}
		if !f.TrueSize() {
			ts.Fatalf("%s does not ask for print scaling none", args[0])
		}
	})
}

// onTest gives presstest, which wants a testing.TB, one that ends here.
func onTest(ts *testscript.TestScript, do func(testing.TB)) {
	t := &scriptTB{ts: ts}
	defer t.end()
	do(t)
}

type scriptTB struct {
	testing.TB
	ts   *testscript.TestScript
	last []func()
}

func (t *scriptTB) Helper()                           {}
func (t *scriptTB) Cleanup(f func())                  { t.last = append(t.last, f) }
func (t *scriptTB) Fatalf(format string, args ...any) { t.ts.Fatalf(format, args...) }

func (t *scriptTB) end() {
	for i := len(t.last) - 1; i >= 0; i-- {
		t.last[i]()
	}
}

// contract is every key `check --json` promises: keys may be added, none may
// go. Dots lead into objects, [] into lists.
const contract = `lot name identity made best_before place yield_g brix solids_g evaporated_g
jars[].jar jars[].count jars[].estimated jars[].sealed jars[].fill_g jars[].net.text jars[].net.grams
ingredients[].name ingredients[].grams ingredients[].percent ingredient_statement allergens allergen_statement
evidence.allergens evidence.unknown evidence.none evidence.confirmed evidence.keeping[].fact evidence.keeping[].source
storage.sealed storage.opened storage.unsealed net_contents qr_payload record_path
statements[].id statements[].text statements[].min_height_mm statements[].cite
supplies.lids supplies.labels supplies.tags supplies.boxes
findings[].severity findings[].code findings[].message findings[].hint findings[].cite
findings[].file findings[].line findings[].column`

// jsonKeys FILE checks that a facts object has every key of the contract.
func jsonKeys(ts *testscript.TestScript, neg bool, args []string) {
	var v any
	if err := json.Unmarshal([]byte(ts.ReadFile(args[0])), &v); err != nil {
		ts.Fatalf("%s: %v", args[0], err)
	}
	for _, path := range strings.Fields(contract) {
		if !has(v, strings.Split(path, ".")) {
			ts.Fatalf("%s has no %s", args[0], path)
		}
	}
}

// has follows a path; a list must hold something, and every element the key.
func has(v any, path []string) bool {
	if len(path) == 0 {
		return true
	}
	key, list := strings.CutSuffix(path[0], "[]")
	m, ok := v.(map[string]any)
	if !ok {
		return false
	}
	sub, ok := m[key]
	if !ok || sub == nil {
		return false
	}
	if !list {
		return has(sub, path[1:])
	}
	elements, _ := sub.([]any)
	for _, e := range elements {
		if !has(e, path[1:]) {
			return false
		}
	}
	return len(elements) > 0
}

// onlyFiles DIR NAME... checks that a folder holds these files and no other,
// hidden leftovers included; what we note about results is not counted.
func onlyFiles(ts *testscript.TestScript, neg bool, args []string) {
	var got []string
	root := ts.MkAbs(args[0])
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || d.Name() == store.ManifestName || d.Name() == job.LotsName {
			return err
		}
		rel, err := filepath.Rel(root, p)
		got = append(got, filepath.ToSlash(rel))
		return err
	})
	ts.Check(err)
	want := map[string]bool{}
	for _, n := range args[1:] {
		want[n] = true
	}
	for _, n := range got {
		if !want[n] {
			ts.Fatalf("%s holds %s", args[0], n)
		}
		delete(want, n)
	}
	for n := range want {
		ts.Fatalf("%s does not hold %s, only %v", args[0], n, got)
	}
}

// zeros FILE N writes N bytes of zero, sparse: a file too big to read.
func zeros(ts *testscript.TestScript, neg bool, args []string) {
	n, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), nil, 0o644))
	ts.Check(os.Truncate(ts.MkAbs(args[0]), n))
}

// TestHelpNamesEveryFlag keeps help, dispatch and flags one table.
func TestHelpNamesEveryFlag(t *testing.T) {
	for _, c := range commands() {
		var out, errs bytes.Buffer
		a := &app{out: &out, err: &errs, getenv: os.Getenv}
		if code := a.run([]string{"help", c.name}); code != exitOK || errs.Len() > 0 {
			t.Errorf("help %s: exit %d, %s", c.name, code, errs.String())
		}
		fs := flag.NewFlagSet(c.name, flag.ContinueOnError)
		if c.flags != nil {
			c.flags(fs, &options{})
		}
		fs.VisitAll(func(f *flag.Flag) {
			if !strings.Contains(out.String(), "-"+f.Name) || f.Usage == "" {
				t.Errorf("help %s does not explain --%s", c.name, f.Name)
			}
		})
		if !strings.Contains(usage(), "  "+c.name+" ") {
			t.Errorf("the usage does not list %s", c.name)
		}
	}
}
