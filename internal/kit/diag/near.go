package diag

import (
	"strings"

	"jarmark/internal/kit/words"
)

// DidYouMean gives the option nearest to a mistyped word: at most one slip
// (a letter added, dropped, changed, or swapped with its neighbour) in a word
// of up to five letters, two beyond. Ties go to the earlier option.
func DidYouMean(word string, options []string) (string, bool) {
	w := []rune(strings.ToLower(strings.TrimSpace(word)))
	if len(w) == 0 || len(w) > 60 {
		return "", false
	}
	limit := 2
	if len(w) <= 5 {
		limit = 1
	}
	best, found := "", false
	for _, o := range options {
		if low := strings.ToLower(o); words.Within(string(w), low, limit) {
			best, found, limit = o, true, words.Distance(string(w), low)-1
		}
	}
	if !found {
		return byStart(w, options)
	}
	return best, true
}

// byStart takes the only option the word begins, or that begins the word:
// "ingredients" for "ingredient", "temp" for "temperature".
func byStart(w []rune, options []string) (best string, found bool) {
	if len(w) < 3 {
		return "", false
	}
	for _, o := range options {
		low := strings.ToLower(o)
		if len(low) < 3 || !strings.HasPrefix(low, string(w)) && !strings.HasPrefix(string(w), low) {
			continue
		}
		if found {
			return "", false
		}
		best, found = o, true
	}
	return best, found
}
