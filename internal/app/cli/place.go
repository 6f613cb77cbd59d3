package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// place writes a file beside its place and renames it, so that it is there
// whole or not at all.
func place(path string, text []byte) (err error) {
	dir := filepath.Dir(path)
	f, err := os.CreateTemp(dir, ".rootbell-*")
	if err != nil {
		return fmt.Errorf("cannot write in %s: %w", dir, cause(err))
	}
	defer func() {
		if err != nil {
			err = errors.Join(fmt.Errorf("%s was not written: %w", path, cause(err)), os.Remove(f.Name()))
		}
	}()
	if _, err = f.Write(text); err != nil {
		return errors.Join(err, f.Close())
	}
	if err = f.Sync(); err != nil {
		return errors.Join(err, f.Close())
	}
	if err = f.Chmod(0o644); err != nil {
		return errors.Join(err, f.Close())
	}
	if err = f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
