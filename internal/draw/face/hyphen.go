package face

import (
	"io/fs"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// edge is how many letters stay together at either end of a word: common
// practice for display type, no source.
const edge = 3

// SoftHyphen is the mark of a place a word may be parted at.
const SoftHyphen = '\u00ad'

// Soften marks in a text of a language where its words may be parted. A word its
// writer marked himself is left so, and a language without patterns too.
func (s *Set) Soften(text, lang string) string {
	h := s.hyphens(strings.ToLower(lang))
	if h == nil {
		return text
	}
	var b strings.Builder
	var word []rune
	flush := func() {
		at := 0
		if !slices.Contains(word, SoftHyphen) {
			for _, p := range h.points(strings.ToLower(string(word))) {
				b.WriteString(string(word[at:p]))
				b.WriteRune(SoftHyphen)
				at = p
			}
		}
		b.WriteString(string(word[at:]))
		word = word[:0]
	}
	for _, r := range text {
		if unicode.IsLetter(r) || unicode.IsMark(r) || r == SoftHyphen {
			word = append(word, r)
			continue
		}
		flush()
		b.WriteRune(r)
	}
	flush()
	return b.String()
}

// hyphens are the patterns of one language.
type hyphens struct {
	levels  map[string][]byte // of a pattern's letters: the level before each, and after the last
	words   map[string][]int  // exceptions
	longest int
}

// hyphens gives a language's patterns, hyphen-LANG.txt beside the faces, read when
// first asked for; nil when there are none.
func (s *Set) hyphens(lang string) *hyphens {
	if s == nil {
		return nil
	}
	base, _, _ := strings.Cut(lang, "-")
	read, _ := s.patterns.LoadOrStore(lang, sync.OnceValue(func() *hyphens {
		for _, name := range []string{lang, base, base + "-us"} { // English alone is American
			if data, err := fs.ReadFile(s.fsys, "hyphen-"+name+".txt"); err == nil {
				return parseHyphens(string(data))
			}
		}
		return nil
	}))
	return read.(func() *hyphens)()
}

// parseHyphens reads patterns ("hy3ph") and exceptions ("ta-ble"), one a line;
// % begins a comment.
func parseHyphens(text string) *hyphens {
	if plain, short, ok := strings.Cut(text, "\n+"); ok || strings.HasPrefix(text, "+") {
		if !ok {
			plain, short = "", text[1:]
		}
		text = plain + "\n" + unfronted(strings.TrimSpace(short))
	}
	lines := strings.Count(text, "\n") + 1
	h := &hyphens{levels: make(map[string][]byte, lines), words: map[string][]int{}}
	levels := make([]byte, 0, len(text)+lines) // of all patterns, one after the other
	letters := make([]byte, 0, 64)
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(line, "%")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if strings.Contains(line, "-") {
			h.words[strings.ReplaceAll(line, "-", "")] = hyphensOf(line)
			continue
		}
		first := len(levels)
		levels, letters = append(levels, 0), letters[:0]
		for _, r := range line {
			if '0' <= r && r <= '9' {
				levels[len(levels)-1] = byte(r - '0')
				continue
			}
			letters, levels = utf8.AppendRune(letters, r), append(levels, 0)
		}
		h.levels[string(letters)] = levels[first:len(levels):len(levels)]
		h.longest = max(h.longest, len(levels)-first-1)
	}
	return h
}

// hyphensOf gives how many letters stand before each hyphen of a word.
func hyphensOf(word string) (points []int) {
	at := 0
	for _, r := range word {
		if r == '-' {
			points = append(points, at)
		} else {
			at++
		}
	}
	return points
}

// points are the letters of a word, in small letters, before which it may be
// parted: where the highest level of all patterns in it is odd (F. M. Liang,
// Word Hy-phen-a-tion by Com-put-er, Stanford 1983).
func (h *hyphens) points(word string) (out []int) {
	r := []rune(word)
	if len(r) < 2*edge {
		return nil
	}
	allowed := func(p int) bool { return p >= edge && p <= len(r)-edge }
	if known, ok := h.words[word]; ok {
		return slices.DeleteFunc(slices.Clone(known), func(p int) bool { return !allowed(p) })
	}
	dotted := slices.Concat([]rune{'.'}, r, []rune{'.'})
	top := make([]byte, len(dotted)+1)
	for i := range dotted {
		for j := i + 1; j <= min(len(dotted), i+h.longest); j++ {
			for k, v := range h.levels[string(dotted[i:j])] {
				top[i+k] = max(top[i+k], v)
			}
		}
	}
	for p := range r {
		if allowed(p) && top[p+1]%2 == 1 {
			out = append(out, p)
		}
	}
	return out
}
