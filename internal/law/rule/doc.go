// Package rule words what the label of one jar must say in one place: it turns
// what cook found out (masses, dates, keeping) into the statements of a label,
// each with its least letter height, its zone and the clause that asks for it,
// and reports what is missing or not allowed. It knows law and words; it does
// not know paper, type or layout, and it never certifies that a food is safe.
//
// A place is one file templates/places/ID.toml; its rules are tables, and which statements
// it makes is the list `kinds`, each a name of the table in kinds.go. A file may
// extend one other: what it leaves out comes from there, whole tables at a time,
// never merged inside a table. Every table carries `source` and `confidence`
// (primary, secondary or memory).
//
// To add a place: one TOML file. To add a statement: one Go file with a
// func(*pass), and one line in kinds.go naming the phrases it needs. To add a
// language: templates/languages/LANG.toml, a flat list of "key" = "words"; templates/languages/LANG-*.toml
// add to the same language (en.toml holds the English of the American sets,
// whose keys begin with "us.", en-eu.toml that of the European ones). A phrase a set's
// statements need and its language lacks is a load error, never English by
// accident.
package rule
