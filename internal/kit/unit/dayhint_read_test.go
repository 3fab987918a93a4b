package unit

import "testing"

// What spreadsheets make of a day when they save a table anew: with strokes in
// the order of the country, with points day first, with a time (common
// practice, no source).
func TestReadDay(t *testing.T) {
	for _, c := range []struct {
		text       string
		monthFirst bool
		want       string
	}{
		{"2026-12-05", false, "2026-12-05"}, {" 2026-12-05T00:00:00 ", false, "2026-12-05"}, {"2026-12-05 14:30", true, "2026-12-05"},
		{"12/5/2026", true, "2026-12-05"}, {"12/5/2026", false, "2026-05-12"}, {"12/05/26", true, "2026-12-05"},
		{"25/12/2026", true, "2026-12-25"}, {"12/25/2026", false, "2026-12-25"},
		{"5.12.2026", true, "2026-12-05"}, {"05.12.26", false, "2026-12-05"}, {"5 Dec 2026", false, "2026-12-05"}, {"Dec 5, 2026", false, "2026-12-05"},
		{"2026/12/05", false, "2026-12-05"},
		{"31/31/2026", true, ""}, {"2026-13-06", true, ""}, {"0/0/2026", true, ""}, {"soon", true, ""}, {"", true, ""}, {"46361", true, ""}, {"2/30/2026", true, ""},
	} {
		d, err := ReadDay(c.text, c.monthFirst)
		if d.String() != c.want || (err == nil) != (c.want != "") {
			t.Errorf("%q, month first %v: %s, %v; want %q", c.text, c.monthFirst, d, err, c.want)
		}
	}
}
