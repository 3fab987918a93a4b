// Package kitchen is the folder of what happens at the stove: the batch as
// written, the pantry, the cooking arithmetic, scaling and weighing.
// It knows no country, no page and no disk; a fact here is true anywhere.
// It imports kit and the tables of templates/pantry alone. To add: an
// ingredient or a jar is one row of a table there.
package kitchen
