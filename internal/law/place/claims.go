package place

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/kit/words"
	"jarmark/templates"
)

const claimsFile = "places/words/claims.toml"

// claimWords are the words of one claim by language, ready to be looked for in a
// text of any language: a maker writes as those who buy read.
type claimWords struct {
	ID     string              `toml:"id"`
	Words  map[string][]string `toml:"words"`
	Of     map[string][]string `toml:"of"`
	Forms  map[string][]string `toml:"forms"`
	Unless map[string][]string `toml:"unless"`
}

// Joined are words of one language that deny several things together.
type Joined struct {
	Heads []string `toml:"heads"` // "without"
	Or    []string `toml:"or"`    // what stands behind it is denied too, whatever it is
	And   []string `toml:"and"`   // denied too where it is a thing that labels deny
}

// Dish is a dish by its names, and words of what makes it that.
type Dish struct {
	Words []string `toml:"words"`
	Of    []string `toml:"of"`
}

// claimsRead is the file as read.
type claimsRead struct {
	dishes []Dish
	said   map[string]said
	joined []Joined
	warns  []string
}

// WarningHeads are the words that begin a warning, of all languages.
func WarningHeads() []string {
	all, _ := claims() // a fault of the file is told where a set is read
	return all.warns
}

// JoinedWords are the words that deny several things together, of all languages.
func JoinedWords() []Joined {
	all, _ := claims() // a fault of the file is told where a set is read
	return all.joined
}

// Dishes are those a name may say, of all languages.
func Dishes() []Dish {
	all, _ := claims() // a fault of the file is told where a set is read
	return all.dishes
}

// said is a claim's words with all that is written out of them.
type said struct{ words, of, forms, unless []string }

var claims = sync.OnceValues(func() (claimsRead, error) { return readClaims(templates.FS) })

func readClaims(files fs.FS) (out claimsRead, err error) {
	data, err := fs.ReadFile(files, claimsFile)
	if err != nil {
		return out, err
	}
	var file struct {
		Claims []claimWords `toml:"claim"`
		Joined []Joined     `toml:"joined"`
		Dishes []Dish       `toml:"dish"`
		Warns  struct {
			Heads []string `toml:"heads"`
		} `toml:"warnings"`
	}
	if err := decode(claimsFile, data, &file); err != nil {
		return out, err
	}
	out.joined, out.dishes, out.said = file.Joined, file.Dishes, map[string]said{}
	out.warns = spelled(map[string][]string{"": file.Warns.Heads})
	for _, c := range file.Claims {
		if _, twice := out.said[c.ID]; twice || c.ID == "" {
			return out, fmt.Errorf("%s: the id %q is empty or stands twice", claimsFile, c.ID)
		}
		s := said{spelled(c.Words), spelled(c.Of), spelled(c.Forms), spelled(c.Unless)}
		if len(s.words)+len(s.of)+len(s.forms) == 0 {
			return out, fmt.Errorf("%s: %s has no words", claimsFile, c.ID)
		}
		out.said[c.ID] = s
	}
	return out, nil
}

// spelled writes out the words of all languages, each once, as they are typed:
// with accents, without, and with "ae" for "ä".
func spelled(of map[string][]string) (out []string) {
	for _, rows := range of {
		for _, row := range rows {
			row = strings.ToLower(row)
			out = either(out, "", row)
			if plain := words.Fold(row); plain != row {
				out = either(out, "", plain)
				out = either(out, "", words.Fold(umlauts.Replace(norm.NFC.String(row))))
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

var umlauts = strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue") // as typed without them

// either writes out "(a|b)" and "(|a)", which do not nest, behind what stands
// before them, with single spaces.
func either(out []string, before, row string) []string {
	from := strings.IndexByte(row, '(')
	to := strings.IndexByte(row, ')')
	if from < 0 || to < from {
		return append(out, spaced(before+row))
	}
	for choices := row[from+1 : to]; ; {
		choice, more, others := strings.Cut(choices, "|")
		if out = either(out, before+row[:from]+choice, row[to+1:]); !others {
			return out
		}
		choices = more
	}
}

// spaced has single spaces between words and none around them.
func spaced(s string) string {
	if s == "" || s[0] == ' ' || s[len(s)-1] == ' ' || strings.Contains(s, "  ") {
		return strings.Join(strings.Fields(s), " ")
	}
	return s
}

// claiming gives the rows of a set the words of the claims they name.
func (r rules) claiming() (rules, error) {
	all, err := claims()
	if err != nil {
		return r, err
	}
	find := func(row string, ids []string) (s said, err error) {
		for _, id := range ids {
			c, ok := all.said[id]
			if !ok {
				return s, fmt.Errorf("set %s: %s names the claim %q, which %s has not", r.ID, row, id, claimsFile)
			}
			s = said{append(s.words, c.words...), append(s.of, c.of...), append(s.forms, c.forms...), append(s.unless, c.unless...)}
		}
		return s, nil
	}
	r.Wordings = slices.Clone(r.Wordings)
	for i := range r.Wordings {
		w := &r.Wordings[i]
		s, err := find(w.ID, w.Claims)
		if err != nil {
			return r, err
		}
		w.Words, w.Of, w.Forms, w.Unless = slices.Concat(w.Words, s.words), slices.Concat(w.Of, s.of), slices.Concat(w.Forms, s.forms), slices.Concat(w.Unless, s.unless)
		w.look()
	}
	if r.Nutrition == nil {
		return r, nil
	}
	n := *r.Nutrition
	less, err := find("nutrition", n.Less)
	if err != nil {
		return r, err
	}
	rich, err := find("nutrition", n.Rich)
	if err != nil {
		return r, err
	}
	n.Nutrients, n.Forms = slices.Concat(n.Nutrients, less.of), slices.Concat(n.Forms, less.forms)
	n.GoodNutrients, n.GoodForms = slices.Concat(n.GoodNutrients, rich.of), slices.Concat(n.GoodForms, rich.forms)
	n.Words, n.Unless = slices.Concat(n.Words, less.words, rich.words), slices.Concat(n.Unless, less.unless, rich.unless)
	r.Nutrition = &n
	return r, nil
}
