package internal_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// policy says which of our packages each package may import (beside std).
// A package that is missing here fails the test, so a new one is decided on,
// not drifted into. After the approach of Go's own go/build/deps_test.go.
var policy = map[string]string{
	"fonts":     "",
	"templates": "",

	"internal/kit":     "",
	"internal/kitchen": "",
	"internal/law":     "kit/diag kitchen/cook law/label law/place law/draft law/us law/eu",
	"internal/draw":    "",
	"internal/give":    "",
	"internal/app":     "",

	"internal/kit/cores":        "",
	"internal/kit/steady":       "",
	"internal/kit/words":        "",
	"internal/kit/unit":         "kit/words",
	"internal/kit/diag":         "kit/words",
	"internal/kit/place":        "",
	"internal/kit/source":       "kit/unit kit/diag",
	"internal/kit/csvfile":      "kit/diag",
	"internal/kit/edit":         "kit/unit kit/diag kit/source",
	"internal/kitchen/pantry":   "kit/words kit/unit kit/diag templates",
	"internal/kitchen/allergen": "templates",
	"internal/kitchen/batch":    "kit/place kit/unit kit/diag kit/source kitchen/pantry",
	"internal/kitchen/cook":     "kit/unit kit/diag kitchen/pantry kitchen/batch kitchen/allergen",
	"internal/kitchen/notes":    "kit/unit kitchen/pantry",
	"internal/kitchen/scale":    "kit/unit kit/diag kitchen/pantry kitchen/batch kitchen/cook",
	"internal/kitchen/weigh":    "kit/unit kit/diag",
	"internal/law/label":        "kit/unit",
	"internal/law/place":        "kit/place kit/words kit/unit kit/diag kit/source kitchen/weigh law/label templates",
	"internal/law/draft":        "kit/words kit/unit kit/diag kitchen/pantry kitchen/batch kitchen/cook kitchen/allergen law/label law/place",
	"internal/law/us":           "kit/words kit/unit kit/diag kitchen/batch kitchen/cook kitchen/pantry kitchen/allergen law/label law/place law/draft",
	"internal/law/eu":           "kit/words kit/unit kit/diag kitchen/cook kitchen/pantry kitchen/allergen kitchen/weigh law/label law/place law/draft",
	"internal/draw/page":        "kit/unit",
	"internal/draw/typeset":     "kit/unit law/label draw/page draw/face",
	"internal/draw/face":        "kit/unit draw/page fonts",
	"internal/draw/palette":     "kit/words kit/unit kit/diag draw/page templates",
	"internal/draw/ornament":    "kit/unit draw/page draw/palette",
	"internal/draw/design":      "kit/unit kit/diag kit/source draw/page law/label draw/palette draw/ornament",
	"internal/draw/compose":     "draw/typeset kit/unit kit/diag law/label draw/page draw/face draw/palette draw/ornament draw/design",
	"internal/draw/inspect":     "kit/unit kit/diag law/label draw/page draw/face draw/palette",
	"internal/draw/sheet":       "kit/unit kit/diag kit/source draw/page draw/face draw/typeset",

	"internal/draw/press": "kit/cores kit/unit kit/diag law/label draw/page draw/face draw/palette draw/design draw/compose draw/inspect draw/bend draw/sheet draw/picture draw/pdf draw/svg draw/png",

	"internal/draw/pdf":     "kit/unit draw/page draw/face",
	"internal/draw/svg":     "kit/unit draw/page draw/face",
	"internal/draw/bend":    "kit/unit draw/page draw/face",
	"internal/draw/picture": "draw/artwork draw/page",
	"internal/draw/artwork": "kit/unit draw/page",
	"internal/draw/png":     "kit/unit draw/page draw/face",

	"internal/give/table":     "kit/unit kit/diag kitchen/batch draw/page draw/face draw/typeset templates",
	"internal/give/proof":     "give/table kit/unit kit/diag law/label draw/page draw/face draw/inspect draw/typeset",
	"internal/give/pack":      "give/table give/ledger kit/csvfile kit/place kit/words kitchen/allergen kit/unit kit/diag kit/source kitchen/pantry kitchen/batch kitchen/cook kitchen/weigh law/label draw/page draw/face draw/inspect draw/typeset templates",
	"internal/give/season":    "give/ledger give/pack give/table kit/unit kitchen/batch kitchen/cook",
	"internal/give/ledger":    "kit/unit kit/diag kit/csvfile",
	"internal/give/facts":     "kit/unit kit/diag kitchen/cook law/label give/record",
	"internal/give/record":    "kit/unit kit/diag kitchen/pantry kitchen/batch kitchen/cook law/label templates",
	"internal/app/store":      "",
	"internal/draw/presstest": "kit/unit draw/page",
	"internal/draw/marktest":  "kit/unit draw/page", // where each mark of a sheet stands, for tests

	"internal/app/job":  "kit/csvfile kit/cores kit/place kit/unit kit/diag kit/source kit/edit kitchen/pantry kitchen/batch kitchen/cook kitchen/scale kitchen/weigh kitchen/notes law law/label law/place law/draft draw/page draw/face draw/inspect draw/picture draw/press give/pack give/season give/table give/proof give/ledger give/record give/facts fonts templates",
	"internal/app/web":  "kit/unit kit/diag kit/source kit/edit law/label draw/page app/job app/store templates fonts",
	"internal/app/site": "app/job app/web templates",
	"cmd/jarmark-page":  "app/site app/store app/job app/web draw/face",
	"cmd/jarmark":       "app/site kit/unit kit/diag law/label kitchen/weigh app/job app/store app/web testdata/demo",

	"testdata/demo": "",
}

// outside says which package alone may import a third-party library.
var outside = map[string][]string{
	"github.com/BurntSushi/toml":      {"internal/kit/source"},
	"github.com/go-pdf/fpdf":          {"internal/draw/pdf"},
	"github.com/skip2/go-qrcode":      {"internal/draw/compose"},
	"golang.org/x/image/font/sfnt":    {"internal/draw/face", "internal/draw/presstest"}, // the latter makes typefaces for tests
	"golang.org/x/image/vector":       {"internal/draw/png"},
	"golang.org/x/image/colornames":   {"internal/draw/artwork", "internal/draw/palette"},
	"golang.org/x/sys":                {"internal/app/store"},
	"github.com/andybalholm/brotli":   {"cmd/jarmark-page"},
	"github.com/klippa-app/go-pdfium": {"internal/draw/presstest"},
	"github.com/makiuchi-d/gozxing":   {"internal/draw/presstest"},
	"pgregory.net/rapid":              {"internal/kit/steady"}, // and tests, which are not looked at here
}

func TestImportPolicy(t *testing.T) {
	for path, imports := range ourImports(t) {
		allowed, known := policy[path]
		if !known {
			t.Errorf("%s is not in the import policy: add it to internal/deps_test.go", path)
			continue
		}
		may := map[string]bool{}
		for _, a := range strings.Fields(allowed) {
			may[strings.TrimPrefix(a, "internal/")] = true
		}
		for _, imp := range imports {
			if short, ours := strings.CutPrefix(imp, "jarmark/"); ours {
				if !may[strings.TrimPrefix(short, "internal/")] {
					t.Errorf("%s imports %s: not allowed by the import policy", path, short)
				}
				continue
			}
			for lib, owners := range outside {
				if (imp == lib || strings.HasPrefix(imp, lib+"/")) && !contains(owners, path) {
					t.Errorf("%s imports %s: only %v may", path, imp, owners)
				}
			}
		}
	}
}

// ourImports reads the import lists of all non-test Go files by package path.
func ourImports(t *testing.T) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	err := filepath.WalkDir("..", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(strings.TrimPrefix(filepath.Dir(p), "../"))
		if strings.HasPrefix(pkg, ".ci") {
			return nil // no part of the product
		}
		out[pkg] = append(out[pkg], nil...)
		for _, s := range f.Imports {
			name, _ := strconv.Unquote(s.Path.Value)
			out[pkg] = append(out[pkg], name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestPropertiesAreSteady: a package whose tests draw cases draws the same ones
// in every run, or the same commit would pass today and fail tomorrow.
func TestPropertiesAreSteady(t *testing.T) {
	draws, steady := map[string]bool{}, map[string]bool{}
	err := filepath.WalkDir("..", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, s := range f.Imports {
			switch s.Path.Value {
			case `"pgregory.net/rapid"`:
				draws[filepath.Dir(p)] = true
			case `"jarmark/internal/kit/steady"`:
				steady[filepath.Dir(p)] = true
			}
		}
		return nil
	})
	if err != nil || len(draws) == 0 {
		t.Fatal("no properties found: ", err)
	}
	for dir := range draws {
		if !steady[dir] {
			t.Errorf("%s draws cases and does not import internal/kit/steady", dir)
		}
	}
}

func contains(list []string, s string) bool {
	for _, v := range list {
		if v == s {
			return true
		}
	}
	return false
}

// TestFileSizes keeps files small enough to read in one sitting.
func TestFileSizes(t *testing.T) {
	const limit = 330 // lines; the house rule is about 300
	err := filepath.WalkDir("..", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") {
			return err
		}
		if n := lines(t, p); n > limit {
			t.Errorf("%s has %d lines; split it (limit %d)", p, n, limit)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
