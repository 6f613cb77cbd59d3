package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"syscall"
)

// Reason sorts what is refused, for whoever has to choose a status.
type Reason string

// The reasons.
const (
	Absent   Reason = "absent"    // there is no such file
	Exists   Reason = "exists"    // a file is there and would be overwritten
	Foreign  Reason = "foreign"   // not a file of this program
	Newer    Reason = "newer"     // written by a newer version of this program
	Damaged  Reason = "damaged"   // ours, but not whole
	Busy     Reason = "busy"      // another program has it open
	Full     Reason = "full"      // no room on the disk
	ReadOnly Reason = "read-only" // the file or its folder may not be written
	Unfit    Reason = "unfit"     // a value that cannot be kept as it is
	InBin    Reason = "in-bin"    // the garden is in the bin
)

// Refused is what the store will not or cannot do, in words for the teacher.
type Refused struct {
	Reason Reason
	What   string // what is wrong, without a full stop
	Hint   string // what to do; may be empty
	Line   int    // the line of an imported file, from 1; 0 where there is none
	Cause  error  // what the system said; may be nil
}

func (r *Refused) Error() string {
	if r.Cause != nil {
		return fmt.Sprintf("%s: %v", r.What, r.Cause)
	}
	return r.What
}

// Unwrap gives what the system said.
func (r *Refused) Unwrap() error { return r.Cause }

// NotFound is the answer where nothing is kept under an id or a number.
type NotFound struct{ What string }

func (n *NotFound) Error() string { return "there is no " + n.What }

// Conflict is the answer to a change of a revision that is no longer the
// latest. Nothing was stored.
type Conflict struct{ Latest Revision }

func (c *Conflict) Error() string {
	return fmt.Sprintf("the plan was changed meanwhile: revision %d is the latest", c.Latest.Number)
}

const (
	hintRoom   = "make room on the disk, then do it again; what was saved before is still there"
	hintFolder = "choose a folder you may write in, or ask whoever looks after this computer"
	hintBusy   = "close the other program that has it open, then do it again"
	hintBackup = "bring back a backup with 'rootbell restore'"
)

// worded says a failure of the disk or the database about a file in words.
// Errors that are in words already, or that say that the caller gave up, stay.
func worded(err error, path string) error {
	var refused *Refused
	switch {
	case err == nil, errors.As(err, &refused), errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return err
	case errors.Is(err, syscall.ENOSPC):
		return &Refused{Reason: Full, What: "there is no room left for " + path, Hint: hintRoom, Cause: err}
	case errors.Is(err, fs.ErrNotExist):
		return &Refused{Reason: Absent, What: "there is no file " + path, Hint: "check the name", Cause: err}
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS), isPath(err):
		return &Refused{Reason: ReadOnly, What: path + " cannot be written", Hint: hintFolder, Cause: bare(err)}
	}
	return wordedSQLite(err, path)
}

func isPath(err error) bool {
	var path *fs.PathError
	var link *os.LinkError
	return errors.As(err, &path) || errors.As(err, &link)
}

// bare is a file error without the path again.
func bare(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
