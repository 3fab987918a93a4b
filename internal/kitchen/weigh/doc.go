// Package weigh judges weighed jars against a declared net content, and finds
// the highest declaration the weights support. It holds two systems: the
// average and individual tests of NIST Handbook 133 (United States) and the
// three packers' rules of Directive 76/211/EEC and SI 2006/659.
//
// Input: net weights from a scale, tare already taken off, and the lot size.
// Output: a Report or an Advice with every number, its verdict and its clause,
// and findings. It never takes a computed weight for a weighed one: callers
// pass scale readings only. It reads no files and parses no text.
//
// A passing check of a few jars is evidence, not proof; local weights and
// measures officials decide.
package weigh
