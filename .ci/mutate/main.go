// Command mutate plants one small bug at a time and asks whether the tests see
// it. Nothing in the tree is changed: the compiler is handed the changed file in
// place of the true one (go help build, -overlay).
//
//	go run .ci/mutate/main.go [-n 60] [-seed 1] [-with PKG,PKG] PKG...
//
// n bugs are drawn at random from those of each package, the same for the same
// seed; -with names packages whose tests are asked too. It prints every bug that
// lived, and the share that was killed. A bug that does not compile is no bug.
package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// mutant is one planted bug: what does it, and takes it back.
type mutant struct {
	file     string
	at       token.Position
	what     string
	do, undo func()
}

func main() {
	n := flag.Int("n", 60, "bugs a package")
	seed := flag.Uint64("seed", 1, "of the choice")
	with := flag.String("with", "", "packages whose tests are asked too")
	flag.Parse()
	killed, lived := 0, 0
	for _, pkg := range flag.Args() {
		tests := append([]string{pkg}, strings.FieldsFunc(*with, func(r rune) bool { return r == ',' })...)
		k, l, err := run(pkg, tests, *n, *seed)
		if err != nil {
			fmt.Fprintln(os.Stderr, "mutate:", err)
			os.Exit(1)
		}
		killed, lived = killed+k, lived+l
		fmt.Printf("%s: %d killed, %d lived\n", pkg, k, l)
	}
	fmt.Printf("%d of %d killed\n", killed, killed+lived)
}

func run(pkg string, tests []string, n int, seed uint64) (killed, lived int, err error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return 0, 0, err
	}
	defer os.RemoveAll(dir)
	fset := token.NewFileSet()
	files, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return 0, 0, err
	}
	var all []mutant
	trees := map[string]*ast.File{}
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(fset, f, nil, parser.ParseComments)
		if err != nil {
			return 0, 0, err
		}
		trees[f] = tree
		all = append(all, mutants(fset, f, tree)...)
	}
	rand.New(rand.NewPCG(seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	for _, m := range all {
		if killed+lived == n {
			break
		}
		m.do()
		state, err := try(dir, fset, m.file, trees[m.file], tests)
		m.undo()
		for _, p := range tests { // a draw that failed would be tried again, and fail for the next bug
			if err := os.RemoveAll(filepath.Join(p, "testdata", "rapid")); err != nil {
				return killed, lived, err
			}
		}
		switch {
		case err != nil:
			return killed, lived, err
		case state == "killed":
			killed++
		case state == "lived":
			lived++
			fmt.Printf("lived  %s:%d:%d: %s\n", m.file, m.at.Line, m.at.Column, m.what)
		}
	}
	return killed, lived, nil
}

// try runs the tests with one file changed.
func try(dir string, fset *token.FileSet, file string, tree *ast.File, tests []string) (string, error) {
	var text bytes.Buffer
	if err := printer.Fprint(&text, fset, tree); err != nil {
		return "", err
	}
	to, overlay := filepath.Join(dir, filepath.Base(file)), filepath.Join(dir, "overlay.json")
	from, err := filepath.Abs(file)
	if err != nil {
		return "", err
	}
	list, err := json.Marshal(map[string]any{"Replace": map[string]string{from: to}})
	if err != nil {
		return "", err
	}
	for name, data := range map[string][]byte{to: text.Bytes(), overlay: list} {
		if err := os.WriteFile(name, data, 0o644); err != nil {
			return "", err
		}
	}
	ctx, stop := context.WithTimeout(context.Background(), 5*time.Minute)
	defer stop()
	out, err := exec.CommandContext(ctx, "go", append([]string{"test", "-short", "-failfast", "-vet=off", "-overlay", overlay}, tests...)...).CombinedOutput()
	switch {
	case err == nil:
		return "lived", nil
	case bytes.Contains(out, []byte("[build failed]")), bytes.Contains(out, []byte("[setup failed]")):
		return "not viable", nil
	}
	return "killed", nil // by a failing test, or by running for ever
}

var swaps = map[token.Token]token.Token{
	token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	token.LAND: token.LOR, token.LOR: token.LAND, token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN, token.INC: token.DEC, token.DEC: token.INC,
}

// mutants lists the bugs of one file.
func mutants(fset *token.FileSet, file string, tree *ast.File) (out []mutant) {
	add := func(at token.Pos, what string, do, undo func()) {
		out = append(out, mutant{file, fset.Position(at), what, do, undo})
	}
	swap := func(at token.Pos, op *token.Token) {
		if to, ok := swaps[*op]; ok {
			from := *op
			add(at, fmt.Sprintf("%s for %s", to, from), func() { *op = to }, func() { *op = from })
		}
	}
	skip := map[ast.Node]bool{}
	ast.Inspect(tree, func(node ast.Node) bool {
		if skip[node] {
			return false
		}
		switch x := node.(type) {
		case *ast.CallExpr:
			if arg := unseen(x); arg != nil {
				skip[arg] = true
			}
		case *ast.BinaryExpr:
			swap(x.OpPos, &x.Op)
		case *ast.AssignStmt:
			swap(x.TokPos, &x.Tok)
		case *ast.IncDecStmt:
			swap(x.TokPos, &x.Tok)
		case *ast.IfStmt:
			cond := x.Cond
			add(x.Pos(), "condition turned round", func() { x.Cond = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: cond}} }, func() { x.Cond = cond })
		case *ast.BasicLit:
			number(x, add)
		case *ast.Ident:
			if to, ok := map[string]string{"true": "false", "false": "true"}[x.Name]; ok {
				from := x.Name
				add(x.Pos(), to+" for "+from, func() { x.Name = to }, func() { x.Name = from })
			}
		case *ast.BlockStmt:
			dropped(x, add)
		}
		return true
	})
	return out
}

// unseen is an argument no test can see: what room to make, and the bits of a
// number, of which all but 32 are 64.
func unseen(x *ast.CallExpr) ast.Expr {
	last := len(x.Args) - 1
	switch f := x.Fun.(type) {
	case *ast.Ident:
		if last > 0 && f.Name == "make" {
			if _, isMap := x.Args[0].(*ast.MapType); isMap || last == 2 {
				return x.Args[last]
			}
		}
	case *ast.SelectorExpr:
		if pkg, ok := f.X.(*ast.Ident); ok && pkg.Name == "strconv" && (f.Sel.Name == "ParseFloat" || f.Sel.Name == "FormatFloat") {
			return x.Args[last]
		}
	}
	return nil
}

// number makes a number one more.
func number(x *ast.BasicLit, add func(token.Pos, string, func(), func())) {
	from := x.Value
	if v, err := strconv.ParseFloat(from, 64); err == nil && (x.Kind == token.INT || x.Kind == token.FLOAT) {
		to := strconv.FormatFloat(v+1, 'f', -1, 64)
		add(x.Pos(), to+" for "+from, func() { x.Value = to }, func() { x.Value = from })
	}
}

// dropped leaves out a call or a change of a value.
func dropped(b *ast.BlockStmt, add func(token.Pos, string, func(), func())) {
	for i, s := range b.List {
		switch x := s.(type) {
		case *ast.ExprStmt:
		case *ast.AssignStmt:
			if x.Tok == token.DEFINE {
				continue
			}
		default:
			continue
		}
		add(s.Pos(), "statement left out", func() { b.List[i] = &ast.EmptyStmt{Semicolon: s.Pos()} }, func() { b.List[i] = s })
	}
}
