package internal_test

import (
	"go/ast"
	"go/token"
	"maps"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
)

// TestCodesAreRegistered reads every finding out of the source: its code and
// the severities it is told with are those of internal/kit/diag/codes.csv, no
// more and no less. It follows functions that pass a code on.
func TestCodesAreRegistered(t *testing.T) {
	r := readCodes(t)
	table := map[string]string{}
	for _, c := range diag.Codes() {
		table[c.Code] = c.Severities
	}
	for code, used := range r.used {
		want := strings.Join(slices.Sorted(maps.Keys(used)), " ")
		if got, ok := table[code]; !ok {
			t.Errorf("%s (%s) is not in codes.csv; used at %s", code, want, r.at[code])
		} else if sorted(got) != want {
			t.Errorf("%s: codes.csv says %q, the source %q, at %s", code, got, want, r.at[code])
		}
	}
	for code := range table {
		if r.used[code] == nil {
			t.Errorf("%s is in codes.csv and told nowhere", code)
		}
	}
}

// TestNoBranchOnCodes: what a finding stops is data; no program text compares
// its code.
func TestNoBranchOnCodes(t *testing.T) {
	eachFile(t, func(fset *token.FileSet, f *ast.File) {
		if f.Name.Name == "diag" || f.Name.Name == "unit" {
			return // the register; and codes of currencies
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.BinaryExpr:
				if (x.Op == token.EQL || x.Op == token.NEQ) && (isCode(x.X) || isCode(x.Y)) {
					t.Errorf("%s compares the code of a finding", fset.Position(x.Pos()))
				}
			case *ast.IndexExpr:
				if isCode(x.Index) {
					t.Errorf("%s looks up the code of a finding", fset.Position(x.Pos()))
				}
			case *ast.SwitchStmt:
				if x.Tag != nil && isCode(x.Tag) {
					t.Errorf("%s switches on the code of a finding", fset.Position(x.Pos()))
				}
			}
			return true
		})
	})
}

func isCode(e ast.Expr) bool {
	s, ok := e.(*ast.SelectorExpr)
	if id, isID := e.(*ast.Ident); isID && id.Name == "code" {
		return true
	}
	return ok && s.Sel.Name == "Code"
}

func sorted(s string) string {
	f := strings.Fields(s)
	slices.Sort(f)
	return strings.Join(f, " ")
}
