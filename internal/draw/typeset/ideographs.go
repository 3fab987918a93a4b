package typeset

import (
	"strings"
	"unicode"
)

// noStart are characters of Chinese and Japanese no line begins with (W3C,
// Requirements for Japanese Text Layout, 3.1.7). Those none ends with (3.1.8), opening
// brackets, are not ideographic here, so a line never ends after one.
const noStart = "、。，．・：；？！゛゜ヽヾゝゞ々〻ー～）〕］｝〉》」』】’”％℃ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ"

// ideographic reports whether a line may end after a letter without a blank.
func ideographic(r rune) bool {
	return r >= 0x2e80 && (unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana) || strings.ContainsRune(noStart, r))
}

// mayBegin reports whether a line may begin with a letter.
func mayBegin(r rune) bool {
	return !strings.ContainsRune(noStart, r) && r != NBSP && !unicode.IsSpace(r) && r != SoftHyphen
}
