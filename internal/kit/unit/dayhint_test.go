package unit

import (
	"strings"
	"testing"
)

// Days as makers write them, told as ISO 8601 writes them: both readings where
// month and day may be swapped, one where they cannot.
func TestDayHint(t *testing.T) {
	for text, want := range map[string]string{
		"9/5/2026": "2026-09-05, or 2026-05-09", "9/25/2026": "as 2026-09-25", "25.9.2026": "as 2026-09-25", "5.9.26": "as 2026-09-05",
		"2026/06/14": "as 2026-06-14", "2026-6-4": "as 2026-06-04", "Sept 5, 2026": "as 2026-09-05", "14 June 2026": "as 2026-06-14", "5/5/2026": "as 2026-05-05",
		" 'May 3 2026' ": "as 2026-05-03", "June 2026": "year-month-day", "40/40/2026": "check month and day", "2026-13-01": "check month and day",
		"10 août 2026": "as 2026-08-10", "3. Juli 2026": "as 2026-07-03", "1er déc. 2026": "as 2026-12-01", "5. März 26": "as 2026-03-05", "9. Dez 2026": "as 2026-12-09", "2 juin 2026": "as 2026-06-02",
		"le 14 juillet 2026": "as 2026-07-14", "30. Mai 2026": "as 2026-05-30", "1 avril 2026": "as 2026-04-01", "the 10th of August, 2026": "as 2026-08-10", "6. Okt. 2026": "as 2026-10-06", "7 février 2026": "as 2026-02-07",
		"2026-00-1234": "check month and day",
		"1.8 kg":       "", "plum": "", "9.50": "", "marmalade": "", "": "",
	} {
		hint, day, ok := DayHint(text)
		if ok != (want != "") || !strings.Contains(hint, want) {
			t.Errorf("%q: %q, %v; want %q", text, hint, ok, want)
		}
		if sure, only := strings.CutPrefix(want, "as "); only && day != sure || !only && day != "" {
			t.Errorf("%q: the day is %q", text, day)
		}
	}
}
