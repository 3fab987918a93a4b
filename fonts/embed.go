// Package fonts holds the typefaces jarmark prints with: static TrueType
// files under the SIL Open Font License, each with its licence beside it.
//
// Two are modified versions: in Fraunces_500Medium_Italic and
// Fraunces_700Bold_Italic the plain forms of b, d, h, k, l and & (the font's own
// alternates) trade places with the looped ones, since a PDF reaches glyphs by
// character alone.
package fonts

import "embed"

// The four of the local page stand here as WOFF2 too (woff2_compress of
// Debian's woff2 makes them); a test compares them with the TrueType files.
//
// FS holds every *.ttf, *.woff2 and the OFL-*.txt licences.
//
//go:embed *.ttf *.woff2 OFL-*.txt
var FS embed.FS
