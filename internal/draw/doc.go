// Package draw is the folder of ink: faces, ornaments, designs, the layout of
// one label, sheets of labels, and the files written from them.
// It obeys limits handed to it as data and knows no law, no recipe, no disk.
// Renderers draw positioned items and never measure or decide. To add: a
// design or a sheet is one file of templates/designs or templates/sheets.
package draw
