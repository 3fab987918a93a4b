// Package fonts holds the typefaces jarmark prints with: static TrueType
// files under the SIL Open Font License, each with its licence beside it.
//
// Two are modified versions: in Fraunces_500Medium_Italic and
// Fraunces_700Bold_Italic the plain forms of b, d, h, k, l and & (the font's own
// alternates) trade places with the looped ones, since a PDF reaches glyphs by
// character alone.
//
// Two more are instances of the variable Fraunces (npm's
// @fontsource-variable/fraunces 5.3.0, the parts latin, latin-ext and vietnamese
// merged, made with fontTools 4.38): Fraunces144pt_700Bold and its italic are its
// display cut, optical size 144, weight 700, no softness; plain forms of b, d, h, k,
// l and & in the italic, of h, m, n and s in the upright, stand at their characters.
//
// In all, outlines that no character leads to are empty, by itself or as a part of
// another, and the tables that serve other programs (substitutions, classes of
// glyphs, axes, names of glyphs) are left out; the numbers of the glyphs stay. What is
// loaded with the page is a twentieth less by that.
package fonts

import "embed"

// Beside them lie the patterns after which words of a language are parted, with
// their licences in LICENSE-hyphen.txt.
//
// FS holds every *.ttf, the OFL-*.txt licences, the patterns, and which face
// stands in for another (stand-ins.csv).
//
//go:embed *.ttf OFL-*.txt hyphen-*.txt LICENSE-hyphen.txt stand-ins.csv
var FS embed.FS
