// Package draft is a label in the making, as every law makes one: the batch, the
// jar, the place and its words, the blocks and findings so far, and the steps a
// law's table names. Here lives what all laws say alike: allergens and what they
// rest on, price, code and seal words, what a gift and a plan are let off. No
// clause of one country lives here.
package draft
