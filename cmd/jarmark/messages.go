package main

import (
	"errors"
	"io/fs"
	"syscall"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

const (
	makeHelp = `Reads each BATCH (a TOML file, or a folder of them) with the kitchen.toml
beside it or above it, and writes everything into out/LOT/. Without a BATCH the
built-in demo is made. A batch with errors writes nothing.

  jarmark make june/strawberry.toml
  jarmark make . --design hedgerow`

	checkHelp = `Prints what jarmark knows of each batch - yield, jars, ingredients, dates - and
every finding with its line and the clause behind it. Exit status 1 when there
is an error. Not legal advice: your food agency has the last word.`

	labelsHelp = `Writes one PDF with a label for every sealed jar. Print at 100 %, "actual
size". Labels sold must be checked against the rules where you sell.

  jarmark labels plum.toml --kind lid --sheet letter-round-2in
  jarmark labels plum.toml --skip 3 -o plum.pdf
  jarmark labels plum.toml --kind tag --list friends.csv
  jarmark labels plum.toml --proof -o proof.pdf`

	packHelp = `Says which jars go to whom, what stays, and what is needed: for one batch,
several, one market (--event, --date) or a gift list (--list). In the evening
note what came home: the ledger then knows what was sold, and for how much.
A folder stands for its batches and those of the folders below it.

  jarmark pack . --event "Millbrook market" -o saturday.pdf
  jarmark pack . --event "Millbrook market" --date 2026-12-05 --came-home "L26265-PL=3, L26201-AP=0"`

	recordHelp = `Writes the public page of each lot and an index, as plain files for any web
host. Only listed facts are published: never notes, gifts or a home address.`

	scaleHelp = `Scales the recipe so that it fills exactly the jars you want. Pectin jams set
less surely above a double batch.

  jarmark scale plum.toml --jars "24 x 8 fl oz, 6 x 4 fl oz"`

	weighHelp = `Judges net weights of filled jars (gross less tare) and gives the highest
declaration they allow. Uses the net weights in a BATCH file, or weights given
on the command line.

With --format pdf or csv it writes the record of weighing that some laws ask of a
packer: every reading, the average and the lightest, each test with its clause,
and room for scale, date and signature.

  jarmark weigh plum.toml
  jarmark weigh plum.toml --format pdf -o weighing.pdf
  jarmark weigh "10.3 oz" "10.1 oz" "10.4 oz" --declared "10 oz" --place us`

	traceHelp = `Answers from the batch files in a folder who has the jars of a lot, and writes
a recall sheet to work from by telephone, or a notice to put up. The lot may be
that of a packet (lot = "7731" beside an ingredient), or a day: all jars of it.

  jarmark trace L26165-SR --format pdf -o recall.pdf
  jarmark trace 7731 --of pectin
  jarmark trace 2026-06-14 --format notice`

	ledgerHelp = `Says of every lot how many jars were made, given, sold, lost and are at home,
from ledger.csv beside kitchen.toml and the [[gift]] and [[market]] tables of
the batch files. The ledger opens in any spreadsheet: one row each time jars
move. "list" prints the rows, "add" writes one at the end; every earlier version
is kept in .jarmark-history.

  jarmark ledger
  jarmark ledger add --why eaten --lot L26165-SR --count 2
  jarmark ledger add --why sold --lot L26165-SR --count 4 --who "Millbrook market" --price 9.50
  jarmark ledger --undo`
	seasonHelp = `Sums up every batch of a folder from the ledger: jars made, given, sold, lost
and left, takings, costs and profit of each jam and market, what to buy next.
A cost that is not written down is said; it never counts as nothing.

  jarmark season
  jarmark season -o season.pdf`

	alignHelp = `Print this page on plain paper at 100 %, hold it against the label sheet, and
write the offset and scale you measure into kitchen.toml under [printer].

With --jar it is a paper tape to cut out: what it reads around a jar and up its
straight side goes into kitchen.toml under [[jar]], and beats the table's value.

  jarmark align letter-2x5-4x2in
  jarmark align --jar`

	placesHelp = `Without a name it lists the rule sets; with one it prints every value in force
there, its source and how it was verified. --sources prints the sentences the
values were read in; --memory lists what nobody has read yet.

  jarmark places us-or --sources`

	newHelp = `Writes a kitchen.toml (when there is none yet) and a batch file to fill in.

  jarmark new "plum jam"

With --from it reads your own notes or a recipe in plain words. Every line stands
in the file beside what was read of it; what is not clear is asked about there.

  jarmark new "plum jam" --from notes.txt`

	serveHelp = `Opens a page in your browser, on this computer only, to edit the batches in DIR
and see the labels while you type. Stop it with Ctrl-C. With --site, DIR is the
static site that go run ./cmd/jarmark-page DIR built: the same page, with the
program running in the browser.`
)

// suggest names the command nearest to a mistyped one.
func suggest(word string) string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	topics := map[string]bool{}
	for _, t := range job.Topics() {
		topics[t.Name] = true
		names = append(names, t.Name)
	}
	if near, ok := diag.DidYouMean(word, names); ok {
		if _, command := find(near); topics[near] && !command {
			near = "jarmark help " + near
		}
		return "did you mean " + near + "? jarmark help lists the commands"
	}
	return "jarmark help lists the commands"
}

// hintFor says what to do about an error of the disk, and what it left: a
// failed writing changes nothing, but there may have been others before it.
func (a *app) hintFor(err error) string {
	h := hintFor(err)
	var foreign *store.ForeignError
	var taken *store.TakenError
	disk := errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EFBIG) || errors.Is(err, syscall.EBUSY) ||
		errors.Is(err, store.ErrBusy) || errors.Is(err, store.ErrReadOnly) || errors.As(err, &foreign) || errors.As(err, &taken)
	switch {
	case !disk:
		return h
	case a.wrote:
		return h + "; what is named above was written before"
	}
	return h + "; nothing was changed"
}

func hintFor(err error) string {
	var foreign *store.ForeignError
	var taken *store.TakenError
	switch {
	case errors.As(err, &foreign):
		return "move it elsewhere, choose another place with -o, or keep a copy of it with --force"
	case errors.As(err, &taken):
		return "write a lot of its own into one of the two, or choose another folder with -o"
	case errors.Is(err, syscall.ENOSPC):
		return "the disk is full"
	case errors.Is(err, syscall.EFBIG):
		return "the system limits file sizes here"
	case errors.Is(err, syscall.EBUSY):
		return "another program has it open, or it is a mount"
	case errors.Is(err, store.ErrBusy):
		return "wait for the other run to end, then do it again"
	case errors.Is(err, store.ErrInTheWay):
		return "move it elsewhere, or choose another folder with -o"
	case errors.Is(err, store.ErrDangling):
		return "bring back what it leads to, or take the link away"
	case errors.Is(err, store.ErrReadOnly):
		return "allow writing to it if it may change"
	case errors.Is(err, store.ErrChanged):
		return "another program wrote it meanwhile; do it again"
	case errors.Is(err, store.ErrNotText):
		return "save it as UTF-8 in the program it was written with"
	case errors.Is(err, store.ErrLinked):
		return "make it a file of its own (copy it and rename the copy), or edit it by hand"
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return "the folder cannot be written; choose another with -o"
	case errors.Is(err, store.ErrOntoInput):
		return "choose another name with -o"
	case errors.Is(err, store.ErrTooBig):
		return "a batch file is text of a few kilobytes; is this the right file?"
	case errors.Is(err, fs.ErrNotExist):
		return "is the name right? jarmark new NAME writes a starter file"
	}
	return ""
}
