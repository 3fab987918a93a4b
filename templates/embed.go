// Package templates holds what a designer may change without touching code:
// label designs, label sheets, and the pages shown in a browser.
package templates

import "embed"

// FS holds designs/*.toml, sheets/*.toml, new/*.toml and web/*.
//
//go:embed designs sheets web new
var FS embed.FS
