// Package give is the folder of where the jars go: who gets which, what is
// packed for a market, who has the jars of a lot, and the public record.
// It reads cooked facts and the statements of a place; it computes neither,
// lays out no label and touches no disk. To add: a list is one value that
// text, CSV and page all show.
package give
