package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

// files are named by who types a command; over a connection that somebody else's machine keeps, only - is one.
const onlyDash = "type - for standard input or output and let your own machine keep the file: ssh ... > file"

// local refuses a file of the machine where the program runs to somebody who is not at it.
func (d *Deps) local(name string) error {
	if d.Remote && name != "-" {
		return wrong("no file can be named here: "+quote(name), onlyDash)
	}
	return nil
}

// fileName is local, and refuses a server's address where a file is wanted: as a name it would be repeated with its password.
func (d *Deps) fileName(name string) error {
	if err := d.local(name); err != nil {
		return err
	}
	if name != "-" && address.Looks(name) {
		return wrong("a file is wanted, and this reads like a server's address", "name a file; one of such a name as ./NAME")
	}
	return nil
}

// wholeFile refuses what is no file that is read or written as a whole, and every one to somebody at another machine.
func (d *Deps) wholeFile(name string) error {
	if name != "-" {
		return d.local(name)
	}
	if d.Remote {
		return wrong("no file can be named here", "book export - gives everything and book import - takes it: ssh ... book export - > file")
	}
	return wrong("standard input and output will not do here", "name a file, as ./copy.db; book export - writes to standard output")
}

// readFrom opens a file, or standard input. What is no file, as a pipe that nobody writes into, is not waited for.
func (d *Deps) readFrom(name, hint string) (io.Reader, func() error, error) {
	if err := d.fileName(name); err != nil {
		return nil, nil, err
	}
	if name == "-" {
		return d.In, func() error { return nil }, nil
	}
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, nil, wrong(plain.Line(err.Error(), 200), hint)
	case info.IsDir():
		return nil, nil, wrong(quote(name)+" is a folder", hint)
	case !info.Mode().IsRegular():
		return nil, nil, wrong(quote(name)+" is no file but a pipe or a device", "type - and lead it into standard input: ... < "+plain.Line(name, 100))
	}
	if err := d.noBookFile(name); err != nil {
		return nil, nil, err
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, nil, wrong(plain.Line(err.Error(), 200), hint)
	}
	return f, f.Close, nil
}

// noBookFile refuses the file of the book itself, and what lies beside it: whoever opens and closes that otherwise than the
// book does takes away the locks that keep two programs from writing at once.
func (d *Deps) noBookFile(name string) error {
	if !book.IsPart(d.Book, name) {
		return nil
	}
	return wrong(quote(name)+" is the book itself", "brazebooth book export - gives what is in it; another book is taken in by brazebooth book merge")
}

// Whatever flag or word names a file that a command writes, it is a new one (newfile): nothing is overwritten, and a full disk
// or a stop leaves nothing. A batch alone keeps what it has of one, since it can go on with it.

// free refuses names of files that are there, before anything is worked out for them; "" and - are none.
func (d *Deps) free(names ...string) error {
	for _, name := range names {
		if name == "" || name == "-" {
			continue
		}
		if err := d.fileName(name); err != nil {
			return err
		}
		if err := newfile.Check(name); err != nil {
			return unmade(err)
		}
	}
	return nil
}

// write writes into a file that is not there yet, or to standard output.
func (d *Deps) write(name string, mode fs.FileMode, write func(io.Writer) error) error {
	if err := d.fileName(name); err != nil {
		return err
	}
	if name == "-" {
		return write(d.Out)
	}
	return unmade(newfile.Write(name, mode, write))
}

// picture writes a page or a picture that is ready.
func (d *Deps) picture(name string, mode fs.FileMode, b []byte) error {
	return d.write(name, mode, func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	})
}

// unmade says of a file that was not made why, and what to type instead.
func unmade(err error) error {
	var taken *newfile.Taken
	switch {
	case err == nil, mistake.Of(err) != nil:
		return err
	case errors.As(err, &taken):
		return takenName(taken)
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
		return wrong(plain.Line(err.Error(), 200), "name a file in a folder that is there and that you may write to")
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return failed(plain.Line(err.Error(), 200), "nothing was left there: make room on that disk, or name a file on another", err)
	}
	return err
}

func takenName(t *newfile.Taken) error {
	name := plain.Line(t.Name, 200)
	if t.Folder {
		return wrong(name+" is a folder", "name a file in it")
	}
	hint := "name another file; nothing is overwritten"
	if t.Free != "" {
		hint = "name another file, as " + plain.Line(t.Free, 200) + "; nothing is overwritten"
	}
	return wrong(name+" is there already", hint)
}

// rows opens a new file that grows row by row and is kept as far as it came, or standard output. One without a row is none.
func (d *Deps) rows(name string) (io.Writer, func() error, error) {
	if err := d.free(name); err != nil {
		return nil, nil, err
	}
	if name == "-" {
		return d.Out, func() error { return nil }, nil
	}
	f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		if taken := newfile.Check(name); errors.Is(err, fs.ErrExist) && taken != nil {
			err = taken
		}
		return nil, nil, unmade(err)
	}
	return f, func() error { return endRows(f) }, nil
}

// oldRows opens what an earlier batch wrote, to go on with it.
func (d *Deps) oldRows(name string) (*os.File, error) {
	const hint = "name the file of the batch that was stopped"
	if err := d.fileName(name); err != nil {
		return nil, err
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return nil, wrong(quote(name)+" is no file that a batch wrote", hint)
	}
	if err := d.noBookFile(name); err != nil {
		return nil, err
	}
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, wrong(plain.Line(err.Error(), 200), hint)
	}
	return f, nil
}

func endRows(f *os.File) error {
	info, err := f.Stat()
	if err = errors.Join(err, f.Sync(), f.Close()); err == nil && info.Size() == 0 {
		return os.Remove(f.Name())
	}
	return err
}
