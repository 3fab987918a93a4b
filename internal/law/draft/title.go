package draft

import (
	"strings"

	"jarmark/internal/kitchen/batch"
)

// productWords are the words that tell what sort of preserve a food is, with
// the kind each stands for.
var productWords = []struct{ word, kind string }{
	{"jam", "jam"}, {"jams", "jam"}, {"preserve", "jam"}, {"preserves", "jam"}, {"jelly", "jelly"}, {"jellies", "jelly"},
	{"butter", "butter"}, {"marmalade", "marmalade"}, {"curd", "curd"}, {"chutney", "chutney"}, {"relish", "relish"},
	{"conserve", "conserve"}, {"spread", "spread"}, {"syrup", "syrup"}, {"sauce", "sauce"}, {"compote", "compote"},
}

// ProductWord gives the kind the last such word of a name stands for; "" = none.
func ProductWord(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), NotLetter)
	for i := len(words) - 1; i >= 0; i-- {
		for _, w := range productWords {
			if words[i] == w.word {
				return w.kind
			}
		}
	}
	return ""
}

// display splits a name in two lines for the front: "Strawberry" and "& rhubarb
// jam", "Apricot jam" and "with lavender", "Blackcurrant" and "jelly".
func display(b *batch.Batch) (title, subtitle string) {
	if b.Label.Title != "" {
		return strings.TrimSpace(b.Label.Title), strings.TrimSpace(b.Label.Subtitle)
	}
	title, subtitle = split(strings.Join(strings.Fields(b.Name), " "))
	if b.Label.Subtitle != "" {
		subtitle = strings.TrimSpace(b.Label.Subtitle)
	}
	return title, subtitle
}

// TitleLine is a line of the maker's own that stands beside the name of the food
// and may be taken for it, with its path in the batch file.
type TitleLine struct{ Text, Path string }

// TitleLines lists those that are written.
func (p *Draft) TitleLines() (out []TitleLine) {
	for _, l := range []TitleLine{{p.B.Label.Title, "label.title"}, {p.B.Label.Subtitle, "label.subtitle"}, {p.B.Label.Stamp, "label.stamp"}} {
		if l.Text != "" {
			out = append(out, l)
		}
	}
	return out
}

func split(name string) (title, subtitle string) {
	low := strings.ToLower(name)
	if len(low) != len(name) { // lower-casing moved bytes: leave it whole
		return name, ""
	}
	for _, cut := range []string{" with ", " & ", " and "} {
		if before, _, ok := strings.Cut(low, cut); ok {
			return name[:len(before)], name[len(before)+1:]
		}
	}
	words := strings.Fields(name)
	n := len(words)
	if n < 2 || ProductWord(words[n-1]) == "" {
		return name, ""
	}
	at := n - 1
	if n > 2 && strings.EqualFold(words[n-2], "fruit") {
		at--
	}
	return strings.Join(words[:at], " "), strings.Join(words[at:], " ")
}
