// Package weigh judges sample weights against a declared net content:
// NIST Handbook 133 (average and MAV) and the packers' rules of 76/211/EEC.
package weigh
