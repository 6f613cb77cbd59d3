package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// file is a file to be by its name in a folder.
type file struct {
	name string
	text []byte
}

// failedError is work that could not be done for a reason outside the plan.
type failedError struct{ what, hint string }

func (e failedError) Error() string { return e.what }

const nothingChanged = "nothing was changed; make room or pick a folder you may write in"

// placeAll puts files into a folder so that all of them are there whole or none
// is: each is written beside its place, then all are renamed. Files of the same
// names that stood there before are put back when that fails half way.
func placeAll(dir string, files []file) (err error) {
	var swaps []swap
	defer func() {
		for _, s := range swaps {
			s.sweep()
		}
	}()
	for _, f := range files {
		s, err := prepare(dir, f)
		swaps = append(swaps, s)
		if err != nil {
			return failedError{fmt.Sprintf("%s was not written: %s", s.path, cause(err)), nothingChanged}
		}
	}
	for i, s := range swaps {
		if err := os.Rename(s.fresh, s.path); err != nil {
			for _, done := range swaps[:i] {
				done.undo()
			}
			return failedError{fmt.Sprintf("%s was not written: %s", s.path, cause(err)), nothingChanged}
		}
	}
	return nil
}

// makeFolder makes a folder and those above it. undo takes away again, as far
// as they are empty, the ones that were not there.
func makeFolder(dir string) (undo func(), err error) {
	var missing []string
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		if _, err := os.Lstat(d); err == nil || d == filepath.Dir(d) {
			break
		}
		missing = append(missing, d)
	}
	undo = func() {
		for _, d := range missing {
			_ = os.Remove(d) // a folder that holds something stays
		}
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		undo()
		return nil, failedError{fmt.Sprintf("the folder %s cannot be made: %s", dir, cause(err)), "name a folder you may write in"}
	}
	return undo, nil
}

// swap is one file on its way: the fresh text beside its place, and a copy of
// what stood there before; empty where there is none.
type swap struct{ path, fresh, former string }

func prepare(dir string, f file) (s swap, err error) {
	s.path = filepath.Join(dir, f.name)
	if s.fresh, err = beside(dir, f.text); err != nil {
		return s, err
	}
	info, err := os.Lstat(s.path)
	switch {
	case err != nil:
		return s, nil
	case info.Mode()&fs.ModeSymlink != 0:
		return s, nil
	case !info.Mode().IsRegular():
		return s, errors.New("what stands there is no file")
	}
	text, err := os.ReadFile(s.path)
	if err != nil {
		return s, fmt.Errorf("the one that is there cannot be read: %w", cause(err))
	}
	s.former, err = beside(dir, text)
	return s, err
}

// undo brings back what stood there before.
func (s swap) undo() {
	if s.former == "" {
		_ = os.Remove(s.path)
		return
	}
	_ = os.Rename(s.former, s.path)
}

// sweep removes what is left beside the place; what was renamed is gone already.
func (s swap) sweep() {
	for _, name := range []string{s.fresh, s.former} {
		if name != "" {
			_ = os.Remove(name)
		}
	}
}

// beside writes text to a file of a passing name in the folder, whole and on
// the disk, and gives its name; on an error no file is left.
func beside(dir string, text []byte) (name string, err error) {
	f, err := os.CreateTemp(dir, ".rootbell-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(text)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		_ = os.Remove(f.Name())
		return "", err
	}
	return f.Name(), nil
}
