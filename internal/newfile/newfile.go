// Package newfile makes files that are new and whole: nothing that is there is overwritten, and a full disk or a stop leaves
// nothing behind. A file is written beside its place under a name of its own and put there when it is done.
package newfile

import (
	"crypto/rand"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// Taken is a name under which something is there already.
type Taken struct {
	Name   string
	Folder bool   // a folder is there
	Free   string // a name like it that is free, "" where none was found
}

func (t *Taken) Error() string { return t.Name + " is there already" }

// Is lets a Taken be found as fs.ErrExist.
func (t *Taken) Is(err error) bool { return err == fs.ErrExist }

// Check says whether a name is taken, so that nothing is worked out for a file that cannot be made. A link that leads
// nowhere takes it too: what it means is another file.
func Check(name string) error {
	info, err := os.Lstat(name)
	if err != nil {
		return nil // nothing, or nothing that can be seen: the making says what is wrong
	}
	return &Taken{name, info.IsDir(), like(name)}
}

// like is a free name beside one that is taken: map-2.svg for map.svg.
func like(name string) string {
	ending := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ending)
	for n := 2; n < 100; n++ {
		other := stem + "-" + strconv.Itoa(n) + ending
		if _, err := os.Lstat(other); errors.Is(err, fs.ErrNotExist) {
			return other
		}
	}
	return ""
}

// Write makes a file of what is written into it.
func Write(name string, mode fs.FileMode, write func(io.Writer) error) error {
	return Make(name, func(temp string) error {
		f, err := os.OpenFile(temp, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode)
		if err != nil {
			return err
		}
		if err := write(f); err != nil {
			return errors.Join(err, f.Close())
		}
		return errors.Join(f.Sync(), f.Close())
	})
}

// Make makes a file by somebody else's hand, which is given the name to make it under.
func Make(name string, by func(temp string) error) error {
	if err := Check(name); err != nil {
		return err
	}
	temp := filepath.Join(filepath.Dir(name), ".brazebooth-"+strings.ToLower(rand.Text()[:12]))
	err := by(temp)
	if err == nil {
		err = put(temp, name)
	}
	if err != nil {
		_ = os.Remove(temp) // where it was not even made there is none
		return &failed{err, temp, name}
	}
	return nil
}

// put gives a whole file its name, unless that was taken meanwhile.
func put(temp, name string) error {
	err := os.Link(temp, name)
	switch {
	case err == nil:
		return os.Remove(temp)
	case errors.Is(err, fs.ErrExist):
		return Check(name)
	}
	return putUnlinked(temp, name)
}

// putUnlinked is put on a disk that knows no links: an empty file holds the place.
func putUnlinked(temp, name string) error {
	own, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return Check(name)
	}
	if err != nil {
		return err
	}
	if err := errors.Join(own.Close(), os.Rename(temp, name)); err != nil {
		return errors.Join(err, os.Remove(name))
	}
	return nil
}

// failed is an error that speaks of the file that was wanted, not of the one that it was written under.
type failed struct {
	error
	temp, name string
}

func (f *failed) Error() string { return strings.ReplaceAll(f.error.Error(), f.temp, f.name) }

func (f *failed) Unwrap() error { return f.error }
