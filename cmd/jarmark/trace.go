package main

import (
	"os"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// runTrace answers who has the jars of a lot. Nothing holds up a recall: the
// answer comes from all that can be read, and names what could not.
func runTrace(a *app, o *options, args []string) error {
	if len(args) != 1 {
		return usagef("jarmark trace L26165-SR, or a packet's lot, or a day like 2026-06-14", "trace: name one lot")
	}
	as, err := format(o, "text", "pdf", "text", "notice")
	if err != nil {
		return err
	}
	if _, err := os.Stat(o.dir); err != nil {
		return err
	}
	var in []job.Input
	var left []job.Unread
	for _, u := range store.ReadEverything(o.dir, func(b, k, l store.Doc) {
		in = append(in, job.Input{Batch: job.Doc(b), Kitchen: job.Doc(k), Ledger: job.Doc(l)})
	}) {
		left = append(left, job.Unread(u))
	}
	if len(in)+len(left) == 0 {
		return usagef("name the folder they are in with --dir", "no batch files in %s", o.dir)
	}
	env, err := a.plainEnv(o.dir)
	if err != nil {
		return err
	}
	recall, found := env.Recall(in, left, job.Choices{Today: a.today()})
	a.print(found, in)
	f, more, err := recall.File(job.Sought{What: args[0], Of: o.of}, as)
	if err := a.deliver(f, more, err, in, screen(o, as), "recall-"+args[0]); err != nil {
		return err
	}
	if found.HasErrors() {
		return errProblem
	}
	return nil
}
