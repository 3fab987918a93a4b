package typeset

import (
	"slices"
	"strings"
	"unicode"
)

// class is what a letter is to the order of a line, as far as a label needs it
// (UAX #9, table 4).
type class uint8

const (
	neutral class = iota
	fromLeft
	fromRight
	figure
)

func classOf(r rune) class {
	switch {
	case r >= 0x05d0 && r <= 0x05ea: // Hebrew; what else runs from the right is not set (face.Shaped)
		return fromRight
	case '0' <= r && r <= '9':
		return figure
	case unicode.IsLetter(r):
		return fromLeft
	}
	return neutral
}

// visual is a line in the order its letters stand in, from the left. Hebrew runs from
// the right, figures and other letters in it from the left: the Unicode Bidirectional
// Algorithm (UAX #9) for a line without marks of direction. Its first letter says where
// it begins.
func visual(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return classOf(r) == fromRight }) {
		return s
	}
	r := []rune(s)
	level := levels(r)
	for i, c := range r { // L4
		if m := strings.IndexRune(brackets, c); m >= 0 && level[i]%2 == 1 {
			r[i] = []rune(mirrored)[len([]rune(brackets[:m]))]
		}
	}
	for l := slices.Max(level); l > 0; l-- { // L2
		for i := 0; i < len(r); i++ {
			j := i
			for j < len(r) && level[j] >= l {
				j++
			}
			slices.Reverse(r[i:j])
			slices.Reverse(level[i:j])
			i = max(i, j-1)
		}
	}
	return string(r)
}

const brackets, mirrored = "()[]<>«»", ")(][><»«"

// levels gives each letter's embedding level: 0 and 2 run from the left, 1 from the right.
func levels(r []rune) []int {
	kinds := make([]class, len(r))
	for i, c := range r {
		kinds[i] = classOf(c)
	}
	base := fromLeft
	if i := slices.IndexFunc(kinds, func(c class) bool { return c == fromLeft || c == fromRight }); kinds[i] == fromRight { // P2, P3
		base = fromRight
	}
	for i := 1; i+1 < len(r); i++ { // W4: 1,5 is one figure
		if strings.ContainsRune(",.:/+-", r[i]) && kinds[i-1] == figure && kinds[i+1] == figure {
			kinds[i] = figure
		}
	}
	last := base
	for i, c := range kinds { // W7
		if c == figure && last == fromLeft {
			kinds[i] = fromLeft
		} else if c == fromLeft || c == fromRight {
			last = c
		}
	}
	out := make([]int, len(r))
	for i := range kinds {
		out[i] = levelOf(direction(kinds, i, base), kinds[i] == figure, base)
	}
	return out
}

// direction is where a letter runs from: a neutral one as those on both sides of it
// when these agree, figures counting as from the right, else as the line (N1, N2).
func direction(kinds []class, i int, base class) class {
	side := func(step int) class {
		for j := i; j >= 0 && j < len(kinds); j += step {
			switch kinds[j] {
			case fromLeft:
				return fromLeft
			case fromRight, figure:
				return fromRight
			}
		}
		return base
	}
	if a, b := side(-1), side(1); a == b {
		return a
	}
	return base
}

// levelOf is the level of a direction in a line (I1, I2).
func levelOf(c class, figure bool, base class) int {
	switch {
	case figure || c == fromLeft && base == fromRight:
		return 2
	case c == fromRight:
		return 1
	}
	return 0
}
