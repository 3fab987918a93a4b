// Package app is the folder of wiring and faces: job joins the stages, store
// alone touches the disk, web is the local page (cmd is the command line).
// What can be worked out from values alone belongs to a stage, not here.
// Only cmd and web know a clock. To add: an output is one package and one row
// in job/outputs.go.
package app
