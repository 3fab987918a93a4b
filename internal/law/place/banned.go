package place

import "fmt"

// Banned is what the law of a place lets no food hold, of whatever kind.
type Banned struct {
	Words  []string `toml:"words"`  // of an ingredient or a part that name it
	Unless []string `toml:"unless"` // words beside them that say it is not in there
	From   string   `toml:"from"`   // first day of the ban; empty: in force
	Level  string   `toml:"level"`  // "warning" where a kind or a use of it alone is banned; empty: error
	Why    string   `toml:"why"`
	Hint   string   `toml:"hint"` // empty: leave it out
	Origin
}

func (b Banned) check() error {
	if err := known(b.Confidence); err != nil || len(b.Words) == 0 || b.Why == "" || b.Level != "" && !levelKnown(b.Level) {
		return fmt.Errorf("banned %v: words, why, level or confidence is not known", b.Words)
	}
	return nil
}
