// Package fonts holds the typefaces jarmark prints with: static TrueType
// files under the SIL Open Font License, each with its licence beside it.
package fonts

import "embed"

// FS holds every *.ttf and its OFL-*.txt licence.
//
//go:embed *.ttf OFL-*.txt
var FS embed.FS
