// Package templates holds what a designer may change without touching code:
// label designs, label sheets, and the pages shown in a browser.
package templates

import "embed"

// FS holds designs/*.toml, sheets/*.toml and web/*.
//
//go:embed all:designs all:sheets all:web
var FS embed.FS
