package main

// runSeason sums up what became of the jars of a folder.
func runSeason(a *app, o *options, args []string) error {
	if len(args) > 0 {
		return usagef("name the folder with --dir", "season: what is %q?", args)
	}
	as, err := format(o, "text", "pdf", "csv", "text")
	if err != nil {
		return err
	}
	env, batches, in, err := a.season(o.dir)
	if err != nil {
		return err
	}
	f, found, err := env.SeasonFile(batches, as)
	return a.deliver(f, found, err, in, screen(o, as), "season")
}
