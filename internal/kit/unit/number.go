package unit

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// ParseError says what is wrong with an amount, and what to write instead.
type ParseError struct {
	Msg, Hint string
	Instead   string // the text that was meant, where that is certain; else empty
}

func (e *ParseError) Error() string { return e.Msg }

// meant is a failure with the text that was meant.
func meant(instead, hint, format string, args ...any) error {
	return &ParseError{Msg: fmt.Sprintf(format, args...), Hint: hint, Instead: instead}
}

func fail(hint, format string, args ...any) error {
	return &ParseError{Msg: fmt.Sprintf(format, args...), Hint: hint}
}

// maxText is the longest amount read, in characters: far beyond any real one.
const maxText = 80

// vulgar spells the one-character fractions of Unicode.
var vulgar = strings.NewReplacer(
	"½", " 1/2 ", "⅓", " 1/3 ", "⅔", " 2/3 ", "¼", " 1/4 ", "¾", " 3/4 ",
	"⅕", " 1/5 ", "⅖", " 2/5 ", "⅗", " 3/5 ", "⅘", " 4/5 ", "⅙", " 1/6 ", "⅚", " 5/6 ",
	"⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ", "⅒", " 1/10 ",
	"⁄", "/", "∕", "/", "−", "-", "‐", "-", "‑", "-")

// clean brings an amount to plain characters and single spaces.
func clean(s string) (string, error) {
	if strings.TrimSpace(s) == "" {
		return "", fail("write a number and a unit, like 1.8 kg", "the amount is empty")
	}
	if n := utf8.RuneCountInString(s); n > maxText || !utf8.ValidString(s) {
		return "", fail("write a number and a unit, like 1.8 kg", "%s is not an amount", quote(s))
	}
	for _, r := range s {
		if unicode.IsControl(r) && r != '\t' {
			return "", fail("write it on one line, like 1.8 kg", "%s has a control character in it", quote(s))
		}
	}
	return strings.Join(strings.Fields(vulgar.Replace(s)), " "), nil
}

// quote shows what was written, shortened.
func quote(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return fmt.Sprintf("%q", s)
}

var (
	mixedForm    = regexp.MustCompile(`^(\d{1,12})(?: | ?- ?)(\d{1,6}) ?/ ?(\d{1,6})`)
	fractionForm = regexp.MustCompile(`^(\d{1,12}) ?/ ?(\d{1,12})`)
	groupForm    = regexp.MustCompile(`^[1-9]\d{0,2}(,\d{3})+(\.\d+)?`)
	decimalForm  = regexp.MustCompile(`^\d{1,15}(?:[.,]\d{1,15})?`)
	pointForm    = regexp.MustCompile(`^\.\d{1,15}`)
	rangeForm    = regexp.MustCompile(`^ ?(?:-|–|—|to\b|or\b) ?\d`)
)

// scanNumber reads the number at the start of a cleaned text, exactly, and
// gives the rest: 1.8, 1,8, 1/2, 1 1/2, 2-1/2, .5.
func scanNumber(s string) (v *big.Rat, rest string, err error) {
	if strings.HasPrefix(s, "-") {
		return nil, s, fail("leave out the minus sign", "%s is negative", quote(s))
	}
	v, n, err := matchNumber(s)
	if err != nil {
		return nil, s, err
	}
	rest = s[n:]
	if strings.ContainsAny(rest, "0123456789") && rangeForm.MatchString(rest) {
		return nil, s, fail("write the one amount you used", "%s is a range, not one amount", quote(s))
	}
	if rest != "" && strings.ContainsRune("0123456789.,/_'’", rune(rest[0])) && !strings.HasPrefix(rest, ", ") && !feetMark(rest) {
		return nil, s, fail("write it like 1.8, 1/2 or 1 1/2", "%s is not a number", quote(s))
	}
	return v, strings.TrimSpace(rest), nil
}

// feetMark tells 5' (feet) from 1'000 (a Swiss thousand).
func feetMark(rest string) bool {
	return rest[0] == '\'' && (len(rest) == 1 || rest[1] == ' ')
}

func matchNumber(s string) (*big.Rat, int, error) {
	if v, n := plainDecimal(s); n > 0 {
		return v, n, nil
	}
	if m := mixedForm.FindStringSubmatch(s); m != nil {
		f, err := fraction(m[2], m[3], s)
		if err != nil {
			return nil, 0, err
		}
		if f.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, 0, fail("write the whole number and a fraction below one, like 1 1/2", "%s is not a mixed number", quote(s))
		}
		whole, _ := new(big.Rat).SetString(m[1])
		return f.Add(f, whole), len(m[0]), nil
	}
	if m := fractionForm.FindStringSubmatch(s); m != nil {
		f, err := fraction(m[1], m[2], s)
		return f, len(m[0]), err
	}
	if m := groupForm.FindString(s); m != "" {
		return nil, 0, fail(grouped(m, s[len(m):]), "%s may mean thousands or a decimal comma", quote(s))
	}
	for _, form := range []*regexp.Regexp{decimalForm, pointForm} {
		if m := form.FindString(s); m != "" {
			v, _ := new(big.Rat).SetString(strings.Replace(m, ",", ".", 1))
			return v, len(m), nil
		}
	}
	return nil, 0, fail("start with a number: 1.8 kg, 4 cups, 3 lemons", "%s does not start with a number", quote(s))
}

// plainDecimal reads most of what is written, "12" or "2.625", without the forms
// above; n is 0 where a sign of another form follows.
func plainDecimal(s string) (v *big.Rat, n int) {
	const most = 15 // characters: more is left to decimalForm
	num, den, point := int64(0), int64(1), false
	for ; n < len(s); n++ {
		switch c := s[n]; {
		case c >= '0' && c <= '9':
			num = num*10 + int64(c-'0')
			if point {
				den *= 10
			}
		case c == '.' && !point && n > 0:
			point = true
		case n > most || n == 0 || point && den == 1 || strings.ContainsAny(s, "/,"):
			return nil, 0
		default:
			return big.NewRat(num, den), n
		}
		if n > most {
			return nil, 0
		}
	}
	if n == 0 || point && den == 1 || n > most {
		return nil, 0
	}
	return big.NewRat(num, den), n
}

func fraction(num, den, s string) (*big.Rat, error) {
	n, _ := new(big.Rat).SetString(num)
	d, _ := new(big.Rat).SetString(den)
	if d.Sign() == 0 {
		return nil, fail("write a fraction like 1/2", "%s divides by zero", quote(s))
	}
	return n.Quo(n, d), nil
}

// grouped words the two readings of "1,500 g".
func grouped(number, rest string) string {
	plain := strings.ReplaceAll(number, ",", "")
	if strings.Count(number, ",") > 1 || strings.Contains(number, ".") {
		return fmt.Sprintf("write %s%s, without commas", plain, rest)
	}
	return fmt.Sprintf("write %s%s or %s%s", plain, rest, strings.TrimRight(strings.Replace(number, ",", ".", 1), "0"), rest)
}

// scaled multiplies a number by an exact unit and rounds to the nearest whole
// (halves away from zero). ok is false beyond 64 bits.
func scaled(v *big.Rat, unit int64) (n int64, ok bool) {
	r := new(big.Rat).Mul(v, new(big.Rat).SetInt64(unit))
	half := big.NewRat(1, 2)
	if r.Sign() < 0 {
		half.Neg(half)
	}
	r.Add(r, half)
	q := new(big.Int).Quo(r.Num(), r.Denom())
	return q.Int64(), q.IsInt64()
}
