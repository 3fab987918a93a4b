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

	"internal/unit":     "",
	"internal/diag":     "",
	"internal/source":   "diag",
	"internal/edit":     "unit diag source",
	"internal/pantry":   "unit diag",
	"internal/batch":    "unit diag source pantry",
	"internal/cook":     "unit diag pantry batch",
	"internal/scale":    "unit diag pantry batch cook",
	"internal/weigh":    "unit diag",
	"internal/label":    "unit",
	"internal/rule":     "unit diag source pantry batch cook label weigh",
	"internal/page":     "unit",
	"internal/face":     "unit page fonts",
	"internal/palette":  "unit diag page",
	"internal/ornament": "unit page palette",
	"internal/design":   "unit diag source page label palette ornament",
	"internal/compose":  "unit diag label page face palette ornament design",
	"internal/sheet":    "unit diag source page",

	"internal/render/pdf": "unit page face",
	"internal/render/svg": "unit page face",
	"internal/render/png": "unit page face",

	"internal/pack":      "unit diag source pantry batch cook label page face",
	"internal/record":    "unit diag pantry batch cook label templates",
	"internal/store":     "",
	"internal/presstest": "unit page",

	"internal/job": "unit diag source pantry batch cook scale weigh label rule page face palette design compose sheet render/pdf render/svg render/png pack record edit fonts templates",
	"internal/web": "unit diag source edit label page job store templates fonts",
	"cmd/jarmark":  "unit diag label weigh job store web testdata/demo",

	"testdata/demo": "",
}

// outside says which package alone may import a third-party library.
var outside = map[string][]string{
	"github.com/BurntSushi/toml":      {"internal/source"},
	"github.com/go-pdf/fpdf":          {"internal/render/pdf"},
	"github.com/skip2/go-qrcode":      {"internal/compose"},
	"golang.org/x/image/font/sfnt":    {"internal/face"},
	"golang.org/x/image/vector":       {"internal/render/png"},
	"github.com/klippa-app/go-pdfium": {"internal/presstest"},
	"github.com/makiuchi-d/gozxing":   {"internal/presstest"},
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
