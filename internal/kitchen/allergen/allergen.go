// Package allergen reads food words for allergens: one vocabulary, kept as data
// in templates/pantry/allergens.csv and allergen-words.csv, for every ingredient,
// part and maker's word. It matches whole words and German compounds, never bits
// of words, and it knows no country: the table says what each list names.
package allergen

import (
	"encoding/csv"
	"errors"
	"fmt"
	"strings"
	"sync"

	"jarmark/templates"
)

// Ask is what a list says of a group it does not print: the maker must name the
// kind itself.
const Ask = "?"

// Substance is one row of allergens.csv.
type Substance struct {
	ID     string
	US     string   // the name after "Contains"; "" = not on the American list; Ask = a group
	Family string   // "tree nuts", "fish": the group a kind of it settles
	Annex2 []string // ids of Annex II names; empty = not in Annex II; Ask = a group
	Means  string   // "" = an allergen, "group", "plain" (on no list), "honey"
	Source string
}

// Group reports whether the word names a group and not a food.
func (s Substance) Group() bool { return s.Means == "group" }

// What a word may mean beside substances.
const (
	harmless = "none"    // a food that is on no list
	neutral  = "neutral" // a word of state or measure: says nothing of the food
	class    = "class"   // a use and not a source ("emulsifier", "oil"): ask when it stands alone
	joint    = "joint"   // the other half of a German compound
	asks     = "?"       // what is named may hold more: the packet decides
)

// sense is what one word of the vocabulary means.
type sense struct {
	ids            []string
	neutral, class bool
	asks, stem     bool
}

// Vocabulary is the tables in memory; it is never changed after it is read.
type Vocabulary struct {
	substances []Substance
	byID       map[string]int
	words      node             // phrases by token
	stems      map[string]sense // German words that join with others
	joints     map[string]bool
	keys       map[string]sense // pantry rows whose usual make-up is settled
	plain      []string         // words of allergens, for near matches
}

// node is a trie of phrases by token.
type node struct {
	next map[string]*node
	end  *sense
}

var loaded = sync.OnceValue(func() *Vocabulary {
	v, _ := Load() // a test proves that the embedded tables have no fault
	return v
})

// Default gives the built-in vocabulary, read once a process.
func Default() *Vocabulary { return loaded() }

// Load reads the embedded tables; the error names every row that is wrong.
func Load() (*Vocabulary, error) {
	v := &Vocabulary{byID: map[string]int{}, stems: map[string]sense{}, joints: map[string]bool{}, keys: map[string]sense{}}
	v.words.next = make(map[string]*node, 4096) // what the table begins phrases with
	return v, errors.Join(v.readSubstances(), v.readWords())
}

// table reads one file of the pantry's folder without its heading, which is to
// be as told.
func table(name, heading string) ([][]string, error) {
	data, err := templates.FS.ReadFile("pantry/" + name)
	if err != nil {
		return nil, err
	}
	r := csv.NewReader(strings.NewReader(string(data)))
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 || strings.Join(rows[0], ",") != heading {
		return nil, fmt.Errorf("%s: no rows below %s (%w)", name, heading, err)
	}
	return rows[1:], nil
}

func (v *Vocabulary) readSubstances() (err error) {
	rows, err := table("allergens.csv", "id,us,group,annex2,kind,source")
	return errors.Join(err, v.takeSubstances(rows))
}

func (v *Vocabulary) takeSubstances(rows [][]string) (err error) {
	for _, r := range rows {
		s := Substance{ID: r[0], US: r[1], Family: r[2], Means: r[4], Source: r[5]}
		if r[3] != "" {
			s.Annex2 = strings.Split(r[3], "+")
		}
		if _, twice := v.byID[s.ID]; twice || s.ID == "" || s.Source == "" {
			err = errors.Join(err, fmt.Errorf("allergens.csv: %q: twice, or without id or source", s.ID))
		}
		v.byID[s.ID] = len(v.substances)
		v.substances = append(v.substances, s)
	}
	return err
}

func (v *Vocabulary) readWords() (err error) {
	rows, err := table("allergen-words.csv", "lang,means,words,source")
	return errors.Join(err, v.takeWords(rows))
}

func (v *Vocabulary) takeWords(rows [][]string) (err error) {
	for _, r := range rows {
		if r[3] == "" {
			err = errors.Join(err, fmt.Errorf("allergen-words.csv: %q has no source", r[2]))
		}
		s, wrong := v.senseOf(r[1])
		if wrong != nil {
			err = errors.Join(err, fmt.Errorf("allergen-words.csv: %q: %w", r[2], wrong))
			continue
		}
		for word := range strings.SplitSeq(r[2], "|") {
			err = errors.Join(err, v.put(r[0], r[1] == joint, s, word))
		}
	}
	return err
}

// put takes one word in, with its umlaut-free spelling.
func (v *Vocabulary) put(lang string, half bool, s sense, word string) error {
	bare, stem := strings.CutSuffix(strings.TrimSpace(word), "-")
	s.stem = stem
	if lang == "key" {
		v.keys[bare] = s
		return nil
	}
	for _, spelling := range spellings(bare) {
		if half {
			v.joints[spelling] = true
			continue
		}
		if stem {
			v.stems[spelling] = s
		}
		if err := v.words.put(strings.Fields(spelling), s); err != nil {
			return fmt.Errorf("allergen-words.csv: %q: %w", word, err)
		}
	}
	if len(s.ids) > 0 {
		v.plain = append(v.plain, bare)
	}
	return nil
}

func (v *Vocabulary) senseOf(means string) (s sense, err error) {
	for _, m := range strings.Split(means, "+") {
		switch m {
		case harmless, joint:
		case neutral:
			s.neutral = true
		case class:
			s.class = true
		case asks:
			s.asks = true
		default:
			if _, ok := v.byID[m]; !ok {
				return s, fmt.Errorf("no substance %q", m)
			}
			s.ids = append(s.ids, m)
		}
	}
	return s, nil
}

func (n *node) put(tokens []string, s sense) error {
	if len(tokens) == 0 {
		return errors.New("no word")
	}
	for _, t := range tokens {
		if n.next == nil {
			n.next = map[string]*node{}
		}
		if n.next[t] == nil {
			n.next[t] = &node{}
		}
		n = n.next[t]
	}
	if n.end != nil && (strings.Join(n.end.ids, "+") != strings.Join(s.ids, "+") || n.end.neutral != s.neutral || n.end.class != s.class || n.end.asks != s.asks) {
		return errors.New("has two meanings")
	}
	n.end = &s
	return nil
}

// Substance gives a row by its id.
func (v *Vocabulary) Substance(id string) (Substance, bool) {
	i, ok := v.byID[id]
	if !ok {
		return Substance{}, false
	}
	return v.substances[i], true
}

// Substances lists the rows in the order of the table.
func (v *Vocabulary) Substances() []Substance { return append([]Substance(nil), v.substances...) }

// Words lists the words that name an allergen, for "did you mean".
func (v *Vocabulary) Words() []string { return append([]string(nil), v.plain...) }

// Settled gives what a bought ingredient of the pantry holds where its usual
// make-up leaves no doubt, by the key of its row.
func (v *Vocabulary) Settled(key string) (ids []string, ok bool) {
	s, ok := v.keys[key]
	return s.ids, ok
}

// SaysNone reports a maker's word that there is no allergen at all.
func SaysNone(word string) bool {
	switch strings.Join(Tokens(word), " ") {
	case "none", "no", "nil", "nothing", "n a", "na", "nka", "no allergens", "keine", "keins", "kein", "nichts", "aucun", "aucune", "rien", "neant":
		return true
	}
	return false
}
