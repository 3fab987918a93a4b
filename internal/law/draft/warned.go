package draft

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/law/place"
)

// unwarned is a text without the clauses that warn somebody off: "not suitable
// for people with almond allergies" denies no almonds. A clause ends at a mark, or
// where its words turn, "but".
func unwarned(text string) string {
	rest := text
	var out strings.Builder
	for rest != "" {
		clause, behind := rest, ""
		if end := strings.IndexFunc(rest, endsClause); end >= 0 {
			_, size := utf8.DecodeRuneInString(rest[end:])
			clause, behind = rest[:end+size], rest[end+size:]
		}
		rest = behind
		if len(strings.ToLower(clause)) != len(clause) { // some letters change their length
			out.WriteString(clause)
			continue
		}
		before, turn, after := cutWord(clause, "but", "aber", "mais", "pero", "ma", "maar", "men")
		out.WriteString(beforeWarning(before))
		if turn != "" {
			out.WriteString(" " + turn + beforeWarning(after))
		}
	}
	return out.String()
}

// endsClause tells a mark behind which a warning is over: a comma too, so that
// what follows it is looked at. A hyphen is none.
func endsClause(r rune) bool { return strings.ContainsRune(".,;:!?()\n–—|•", r) }

// cutWord cuts a clause at the first of some words.
func cutWord(clause string, words ...string) (before, word, after string) {
	lower := strings.ToLower(clause)
	at := -1
	for _, w := range words {
		if i := strings.Index(lower, " "+w+" "); i >= 0 && (at < 0 || i < at) {
			at, word = i, w
		}
	}
	if at < 0 {
		return clause, "", ""
	}
	return clause[:at], word, clause[at+1+len(word):]
}

// warningHeads are the words that begin a warning, spaced once for all texts: a
// list of gifts brings thousands.
var warningHeads = sync.OnceValue(func() (out []string) {
	for _, head := range place.WarningHeads() {
		out = append(out, Spaced(head))
	}
	return out
})

// beforeWarning is what stands in a clause before it warns; all where it does not.
func beforeWarning(clause string) string {
	if !strings.ContainsFunc(clause, unicode.IsLetter) {
		return clause
	}
	plain := Spaced(clause)
	for _, head := range warningHeads() {
		if before, _, ok := strings.Cut(plain, head); ok {
			return before
		}
	}
	return clause
}
