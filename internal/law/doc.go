// Package law is the folder of what a label must say in one place, and what
// it may not say: statements with their clause and their limits, no layout.
// It knows the cooked facts and the rules of a place (templates/places); it
// knows no page, no typeface and no disk. To add: a place is one file of
// templates/places, a language one of templates/languages.
package law
