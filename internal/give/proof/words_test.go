package proof

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/draw/inspect"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// languages are those a proof is set in; English words are the keys.
var languages = []string{"de", "fr"}

// Every word the page says is in the table of words in every language: what the
// source gives to Say and its like, and the names and marks it takes from maps.
func TestProofWordsAreInTheTable(t *testing.T) {
	said := saidWords(t)
	for _, name := range lineNames {
		said = append(said, name)
	}
	for _, words := range readHow {
		said = append(said, words)
	}
	if len(said) < 40 {
		t.Fatalf("only %d words found: %q", len(said), said)
	}
	for _, lang := range languages {
		w := table.WordsIn(lang)
		for _, s := range said {
			if !w.Knows(s) {
				t.Errorf("%s: no words for %q", lang, s)
			}
		}
	}
}

// saidWords reads the texts given to Say, ask and contBand in this package.
func saidWords(t *testing.T) (out []string) {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			called := ""
			switch fun := call.Fun.(type) {
			case *ast.SelectorExpr:
				called = fun.Sel.Name
			case *ast.Ident:
				called = fun.Name
			}
			for _, arg := range call.Args {
				lit, ok := arg.(*ast.BasicLit)
				if text := ""; ok && lit.Kind == token.STRING && (called == "Say" || called == "ask" || called == "contBand") {
					if text, err = strconv.Unquote(lit.Value); err == nil {
						out = append(out, text)
					}
				}
			}
			return true
		})
	}
	return out
}

// The verdict, the least height, the height measured and what else is asked, in
// the four ways the page says them; figures by the law's own heights: 21 CFR
// 101.2(c) 1/16 inch, Regulation (EU) 1169/2011 Art 13(2) 1.2 mm, and a type size.
func TestVerdictLines(t *testing.T) {
	sixteenth, x := unit.Inch/16, 1200*unit.Micrometre
	line := func(on label.Measure, least, got unit.Length, printed bool) Line {
		return Line{Line: inspect.Line{Block: label.Block{Kind: label.Net, Min: label.Height{On: on, Length: least}, Exact: true, Bold: true, Zone: label.Bottom, Clear: true, OfLargest: 50, Cite: "Act 1"},
			Letter: "o", Got: got, Printed: printed}, Confidence: "secondary", ReadOn: "2026-11-27"}
	}
	for _, c := range []struct {
		lang     string
		american bool
		line     Line
		want     []string // verdict, least, measured, name
		ok       bool
	}{
		{"en", true, line(label.AnyCase, sixteenth, sixteenth+10*unit.Micrometre, true), []string{"meets", "least 1.59 mm (0.0625 in)", "o 1.60 mm (0.0629 in)", "Net contents"}, true},
		{"en", true, line(label.AnyCase, sixteenth, sixteenth-100*unit.Micrometre, true), []string{"short by 0.10 mm (0.0039 in)", "least 1.59 mm (0.0625 in)", "o 1.49 mm (0.0586 in)", "Net contents"}, false},
		{"en", false, line(label.XHeight, x, x, true), []string{"meets", "least 1.20 mm", "o 1.20 mm", "Net contents"}, true},
		{"de", false, line(label.XHeight, x, x-200*unit.Micrometre, true), []string{"um 0,20 mm zu klein", "mindestens 1,20 mm", "o 1,00 mm", "Füllmenge"}, false},
		{"de", false, line(label.XHeight, x, x, true), []string{"erfüllt", "mindestens 1,20 mm", "o 1,20 mm", "Füllmenge"}, true},
		{"de", false, line(label.XHeight, 0, x, false), []string{"fehlt", "keine Höhe vorgeschrieben", "o 1,20 mm", "Füllmenge"}, false},
		{"fr", false, line(label.XHeight, x, x-200*unit.Micrometre, true), []string{"trop petit de 0,20 mm", "au moins 1,20 mm", "o 1,00 mm", "Quantité nette"}, false},
		{"fr", false, line(label.PointSize, unit.Points(10), unit.Points(10), true), []string{"conforme", "au moins 10,0 pt", "o 10,0 pt", "Quantité nette"}, true},
		{"fr", false, line(label.XHeight, 0, 0, false), []string{"absent", "aucune hauteur prescrite", "o 0,00 mm", "Quantité nette"}, false},
	} {
		p := Proof{American: c.american, Law: label.Content{Lang: c.lang}, Lines: []Line{c.line}}
		w := p.words()
		verdict, ok := p.verdict(w, c.line)
		got := []string{verdict, p.least(w, c.line), p.measuredText(w, c.line), c.line.name(w)}
		if strings.Join(got, "|") != strings.Join(c.want, "|") || ok != c.ok {
			t.Errorf("%s: %q %v, want %q %v", c.lang, got, ok, c.want, c.ok)
		}
		n := map[bool]string{true: "1", false: "0"}[c.ok]
		if s := p.summary(w); !strings.HasPrefix(s, n) || !strings.Contains(s, "1") {
			t.Errorf("%s: %q", c.lang, s)
		}
	}
}

// What else is asked of a line, where it stands and how that was read.
func TestAskedAndClause(t *testing.T) {
	b := label.Block{Kind: label.Net, Exact: true, Bold: true, Zone: label.Bottom, Clear: true, OfLargest: 50, Cite: "21 CFR 101.7"}
	for _, c := range []struct {
		lang, asked, clause string
		american            bool
	}{
		{"en", "letter for letter · bold · in the lowest 30 % of the display panel · clear space around · at least 50 % of the largest print", "21 CFR 101.7 · read on a page about the law, Nov 27, 2026", true},
		{"de", "wörtlich · fett · in den untersten 30 % des Hauptansichtsfelds · mit freiem Raum · mindestens 50 % der größten Schrift", "21 CFR 101.7 · auf einer Seite über das Gesetz gelesen, 27. November 2026", false},
		{"fr", "mot pour mot · en gras · dans les 30 % du bas de la face principale · entouré d’un blanc · au moins 50 % du plus grand caractère", "", false},
	} {
		p := Proof{American: c.american, Law: label.Content{Lang: c.lang}}
		l := Line{Line: inspect.Line{Block: b}, Confidence: "secondary", ReadOn: "2026-11-27"}
		if got := p.asked(p.words(), b); got != c.asked {
			t.Errorf("%s: %q", c.lang, got)
		}
		if got := p.clause(p.words(), l); c.clause != "" && got != c.clause || !strings.HasPrefix(got, b.Cite+" · ") {
			t.Errorf("%s: %q", c.lang, got)
		}
		if got := p.clause(p.words(), Line{Line: inspect.Line{Block: b}}); got != b.Cite {
			t.Errorf("%s, nothing to read: %q", c.lang, got)
		}
		plain := label.Block{Zone: label.Panel}
		if got := p.asked(p.words(), plain); got == "" || strings.Contains(got, "·") {
			t.Errorf("%s, the panel alone: %q", c.lang, got)
		}
	}
}

// Where the label stands: the panel in square inches in the United States
// (1 in = 25.4 mm exactly), in cm² elsewhere.
func TestAboutSaysThePanel(t *testing.T) {
	for lang, want := range map[string]string{"en": "rules: Oregon · design orchard · display panel 6.7 sq in", "de": "Regeln: Oregon · Gestaltung orchard · Hauptansichtsfeld 43,2 cm²", "fr": "règles : Oregon · modèle orchard · face principale 43,2 cm²"} {
		p := Proof{Place: "Oregon", Design: "orchard", American: lang == "en", Law: label.Content{Lang: lang, PanelArea: 6.7 * 25.4 * 25.4}}
		if got := strings.ReplaceAll(p.about(p.words()), "\u00a0", " "); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
