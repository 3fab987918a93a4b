// Package notes reads a maker's plain notes, or a recipe as printed, and writes
// them as a batch file. It is a grammar of amounts, foods, times and counts; it
// does not guess: a line it cannot read whole stays a comment that says why,
// and what may be two things is asked about. It is pure: text in, text out.
package notes

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// MaxText is the longest text read, in bytes; MaxLines the most lines of it.
const (
	MaxText  = 64 << 10
	MaxLines = 1000
	maxLine  = 2000 // a longer line is no line of notes
)

// Line is one line of the notes and what was read of it.
type Line struct {
	No          int    // from 1
	Text        string // as written, trimmed
	Ingredients []Ingredient
	Keys        []Key
	Fills       []Fill
	Asks        []string // what the maker must settle
	Says        []string // how it was read, where that is not plain; or why it was not

	early []string // minutes that soften fruit before the boil
	names []string // amounts of foods a step names, and their rows
}

// Read reports that the line gave something to the batch.
func (l Line) Read() bool { return len(l.Ingredients)+len(l.Keys)+len(l.Fills) > 0 }

// Ingredient is one thing in the pot. Where the notes leave a choice, Names or
// Amounts hold it and Name or Amount is empty.
type Ingredient struct {
	Name, Amount, Form string
	Names, Amounts     []string
}

// Key is one value outside the ingredients: "made", "cook.minutes". An asked
// key is written as a comment.
type Key struct {
	Path, Value string // Value as TOML
	Asked       bool
}

// Fill is one size of jar. High differs from Low where a range is written; a
// planned one is a recipe's promise, not a count.
type Fill struct {
	Jar       string // "8 fl oz"; "" = not said, or no jar of the table
	Said      string // the size as said, where no jar of the table has it: "220 g"
	Low, High float64
	Planned   bool
	Sealed    int  // -1 = not said
	Outdone   bool // planned, and what was filled is told too
}

// Reading is everything read.
type Reading struct{ Lines []Line }

// Asked counts the questions.
func (r Reading) Asked() (n int) {
	for _, l := range r.Lines {
		n += len(l.Asks)
	}
	return n
}

// Check refuses what is no text or too much of it. Errors are *unit.ParseError.
func Check(data []byte) (string, error) {
	text := strings.TrimPrefix(string(data), "\uFEFF")
	switch {
	case len(data) > MaxText:
		return "", &unit.ParseError{Msg: fmt.Sprintf("the notes are longer than %d kB", MaxText>>10), Hint: "give the notes of one batch"}
	case !utf8.ValidString(text) || strings.ContainsRune(text, 0):
		return "", &unit.ParseError{Msg: "the notes are no text in UTF-8", Hint: "save them as plain text, UTF-8"}
	case strings.Count(text, "\n") > MaxLines:
		return "", &unit.ParseError{Msg: fmt.Sprintf("the notes have more than %d lines", MaxLines), Hint: "give the notes of one batch"}
	case strings.TrimSpace(text) == "":
		return "", &unit.ParseError{Msg: "the notes are empty", Hint: "one line for each thing in the pot: 2 lb plums, stoned"}
	}
	return text, nil
}

// Read reads notes line by line; the pantry says which words are foods.
func Read(text string, p *pantry.Pantry) Reading {
	g := &grammar{p: p, found: map[string]*pantry.Ingredient{}, tongues: []*pantry.Pantry{p, p.Speaking("de"), p.Speaking("fr")}}
	all := plain(text)
	g.british = british.MatchString(all) && !american.MatchString(all)
	g.frenchAll = len(frenchWords.FindAllString(all, 4)) > 3 && len(englishWords.FindAllString(all, 3)) < 3
	g.water = canner.MatchString(all) && !steam.MatchString(all)
	var r Reading
	for i, s := range strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n", "\v", "\n", "\f", "\n").Replace(text), "\n") {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		l := Line{No: i + 1, Text: s}
		if len(s) > maxLine {
			l.Says = append(l.Says, "not read: the line is too long")
		} else {
			g.line(&l)
		}
		r.Lines = append(r.Lines, l)
	}
	r.beforeStraining()
	r.beforeSugar()
	r.stoveTimes()
	r.afterJars()
	r.onlyEarly()
	r.gotten()
	r.gramsMeant()
	r.unweighed(p)
	r.settle()
	r.cold()
	r.named(g)
	r.denied(g)
	for i := range r.Lines {
		r.Lines[i].Asks = distinct(r.Lines[i].Asks)
	}
	return r
}

// grammar holds the tables while one text is read.
type grammar struct {
	p         *pantry.Pantry
	tongues   []*pantry.Pantry              // the kitchen's own language, German, French
	water     bool                          // the notes speak of a boiling-water canner, and of no steam
	british   bool                          // the notes are written as in Britain, where a pint is larger
	french    bool                          // the line is written in French
	frenchAll bool                          // all the notes are
	read      map[string]fact               // the facts of lines that hold several
	found     map[string]*pantry.Ingredient // what words were looked up before; nil = no food
}

// row finds a food by its words, in any language the table speaks.
func (g *grammar) row(words string) (pantry.Ingredient, bool) {
	if strings.TrimSpace(words) == "" {
		return pantry.Ingredient{}, false
	}
	row, again := g.found[words]
	if !again {
		for _, w := range []string{words, germanCut.ReplaceAllString(words, "$1")} {
			for _, p := range g.tongues {
				if r, ok := p.Ingredient(w); ok && row == nil && (w == words || r.Class == "fruit" || r.Class == "vegetable") {
					row = &r
				}
			}
		}
		g.found[words] = row
	}
	if row == nil {
		return pantry.Ingredient{}, false
	}
	return *row, true
}

// germanCut are compounds of a food and how it was cut: Zwiebelwürfel.
var germanCut = pattern(`(?i)^(\p{L}{3,}?)(?:würfel|würfelchen|scheiben|stücken?|stückchen|streifen|spalten|hälften)$`)

// settle looks over all lines: what is said twice is asked about.
func (r *Reading) settle() {
	first := map[string]int{} // path -> line that gave it
	for i := range r.Lines {
		for k := range r.Lines[i].Keys {
			key := &r.Lines[i].Keys[k]
			if key.Path == "made" && key.Asked {
				continue // a day of something: another line may say the day it was made
			}
			j, again := first[key.Path]
			if !again {
				first[key.Path] = i
				continue
			}
			if j == i { // a choice within the line, asked there
				continue
			}
			other := r.Lines[j].find(key.Path)
			if key.Path == "cook.minutes" && other != nil && other.Value == key.Value && !key.Asked && !other.Asked && r.Lines[i].Text != r.Lines[j].Text {
				r.Lines[i].ask("line %d says %s minutes too: so many in all, or each time? Take the # off, or write the sum", r.Lines[j].No, other.Value)
				other.Asked = true
			}
			if other != nil && other.Value != key.Value {
				r.Lines[i].Asks = append(r.Lines[i].Asks, fmt.Sprintf("line %d says %s: which is it? Take the # off one", r.Lines[j].No, strings.Trim(other.Value, `"`)))
				other.Asked = true
			}
			key.Asked = true
		}
	}
	if _, ok := first["cook.pot_tare"]; ok {
		for i := range r.Lines {
			r.Lines[i].Asks = slices.DeleteFunc(r.Lines[i].Asks, func(a string) bool { return a == withPot })
		}
	}
}

// withPot is asked where only the full pot was weighed.
const withPot = "with the pot? Then write the empty pot as pot_tare"

func (l *Line) find(path string) *Key {
	for i := range l.Keys {
		if l.Keys[i].Path == path {
			return &l.Keys[i]
		}
	}
	return nil
}

func (l *Line) ask(format string, args ...any) { l.Asks = append(l.Asks, fmt.Sprintf(format, args...)) }
func (l *Line) say(format string, args ...any) { l.Says = append(l.Says, fmt.Sprintf(format, args...)) }
func (l *Line) key(path, value string)         { l.Keys = append(l.Keys, Key{Path: path, Value: value}) }
