// Package law is the folder of what a label must say in one place, and what
// it may not say: statements with their clause and their limits, no layout.
// It knows the cooked facts and the rules of a place (templates/places); it
// knows no page, no typeface and no disk, and it never certifies that a food is
// safe. place reads the rules, draft is a label in the making, us and eu are the
// two bodies of law, label is what they hand on. To add: a place is one file of
// templates/places, a language one of templates/languages, a body of law one
// package like us and eu, and one line of Laws and Declare.
package law
