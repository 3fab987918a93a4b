package diag

import "strings"

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
		d := slips(w, []rune(strings.ToLower(o)), limit)
		if d <= limit {
			best, found, limit = o, true, d-1
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

// slips is the Damerau-Levenshtein distance (optimal string alignment) of two
// words, or limit+1 when it is more.
func slips(a, b []rune, limit int) int {
	if d := len(a) - len(b); d > limit || -d > limit {
		return limit + 1
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		before, last, row = last, row, before
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return min(row[len(b)], limit+1)
}
