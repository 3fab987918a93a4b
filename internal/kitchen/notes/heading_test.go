package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// A heading is the name of the preserve: it asks for no amount, and a day beside it
// is the day it was made. A day beside other words is asked about. Our own invention.
func TestHeadings(t *testing.T) {
	for line, want := range map[string]string{
		"Plum jam, 14 Sept 2026":                   "2026-09-14",
		"Strawberry & rhubarb jam 2026-06-14":      "2026-06-14",
		"14.9.2026 Zwetschgenmarmelade":            "2026-09-14",
		"Quittengelee, 3. Oktober 2026":            "2026-10-03",
		"Confiture de fraises - 12 juin 2026":      "2026-06-12",
		"pear butter (Oct 3, 2026)":                "2026-10-03",
		"opened the plum jam 14 Sept 2026":         "?",
		"picked plums for jam, 14 Sept 2026":       "?",
		"plum jam best before 14 Sept 2027":        "?",
		"plums from the market, 14 September 2026": "?",
		"Pear walnut conserve":                     "",
		"Peanut butter fudge jam":                  "",
		"Walnut & fig jam":                         "",
		"a walnut of butter":                       "?",
		"butter the size of a walnut":              "?",
		"made plum jam on 14 Sept 2026":            "2026-09-14",
		"jam best before 14 Sept 2027":             "?",
		"jam 14 Sept 2026":                         "2026-09-14",
		"the jam, Monday 14 Sept 2026":             "2026-09-14",
	} {
		l := Read(line, pantry.Default()).Lines[0]
		made := l.find("made")
		switch want {
		case "?":
			if len(l.Asks) == 0 || made != nil && !made.Asked {
				t.Errorf("%q: %+v asks nothing", line, l)
			}
		case "":
			if len(l.Asks) > 0 || l.Read() {
				t.Errorf("%q: %v, asks %q", line, l.Keys, strings.Join(l.Asks, "; "))
			}
		default:
			if made == nil || made.Value != want || made.Asked || len(l.Asks) > 0 {
				t.Errorf("%q: %+v, want made %s", line, l, want)
			}
		}
	}
}

// A day that is asked about stands as a comment and not below today's; one that is
// told wins over it. Our own invention.
func TestDaysAskedAbout(t *testing.T) {
	head := Head{Name: "Plum jam", Product: "jam", Made: "2026-11-28"}
	for text, want := range map[string]string{
		"2 lb plums":                "\nmade = 2026-11-28",
		"plums picked 12 Sept 2026": "\n# made = 2026-09-12",
		"plums picked 12 Sept 2026\ncooked 14 Sept 2026": "\nmade = 2026-09-14",
		"cooked 14 Sept 2026\nplums picked 12 Sept 2026": "\nmade = 2026-09-14",
		"made 10/11/26": "\n# made = 2026-10-11",
	} {
		out := string(Read(text, pantry.Default()).TOML(head))
		if !strings.Contains(out, want) || strings.Count(out, "\nmade = ") != strings.Count(want, "\nmade = ") {
			t.Errorf("%q: no %q in\n%s", text, want, out)
		}
	}
}
