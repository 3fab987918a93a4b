//go:build !js

package fonts

import "embed"

// Page holds the faces of the local page as WOFF2 (woff2_compress of Debian's
// woff2 makes them); a test compares them with the TrueType files. The program
// in a browser, which is loaded whole, does without: it has those.
//
//go:embed *.woff2
var Page embed.FS
