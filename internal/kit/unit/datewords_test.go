package unit

import "testing"

// The month in letters, in the order of the place. Unicode CLDR, dates of en-US
// ("MMM d, y") and en-GB ("d MMM y").
func TestDateWords(t *testing.T) {
	for d, want := range map[Date][2]string{
		{2026, 12, 5}: {"5 Dec 2026", "Dec 5, 2026"}, {2026, 1, 31}: {"31 Jan 2026", "Jan 31, 2026"}, {}: {"no date", "no date"},
		{2026, 0, 3}: {"2026-00-03", "2026-00-03"}, {2026, 13, 3}: {"2026-13-03", "2026-13-03"},
	} {
		if got := [2]string{d.Words(false), d.Words(true)}; got != want {
			t.Errorf("%v: %q, want %q", d, got, want)
		}
	}
	if MonthWord(0) != "" || MonthWord(1) != "Jan" || MonthWord(12) != "Dec" || MonthWord(13) != "" {
		t.Error("a month's word")
	}
}
