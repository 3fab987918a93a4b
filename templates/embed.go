// Package templates holds all that may be changed or added without touching
// code: the rules of a place, the words of a language, the pantry's tables,
// label designs, label sheets, starter files, and the pages of the browser.
package templates

import "embed"

// FS holds places/*.toml, languages/*.toml, pantry/*.csv, designs/*.toml,
// sheets/*.toml, new/*.toml and web/*.
//
//go:embed places languages pantry designs sheets new web
var FS embed.FS
