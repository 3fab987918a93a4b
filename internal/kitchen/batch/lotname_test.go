package batch

import (
	"strings"
	"testing"
)

// Lots become folders on every maker's system. The device names are those of
// Microsoft's "Naming Files, Paths, and Namespaces" (from memory).
func TestLotsAreFolderNames(t *testing.T) {
	for lot, ok := range map[string]bool{
		"L26165-SR": true, "1": true, "CONS": true, "con-1": true, "com10": true, "auxiliary": true,
		"CON": false, "con": false, "Prn": false, "aux": false, "NUL": false, "com0": false, "com1": false, "LPT9": false,
		"record": false, "Record": false, "L1.": false, ".L1": false, "-L1": false, "L1-": false,
		"a/b": false, `a\b`: false, "..": false, "a:b": false, "L1?": false, "плум": false, strings.Repeat("x", 41): false,
	} {
		b, l := Parse("b.toml", []byte("name = \"Plum jam\"\nkind = \"jam\"\nlot = \""+strings.ReplaceAll(lot, `\`, `\\`)+"\"\n"), nil)
		bad := false
		for _, d := range l {
			bad = bad || d.Code == "bad-lot"
		}
		if bad == ok || ok && b.Lot != lot {
			t.Errorf("lot %q: refused %v (%q), want %v", lot, bad, b.Lot, !ok)
		}
	}
}
