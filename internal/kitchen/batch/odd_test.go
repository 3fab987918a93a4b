package batch

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
)

// What was taken without a word: each slip is told at its own line.
func TestOddValues(t *testing.T) {
	const head = "name='x'\nkind='jam'\nmade=2026-06-14\n[[ingredient]]\nname='plums'\namount='1 kg'\n"
	for _, c := range []struct {
		text, code string
		severity   diag.Severity
	}{
		{"[process]\nmethod='boiling water'\nminutes=1000", "long-time", diag.Warning},
		{"[cook]\nminutes=1000", "long-time", diag.Warning},
		{"[[fill]]\njar='8 fl oz'\nprice=0", "price-zero", diag.Warning},
		{"[[market]]\nevent='fair'\njars=0", "no-jars", diag.Warning},
		{"[[gift]]\nto='Ida'\njars=0", "no-jars", diag.Warning},
		{"[[gift]]\nto=\"Id\\u200ba\"", "unseen-character", diag.Error},
		{"[[gift]]\nto=\"\\u202eadI\"", "unseen-character", diag.Error},
		{"[[gift]]\nto='Ida'\nmessage=\"a\\u2066b\"", "unseen-character", diag.Error},
		{"notes=\"a\\ufeffb\"", "", 0}, // in the last table: an unknown key, told elsewhere
		{"[process]\nmethod='boiling water'\nminutes=20", "", 0},
		{"[[fill]]\njar='8 fl oz'\nprice=9", "", 0},
		{"[[market]]\nevent='fair'\njars=1\nprice='9'", "", 0},
		{"[[gift]]\nto='Zoë Nguyễn'", "", 0},
	} {
		_, l := Parse("b.toml", []byte(head+c.text+"\n"), nil)
		if c.code == "" {
			for _, d := range l {
				if d.Code != "unknown-key" {
					t.Errorf("%q: %v", c.text, l)
				}
			}
			continue
		}
		if len(l) != 1 || l[0].Code != c.code || l[0].Severity != c.severity || l[0].Hint == "" || l[0].Pos.Line < 8 {
			t.Errorf("%q: %v", c.text, l)
		}
	}
	for site, want := range map[string]bool{"tomorrow": false, "not an address.": false, "jam@thornfield.example": false, "thornfield.example": true,
		"https://thornfield.example/jam?a=1": true, "www.thornfield.example": true, "xn--e1afmkfd.example": true, "мармелад.рф": true} {
		_, l := ParseKitchen("k.toml", []byte("name='x'\nwebsite='"+site+"'\n"), find)
		if bad := strings.Contains(codes(l), "bad-url"); bad == want {
			t.Errorf("%s: %v", site, l)
		}
	}
}

func codes(l diag.List) (out string) {
	for _, d := range l {
		out += d.Code + " "
	}
	return out
}

// Each jar has its own tare when each was weighed empty.
func TestOwnTareOfEachJar(t *testing.T) {
	b, l := Parse("b.toml", []byte("name='x'\nkind='jam'\nmade=2026-06-14\n[[ingredient]]\nname='plums'\namount='1 kg'\n"+
		"[[fill]]\njar='8 fl oz'\ncount=2\ngross=['480 g', '500 g']\ntare=['190 g', '205 g']\n"), nil)
	if net := b.Fills[0].Net; len(l) > 0 || len(net) != 2 || net[0].Grams() != 290 || net[1].Grams() != 295 {
		t.Errorf("%v %v", net, l)
	}
}

// A date before the day it was made is one error, in one wording.
func TestDatesBeforeMade(t *testing.T) {
	const head = "name='x'\nkind='jam'\nmade=2026-06-14\n"
	const pot = "[[ingredient]]\nname='plums'\namount='1 kg'\n"
	for text, path := range map[string]string{
		head + "best_before=2026-06-13\n" + pot:                       "best_before",
		head + "use_by=2026-06-13\n" + pot:                            "use_by",
		head + pot + "[[market]]\nevent='f'\njars=1\ndate=2025-06-13": "market[0].date",
		head + pot + "[[market]]\nevent='f'\njars=1\ndate=2026-06-14": "",
	} {
		_, l := Parse("b.toml", []byte(text), nil)
		if path == "" && len(l) > 0 || path != "" && (len(l) != 1 || l[0].Code != "date-order" || l[0].Path != path || !strings.Contains(l[0].Message, "is before the day it was made")) {
			t.Errorf("%s: %v", path, l)
		}
	}
}
