package internal_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// codeReader collects codes; passers are the functions of a folder that pass
// on a code: its argument's index and the severities it may get.
type codeReader struct {
	t       *testing.T
	fset    *token.FileSet
	used    map[string]map[string]bool
	at      map[string]token.Position
	passers map[string]*passer
	funcs   []codeFunc
}

type passer struct {
	arg        int
	severities map[string]bool
}

type codeFunc struct {
	dir  string
	decl *ast.FuncDecl
}

var builtinTellers = map[string]string{"Errorf": "error", "Warnf": "warning", "Notef": "note"}

func readCodes(t *testing.T) *codeReader {
	r := &codeReader{t: t, used: map[string]map[string]bool{}, at: map[string]token.Position{}, passers: map[string]*passer{}}
	eachFile(t, func(fset *token.FileSet, f *ast.File) {
		r.fset = fset
		dir := filepath.Dir(fset.Position(f.Pos()).Filename)
		if strings.HasSuffix(filepath.ToSlash(dir), "kit/diag") {
			return // the tellers themselves; their own code is added below
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Body != nil {
				r.funcs = append(r.funcs, codeFunc{dir, fn})
			}
		}
	})
	for before := -1; before != r.known(); {
		before = r.known()
		for _, f := range r.funcs {
			r.learn(f)
		}
	}
	for _, f := range r.funcs {
		r.collect(f)
	}
	r.rowCodes()
	for _, s := range []string{"error", "warning", "note"} {
		r.use("more-findings", s, token.Position{Filename: "kit/diag"})
	}
	return r
}

func (r *codeReader) known() (n int) {
	for _, p := range r.passers {
		n += len(p.severities)
	}
	return n
}

// codeParam gives the place of the parameter called code; -1 = none.
func codeParam(fn *ast.FuncDecl) int {
	i := 0
	for _, field := range fn.Type.Params.List {
		for _, name := range field.Names {
			if name.Name == "code" {
				return i
			}
			i++
		}
	}
	return -1
}

// passerKey names a function by its folder, an exported one by its name alone.
func passerKey(dir, name string) string {
	if ast.IsExported(name) {
		return name
	}
	return dir + " " + name
}

func (r *codeReader) learn(f codeFunc) {
	at := codeParam(f.decl)
	if at < 0 {
		return
	}
	key := passerKey(f.dir, f.decl.Name.Name)
	if r.passers[key] == nil {
		r.passers[key] = &passer{at, map[string]bool{}}
	}
	ast.Inspect(f.decl.Body, func(n ast.Node) bool {
		if arg, sev := r.told(f.dir, n); arg != nil {
			if id, ok := arg.(*ast.Ident); ok && id.Name == "code" {
				maps.Copy(r.passers[key].severities, sev)
			}
		}
		return true
	})
}

// told gives the code argument of a call that tells a finding.
func (r *codeReader) told(dir string, n ast.Node) (ast.Expr, map[string]bool) {
	call, ok := n.(*ast.CallExpr)
	if !ok {
		return nil, nil
	}
	name := ""
	switch fun := call.Fun.(type) {
	case *ast.Ident:
		name = fun.Name
	case *ast.SelectorExpr:
		if x, ok := fun.X.(*ast.Ident); ok && x.Name == "fmt" {
			return nil, nil
		}
		if name = fun.Sel.Name; len(call.Args) >= 4 && builtinTellers[name] != "" {
			return call.Args[0], map[string]bool{builtinTellers[name]: true}
		}
	}
	if p := r.passers[passerKey(dir, name)]; p != nil && p.arg < len(call.Args) {
		return call.Args[p.arg], p.severities
	}
	return nil, nil
}

func (r *codeReader) collect(f codeFunc) {
	again := map[string]bool{} // severities set after the telling
	var codes []string
	called := map[ast.Node]bool{}
	ast.Inspect(f.decl.Body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			called[n.Fun] = true
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); builtinTellers[n.Sel.Name] != "" && !called[n] && !(ok && x.Name == "fmt") {
				r.t.Errorf("%s: a finding told through a variable hides its code from this test", r.fset.Position(n.Pos()))
			}
		}
		if arg, sev := r.told(f.dir, n); arg != nil {
			for _, c := range r.literals(f, arg) {
				codes = append(codes, c)
				for s := range sev {
					r.use(c, s, r.fset.Position(n.Pos()))
				}
			}
		}
		switch x := n.(type) {
		case *ast.AssignStmt:
			r.assigned(x, again, &codes)
		case *ast.CompositeLit:
			r.literal(x)
		}
		return true
	})
	for _, c := range codes {
		for s := range again {
			r.use(c, s, r.fset.Position(f.decl.Pos()))
		}
	}
}

// literals gives the codes an argument may be; a parameter code is told where
// the function is called.
func (r *codeReader) literals(f codeFunc, arg ast.Expr) (out []string) {
	switch x := arg.(type) {
	case *ast.BasicLit:
		s, _ := strconv.Unquote(x.Value)
		return []string{s}
	case *ast.SelectorExpr:
		if f.decl.Name.Name == "tellWording" || f.decl.Name.Name == "namings" {
			return nil // the id of a row of data: see rowCodes
		}
	case *ast.Ident:
		if x.Name == "code" && codeParam(f.decl) >= 0 {
			return nil
		}
		ast.Inspect(f.decl.Body, func(n ast.Node) bool {
			if a, ok := n.(*ast.AssignStmt); ok && len(a.Lhs) == len(a.Rhs) {
				for i, l := range a.Lhs {
					if id, ok := l.(*ast.Ident); ok && id.Name == x.Name {
						if lit, ok := a.Rhs[i].(*ast.BasicLit); ok {
							s, _ := strconv.Unquote(lit.Value)
							out = append(out, s)
						}
					}
				}
			}
			return true
		})
	}
	if len(out) == 0 {
		r.t.Errorf("%s: the code of this finding cannot be read from the source: pass a constant", r.fset.Position(arg.Pos()))
	}
	return out
}

// assigned notes d.Severity = diag.X and d.Code = "x".
func (r *codeReader) assigned(a *ast.AssignStmt, again map[string]bool, codes *[]string) {
	for i, l := range a.Lhs {
		s, ok := l.(*ast.SelectorExpr)
		if !ok || i >= len(a.Rhs) {
			continue
		}
		switch s.Sel.Name {
		case "Severity":
			if v, ok := a.Rhs[i].(*ast.SelectorExpr); ok {
				again[strings.ToLower(v.Sel.Name)] = true
			}
		case "Code":
			if v, ok := a.Rhs[i].(*ast.BasicLit); ok {
				c, _ := strconv.Unquote(v.Value)
				r.use(c, "error", r.fset.Position(a.Pos()))
				*codes = append(*codes, c)
			}
		}
	}
}

// literal notes diag.Diagnostic{Severity: diag.Error, Code: "x"}.
func (r *codeReader) literal(x *ast.CompositeLit) {
	var code, sev string
	for _, e := range x.Elts {
		kv, ok := e.(*ast.KeyValueExpr)
		if !ok {
			continue
		}
		switch key, _ := kv.Key.(*ast.Ident); {
		case key == nil:
		case key.Name == "Code":
			if v, ok := kv.Value.(*ast.BasicLit); ok {
				code, _ = strconv.Unquote(v.Value)
			}
		case key.Name == "Severity":
			if v, ok := kv.Value.(*ast.SelectorExpr); ok {
				sev = strings.ToLower(v.Sel.Name)
			}
		}
	}
	if code != "" && sev != "" {
		r.use(code, sev, r.fset.Position(x.Pos()))
	}
}

func (r *codeReader) use(code, severity string, at token.Position) {
	if r.used[code] == nil {
		r.used[code], r.at[code] = map[string]bool{}, at
	}
	r.used[code][severity] = true
}

// rowCodes are the findings that rows of a place's data tell: their id is the
// code. On a gift an error is a note; beside what makes the words untrue all are errors.
func (r *codeReader) rowCodes() {
	files, err := filepath.Glob("../templates/places/*.toml")
	if err != nil || len(files) == 0 {
		r.t.Fatal("no places", err)
	}
	for _, file := range files {
		var rows struct {
			Wording, Naming []struct {
				ID, Level    string
				Beside, Held []string
				Maybe        string
			}
			Nutrition struct{ Level string }
		}
		if _, err := toml.DecodeFile(file, &rows); err != nil {
			r.t.Fatal(err)
		}
		if level := rows.Nutrition.Level; level != "" {
			r.use("nutrition-claim", level, token.Position{Filename: file})
		}
		for _, row := range append(rows.Wording, rows.Naming...) {
			r.use(row.ID, row.Level, token.Position{Filename: file})
			if row.Level == "error" || len(row.Beside)+len(row.Held) > 0 {
				r.use(row.ID, "error", token.Position{Filename: file})
				r.use(row.ID, "note", token.Position{Filename: file})
			}
			if row.Maybe != "" {
				r.use(row.ID, "warning", token.Position{Filename: file})
			}
		}
	}
}

// eachFile parses every Go file of the program itself.
func eachFile(t *testing.T, f func(*token.FileSet, *ast.File)) {
	t.Helper()
	fset := token.NewFileSet()
	for _, root := range []string{".", "../cmd"} {
		err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
				return err
			}
			parsed, err := parser.ParseFile(fset, p, nil, 0)
			if err != nil {
				return fmt.Errorf("%s: %w", p, err)
			}
			f(fset, parsed)
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}
