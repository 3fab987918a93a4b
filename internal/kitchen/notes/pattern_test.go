package notes

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// everyPattern gives the patterns of the package, as its source writes them.
func everyPattern(t *testing.T) (out []pattern) {
	t.Helper()
	files, _ := filepath.Glob("*.go")
	texts, words := map[string]ast.Expr{}, []ast.Expr{}
	for _, name := range files {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil || strings.HasSuffix(name, "_test.go") {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ValueSpec:
				for i, v := range n.Values {
					texts[n.Names[i].Name] = v
				}
			case *ast.CallExpr:
				if id, ok := n.Fun.(*ast.Ident); ok && id.Name == "pattern" {
					words = append(words, n.Args[0])
				}
			}
			return true
		})
	}
	for _, w := range words {
		out = append(out, pattern(textOf(t, w, texts)))
	}
	return out
}

// textOf works out a text of literals and constants.
func textOf(t *testing.T, e ast.Expr, texts map[string]ast.Expr) string {
	t.Helper()
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		if err != nil {
			t.Fatal(err)
		}
		return s
	case *ast.Ident:
		return textOf(t, texts[e.Name], texts)
	case *ast.BinaryExpr:
		return textOf(t, e.X, texts) + textOf(t, e.Y, texts)
	}
	t.Fatalf("%T is no text", e)
	return ""
}

// TestEveryPatternCompiles: a pattern is compiled late, so a fault in one would
// show only in the line it reads.
func TestEveryPatternCompiles(t *testing.T) {
	all := everyPattern(t)
	if len(all) < 200 {
		t.Errorf("%d patterns known, want them all", len(all))
	}
	inClass := regexp.MustCompile(`\[[^\]]*[` + accented + `]`)
	for _, p := range all {
		for _, text := range []string{string(p), spellOut(string(p), "(?:", ")")} {
			if _, err := regexp.Compile(text); err != nil {
				t.Errorf("%s: %v", p, err)
			}
		}
		if inClass.MatchString(string(p)) {
			t.Errorf("an accented letter in a class is not found in %s", p)
		}
	}
}

// A word that begins or ends with an accented letter stands between boundaries like
// any other, and none stands within a word: RE2's \b is "at ASCII word boundary"
// (google/re2, doc/syntax.txt, read 27 Nov 2026).
func TestAccentsAtBoundaries(t *testing.T) {
	for _, c := range []struct {
		text string
		p    pattern
	}{{"porter à ébullition", cooking}, {"cuire jusqu'à 105", tempWords}, {"es wird dick", finished}, {"bien épais", finished}, {"égoutter une nuit", strained}, {"ÉGOUTTER", strained}} {
		if !c.p.MatchString(c.text) {
			t.Errorf("%q is not matched by %s", c.text, c.p)
		}
	}
	for _, text := range []string{"donne 4 pots", "der Rand", "sterilised jars", "set", "afin d'ébouillanter le couvercle"} {
		if counted.MatchString(text) || process.MatchString(text) || cooking.MatchString(text) {
			t.Errorf("%q is matched", text)
		}
	}
}
