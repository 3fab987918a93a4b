// Package fonts holds the typefaces jarmark prints with: static TrueType
// files under the SIL Open Font License, each with its licence beside it.
//
// Two are modified versions: in Fraunces_500Medium_Italic and
// Fraunces_700Bold_Italic the plain forms of b, d, h, k, l and & (the font's own
// alternates) trade places with the looped ones, since a PDF reaches glyphs by
// character alone.
package fonts

import "embed"

// FS holds every *.ttf and its OFL-*.txt licence.
//
//go:embed *.ttf OFL-*.txt
var FS embed.FS
