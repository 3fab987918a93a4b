// Package kit is the folder of tools that know nothing of jam: exact units,
// findings, TOML with positions, and edits that keep the rest of a file.
// What knows an ingredient, a country or a page does not belong here.
// Nothing in it imports another group. To add: a package of its own, and its
// line in internal/deps_test.go.
package kit
