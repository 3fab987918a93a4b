// Package place reads the rules of a place: one file templates/places/ID.toml,
// the words of its languages (templates/languages) and the quotations its values
// were read in (places/quotes). Here live the tables a set may have, what is
// wrong with a set, and what a set says on a day; no statement of a label is
// made here, and no batch is known. A set may extend one other: what it leaves
// out comes from there, whole tables at a time, never merged inside a table;
// every table carries `source` and `confidence` (primary, secondary or memory).
//
// To add a place: one TOML file. To add a language: templates/languages/LANG.toml,
// a flat list of "key" = "words"; LANG-*.toml add to the same language (en.toml
// holds the English of the American sets, whose keys begin with "us.", en-eu.toml
// that of the European ones). A phrase a set's statements need and its language
// lacks is a load error, never English by accident. To add a table or key: its
// type here, and the code of a law that reads it.
package place
