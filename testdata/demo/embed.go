// Package demo holds the built-in demo: a kitchen and three batches, all
// invented. They show a maker what the files look like.
package demo

import "embed"

// FS holds kitchen.toml and the batch files beside it.
//
//go:embed *.toml
var FS embed.FS
