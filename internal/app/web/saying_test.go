package web

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// hints are all hints of the program, as far as they are written out: what
// stands between is X.
func hints(t *testing.T) (out []string) {
	t.Helper()
	root := "../.."
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		src, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, src, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if f, ok := n.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Hinted" {
					out = append(out, spelled(n.Args[0]))
				}
				if f, ok := n.Fun.(*ast.Ident); ok && f.Name == "fail" && len(n.Args) > 1 {
					out = append(out, spelled(n.Args[0]))
				}
			case *ast.AssignStmt:
				for i, to := range n.Lhs {
					name, isName := to.(*ast.Ident)
					of, isField := to.(*ast.SelectorExpr)
					if i < len(n.Rhs) && (isName && name.Name == "hint" || isField && of.Sel.Name == "Hint") {
						out = append(out, spelled(n.Rhs[i]))
					}
				}
			case *ast.KeyValueExpr:
				if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Hint" {
					out = append(out, spelled(n.Value))
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func spelled(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, _ := strconv.Unquote(e.Value)
		return s
	case *ast.BinaryExpr:
		return spelled(e.X) + spelled(e.Y)
	case *ast.CallExpr:
		if f, ok := e.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Sprintf" && len(e.Args) > 0 {
			return regexp.MustCompile(`%[a-z+.0-9]*[a-z]`).ReplaceAllString(spelled(e.Args[0]), "X")
		}
	}
	return "X"
}

// No hint of the program speaks of tables, keys or commands once the page has
// worded it.
func TestThePageSpeaksOfTheKitchen(t *testing.T) {
	all := hints(t)
	if len(all) < 300 {
		t.Fatalf("%d hints are few", len(all))
	}
	file := regexp.MustCompile(`\[|\{| = |\bjarmark [a-z]|(^|[ (])--[a-z]|kitchen\.toml|[a-z]_[a-z]`)
	for _, h := range all {
		if s := said(h); file.MatchString(s) && !strings.Contains(h, "brackets") {
			t.Errorf("%q is said as %q", h, s)
		}
	}
	for hint, want := range map[string]string{
		`write place = "us-or" (your state) in kitchen.toml; jarmark places lists them`:                        `write “Place”: "us-or" (your state) on the Kitchen page; Place on the Kitchen page lists them`,
		"check the counts of this lot's rows, and count under [[fill]]":                                        "check the counts of this lot's rows, and count under “Jars”",
		`weigh three filled jars or more, take the empty jar off, and write net = ["312 g"]`:                   `weigh three filled jars or more, take the empty jar off, and write “Net weights”: "312 g"`,
		"weigh the finished pot (cook.finished_pot) or take a refractometer reading (cook.brix)":               "weigh the finished pot (“Finished jam on the scale”) or take a refractometer reading (“Refractometer, °Brix”)",
		"write a weight (1.8 kg, 2 lb 3 oz), a kitchen measure (4 cups, 2 tbsp, 250 ml) or a count (3 lemons)": "write a weight (1.8 kg, 2 lb 3 oz), a kitchen measure (4 cups, 2 tbsp, 250 ml) or a count (3 lemons)",
		"did you mean jam?": "did you mean jam?",
	} {
		if got := said(hint); got != want {
			t.Errorf("%q\n is said as %q\n      want %q", hint, got, want)
		}
	}
}
