package typeset

import "testing"

// Straight marks become those of the language; measures keep theirs. The Chicago
// Manual of Style and Duden describe the marks (from memory).
func TestQuoted(t *testing.T) {
	for _, c := range []struct{ lang, in, want string }{
		{"en", `"Old Tom" plums`, "“Old Tom” plums"}, {"en", "Gran's jam", "Gran’s jam"}, {"en", "'Victoria' plum", "‘Victoria’ plum"},
		{"en", "the pickers' jam", "the pickers’ jam"}, {"en", `jar of 3" and 5'`, `jar of 3" and 5'`}, {"en", `("so")`, "(“so”)"},
		{"en", "rock 'n' roll", "rock ‘n’ roll"}, {"en", "'tis sweet", "’tis sweet"}, {"en", `say "it's"`, "say “it’s”"},
		{"en", `"No. 7" jam`, "“No. 7” jam"}, {"en", "plain", "plain"}, {"en", `"`, "”"}, {"en", "'", "’"}, {"en", "", ""},
		{"de", `"Omas" Mus`, "„Omas“ Mus"}, {"de", "'Elstar'-Mus", "‚Elstar‘-Mus"}, {"de-AT", "Hans' Mus", "Hans’ Mus"},
		{"fr", `confiture "maison"`, "confiture «\u00a0maison\u00a0»"}, {"fr", "confiture d'abricots", "confiture d’abricots"},
		{"xx", `"a"`, "“a”"},
	} {
		if got := Quoted(c.in, c.lang); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.lang, c.in, got, c.want)
		}
	}
}
