package store

import (
	"errors"
	"fmt"
)

var (
	// ErrOntoInput means a result would overwrite a file it was made from.
	ErrOntoInput = errors.New("the output would overwrite an input file")
	// ErrReadOnly means the file was set read-only: someone wants it to stay.
	ErrReadOnly = errors.New("the file is read-only")
	// ErrChanged means the file on disk is not the one the edit began from.
	ErrChanged = errors.New("the file changed on disk since it was opened")
	// ErrNotText means a file that is not UTF-8: an edit would garble it.
	ErrNotText = errors.New("the file is not UTF-8 text")
	// ErrLinked means a file with a second name. Replacing it would part the
	// names, and writing into it could reach a copy kept as a backup.
	ErrLinked = errors.New("the file has a second name (a hard link)")
	// ErrDangling means a name that leads nowhere: a disk not there, a folder moved.
	ErrDangling = errors.New("a link to a file that is not there")
	// ErrInTheWay means a file, or a link to nothing, of a folder's name.
	ErrInTheWay = errors.New("no folder can be made: something else has its name")
	// ErrBusy means another run has been writing in the folder all the while.
	ErrBusy = errors.New("another jarmark is writing in this folder")
)

// ForeignError is a file in the way that is the maker's and not ours.
type ForeignError struct{ Path, Why string }

func (e *ForeignError) Error() string { return e.Path + " " + e.Why }

const (
	notOurs   = "was not written by jarmark"
	changed   = "was changed since jarmark wrote it"
	otherKind = "holds something of another kind than this result"
)

// TakenError is a results folder that holds another batch's results.
type TakenError struct{ Dir, Batch, By string }

func (e *TakenError) Error() string {
	if e.Batch == "" {
		e.Batch = "the built-in demo"
	}
	return fmt.Sprintf("%s holds the results of %s, not of %s", e.Dir, e.By, e.Batch)
}
