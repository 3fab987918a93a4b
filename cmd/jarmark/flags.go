package main

import (
	"errors"
	"flag"
	"strings"

	"jarmark/internal/app/job"
)

// options holds every flag of every command; each command registers its own.
type options struct {
	out      string // -o
	json     bool
	sheet    string
	design   string
	kind     string
	skip     int
	copies   int
	serials  bool
	inkSaver bool
	cutMarks bool
	cutLines bool
	trimmed  bool
	profile  string
	dpi      int
	gift     bool
	place    string
	format   string
	jars     string
	named    string
	jar      string
	of       string
	numbers  string
	event    string
	list     string
	cameHome string
	declared string
	size     string
	lots     int
	dir      string
	from     string
	port     int
	noOpen   bool
	site     bool
	quiet    bool
	remember bool
	stall    bool
	force    bool
	sources  bool
	proof    bool
	memory   bool
	dryRun   bool
	tape     bool
	undo     bool
	date     string
	row      job.BookRow
}

func outFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.out, "o", "", "write to `PATH`; - writes to stdout")
	forceFlag(f, o)
}

func forceFlag(f *flag.FlagSet, o *options) {
	f.BoolVar(&o.force, "force", false, "replace files that are not jarmark's too, and keep each as NAME~1")
}

func quietFlag(f *flag.FlagSet, o *options) {
	f.BoolVar(&o.quiet, "quiet", false, "no progress, only problems")
}

func placeFlag(f *flag.FlagSet, o *options) {
	f.Func("place", "use the rules of `PLACE` instead of the kitchen's", func(s string) error {
		if o.place = strings.TrimSpace(s); o.place == "" {
			return errors.New(`it is blank; write a place like us-or, eu or gb`)
		}
		return nil
	})
}

func lookFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.design, "design", "", "label `DESIGN`; see jarmark designs")
	f.StringVar(&o.sheet, "sheet", "", "label `SHEET`; see jarmark sheets")
	f.BoolVar(&o.inkSaver, "ink-saver", false, "black on white, no filled areas")
	f.BoolVar(&o.cutMarks, "cut-marks", false, "fine marks between labels to cut along")
	f.IntVar(&o.skip, "skip", 0, "leave the first `N` labels of a part-used sheet free")
	f.BoolVar(&o.serials, "serials", false, "number the jars: 07 / 12")
}

func alignFlags(f *flag.FlagSet, o *options) {
	outFlags(f, o)
	f.BoolVar(&o.tape, "jar", false, "a paper tape that measures jars instead, on the paper of SHEET, else the kitchen's")
}

func jsonFlag(f *flag.FlagSet, o *options) {
	f.BoolVar(&o.json, "json", false, "as JSON")
}

func listFlags(f *flag.FlagSet, o *options) {
	jsonFlag(f, o)
	f.StringVar(&o.dir, "dir", ".", "`FOLDER` with your own designs/, sheets/ and kitchen.toml")
}

func placesFlags(f *flag.FlagSet, o *options) {
	listFlags(f, o)
	f.BoolVar(&o.sources, "sources", false, "the sentences a place's values were read in, where and when")
	f.BoolVar(&o.memory, "memory", false, "what is still from memory, oldest look first")
}

func makeFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.out, "o", "out", "`FOLDER` for the results; one folder a lot inside")
	f.BoolVar(&o.gift, "gift", false, "labels to give away: nothing that only selling asks for")
	forceFlag(f, o)
	lookFlags(f, o)
	placeFlag(f, o)
	quietFlag(f, o)
}

func checkFlags(f *flag.FlagSet, o *options) {
	f.BoolVar(&o.json, "json", false, "facts and findings as JSON")
	placeFlag(f, o)
	f.BoolVar(&o.gift, "gift", false, "check as a gift: what only selling asks for becomes a note")
}

func labelsFlags(f *flag.FlagSet, o *options) {
	outFlags(f, o)
	f.StringVar(&o.kind, "kind", "", "which label: `KIND` is front, info, wrap, lid, tag, strip, bag, case, shelf, allergens or sign")
	f.IntVar(&o.copies, "copies", 0, "`N` labels instead of one a sealed jar")
	f.StringVar(&o.jar, "jar", "", "only jars of this `SIZE`: \"8 fl oz\"")
	f.StringVar(&o.numbers, "serial", "", "numbered labels of these `JARS` only: \"17, 20-22\"")
	f.StringVar(&o.size, "size", "", "label `SIZE` for plain paper: \"80 x 50 mm\"")
	f.StringVar(&o.format, "format", "", "`FORMAT` pdf, svg or png; default by the name after -o, else pdf")
	f.BoolVar(&o.gift, "gift", false, "labels to give away: nothing that only selling asks for")
	f.StringVar(&o.list, "list", "", "gift list, a CSV or TOML `FILE`: one tag a jar")
	f.BoolVar(&o.proof, "proof", false, "instead, a page that shows the label with every required line measured")
	f.IntVar(&o.dpi, "dpi", job.DefaultDPI, "resolution of PNG, `DOTS` an inch")
	f.BoolVar(&o.cutLines, "cut-lines", false, "in PDF and SVG, a layer of the lines to cut along, for a cutting machine")
	f.BoolVar(&o.trimmed, "trimmed", false, "for a print shop: each different label a page, with 3 mm of bleed and its trim")
	f.StringVar(&o.profile, "profile", "", "with --trimmed: the print shop's ICC profile, a `FILE`, which makes PDF/X-4")
	f.BoolVar(&o.remember, "remember", false, "note part-used sheets in kitchen.toml, and begin there next time")
	lookFlags(f, o)
	placeFlag(f, o)
	quietFlag(f, o)
}

func packFlags(f *flag.FlagSet, o *options) {
	outFlags(f, o)
	f.StringVar(&o.format, "format", "", "`FORMAT` pdf, csv or text; default by the name after -o, else text")
	f.StringVar(&o.event, "event", "", "only what goes to `EVENT`")
	f.StringVar(&o.list, "list", "", "gift list, a CSV or TOML `FILE`")
	f.BoolVar(&o.dryRun, "dry-run", false, "with --list: do not write its promises into the ledger")
	f.BoolVar(&o.stall, "stall", false, "the allergen sheet for the stall of --event instead, as PDF")
	f.StringVar(&o.date, "date", "", "only the market of this `DAY`, like 2026-12-05")
	f.StringVar(&o.cameHome, "came-home", "", "note in the ledger that `N` jars of --event came home: \"3\", or \"LOT=3, LOT=0\"")
}

func recordFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.out, "o", "out/record", "`FOLDER` for the pages; - writes one page to stdout")
	forceFlag(f, o)
	placeFlag(f, o)
}

func scaleFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.named, "new", "", "write it as a new batch file `NAME` beside the old one, to cook today")
	f.StringVar(&o.jars, "jars", "", "the `JARS` wanted: \"24 x 8 fl oz, 6 x 4 fl oz\"")
	f.BoolVar(&o.json, "json", false, "as JSON")
	outFlags(f, o)
}

func weighFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.declared, "declared", "", "judge this declared `WEIGHT`: \"10 oz\"")
	f.IntVar(&o.lots, "lot-size", 0, "`N` jars in the lot, when weights are given by hand")
	f.StringVar(&o.format, "format", "", "`FORMAT` text, or pdf or csv: the record of weighing of a batch; default by the name after -o, else text")
	outFlags(f, o)
	placeFlag(f, o)
	f.BoolVar(&o.json, "json", false, "as JSON")
}

func traceFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.of, "of", "", "the lot is that of a packet of this `INGREDIENT`")
	f.StringVar(&o.dir, "dir", ".", "`FOLDER` with the batch files, also in folders below it")
	f.StringVar(&o.format, "format", "", "`FORMAT` text, pdf (a recall sheet to carry) or notice (words to put up or send); default by the name after -o, else text")
	outFlags(f, o)
}

func ledgerFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.dir, "dir", ".", "`FOLDER` with the batch files, also in folders below it")
	f.StringVar(&o.format, "format", "", "`FORMAT` text or csv; default by the name after -o, else text")
	f.BoolVar(&o.undo, "undo", false, "put back the ledger as it was before the last change; once more undoes that")
	f.StringVar(&o.row.Why, "why", "", "add: `WHY` is promised, given, sold, came home, eaten, broken or recalled")
	f.StringVar(&o.row.Lot, "lot", "", "add: the `LOT` of the jars")
	f.StringVar(&o.row.Jar, "jar", "", "add: the `JAR`, when the lot has several sizes")
	f.IntVar(&o.row.Count, "count", 0, "add: `N` jars")
	f.StringVar(&o.row.Who, "who", "", "add: the person's or market's `NAME`")
	f.StringVar(&o.row.Date, "date", "", "add: the `DAY`, like 2026-06-14; default today")
	f.StringVar(&o.row.Price, "price", "", "add: the `PRICE` of one jar")
	outFlags(f, o)
}

func seasonFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.dir, "dir", ".", "`FOLDER` with the batch files, also in folders below it")
	f.StringVar(&o.format, "format", "", "`FORMAT` text, csv or pdf (one page to print); default by the name after -o, else text")
	outFlags(f, o)
}

func newFlags(f *flag.FlagSet, o *options) {
	f.StringVar(&o.dir, "dir", ".", "`FOLDER` to begin in")
	f.StringVar(&o.from, "from", "", "`FILE` of plain notes or a recipe to read; - is standard input")
	placeFlag(f, o)
}

func serveFlags(f *flag.FlagSet, o *options) {
	f.IntVar(&o.port, "port", 0, "`PORT` on this computer; 0 is the folder's own, the same each time")
	f.BoolVar(&o.site, "site", false, "the folder is the static site that go run ./cmd/jarmark-page built")
	f.BoolVar(&o.noOpen, "no-open", false, "do not open the browser")
}
