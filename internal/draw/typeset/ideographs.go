package typeset

import (
	"strings"
	"unicode"
)

// Characters of Chinese and Japanese no line begins with and none ends with (W3C,
// Requirements for Japanese Text Layout, 3.1.7 and 3.1.8).
const (
	noStart = "、。，．・：；？！゛゜ヽヾゝゞ々〻ー～）〕］｝〉》」』】’”％℃ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ"
	noEnd   = "（〔［｛〈《「『【‘“"
)

// ideographic reports whether a line may end beside a letter without a blank.
func ideographic(r rune) bool {
	return r >= 0x2e80 && (unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana) || strings.ContainsRune(noStart, r))
}

// mayPart reports whether a line may end between two letters, of which the first is
// ideographic.
func mayPart(r, next rune) bool {
	return !strings.ContainsRune(noStart, next) && !strings.ContainsRune(noEnd, r) && next != NBSP && !unicode.IsSpace(next) && next != SoftHyphen
}
