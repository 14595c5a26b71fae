// Package newfile creates files completely or not at all: a full disk or a stop leaves nothing half written. A file is
// written under a temporary name in the same folder and renamed when it is complete. Only Replace overwrites an
// existing file.
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

// Taken is the error for a name that exists already.
type Taken struct {
	Name   string
	Folder bool   // the name is that of a folder
	Free   string // a similar free name, "" if none was found
}

func (t *Taken) Error() string { return t.Name + " is there already" }

// Is makes errors.Is(err, fs.ErrExist) true for a *Taken.
func (t *Taken) Is(err error) bool { return err == fs.ErrExist }

// Check returns a *Taken for a name that exists, so that nothing is computed for a file that cannot be created. A
// dangling link counts as taken too.
func Check(name string) error {
	info, err := os.Lstat(name)
	if err != nil {
		return nil // free, or not visible: creating the file will give the error
	}
	return &Taken{name, info.IsDir(), like(name)}
}

// like is a free name similar to a taken one: map-2.svg for map.svg.
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

// Reserve creates an empty file that only its owner can read; the error is fs.ErrExist for a name that exists.
func Reserve(name string) error {
	f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	return f.Close()
}

// Write creates a file with the text that the callback writes.
func Write(name string, mode fs.FileMode, write func(io.Writer) error) error {
	return Make(name, func(temp string) error { return fill(temp, mode, write) })
}

func fill(temp string, mode fs.FileMode, write func(io.Writer) error) error {
	f, err := os.OpenFile(temp, os.O_CREATE|os.O_EXCL|os.O_WRONLY, mode)
	if err != nil {
		return err
	}
	if err := write(f); err != nil {
		return errors.Join(err, f.Close())
	}
	return errors.Join(f.Sync(), f.Close())
}

// Replace replaces the text of a file, or creates it; an old file keeps its mode. A link stays a link: the file that it
// leads to is replaced.
func Replace(name string, mode fs.FileMode, text []byte) error {
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	}
	if info, err := os.Stat(name); err == nil {
		mode = info.Mode().Perm()
	}
	return beside(name, func(temp string) error {
		err := fill(temp, 0o600, func(w io.Writer) error {
			_, err := w.Write(text)
			return err
		})
		if err == nil {
			err = os.Chmod(temp, mode) // regardless of the umask
		}
		return err
	}, os.Rename)
}

// Make lets the callback create the file, under the given temporary name.
func Make(name string, by func(temp string) error) error {
	if err := Check(name); err != nil {
		return err
	}
	return beside(name, by, put)
}

// beside lets by create a file under a temporary name, and then puts it in its place.
func beside(name string, by func(temp string) error, put func(temp, name string) error) error {
	temp := filepath.Join(filepath.Dir(name), ".brazebooth-"+strings.ToLower(rand.Text()[:12]))
	err := by(temp)
	if err == nil {
		err = put(temp, name)
	}
	if err != nil {
		_ = os.Remove(temp) // it may not exist
		return &failed{err, temp, name}
	}
	return nil
}

// put gives a complete file its name, unless the name was taken meanwhile.
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

// putUnlinked is put for a disk without hard links: an empty file reserves the name.
func putUnlinked(temp, name string) error {
	err := Reserve(name)
	switch {
	case errors.Is(err, fs.ErrExist):
		return Check(name)
	case err != nil:
		return err
	}
	if err := os.Rename(temp, name); err != nil {
		return errors.Join(err, os.Remove(name))
	}
	return nil
}

// failed is an error that names the requested file instead of the temporary one.
type failed struct {
	error
	temp, name string
}

func (f *failed) Error() string { return strings.ReplaceAll(f.error.Error(), f.temp, f.name) }

func (f *failed) Unwrap() error { return f.error }
