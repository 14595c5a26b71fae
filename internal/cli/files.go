package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

// Users name files; a user at another machine can only name -, standard input or output.
//
// A file that a command writes is always a new one (newfile): nothing is overwritten, and a full disk or a stop leaves
// nothing. Only a batch keeps an unfinished file, because --resume can continue it.

// fileName refuses a file to a user at another machine, and a server's address where a file is wanted, since messages
// would repeat it with its password.
func (d *Deps) fileName(name string) error {
	switch {
	case name == "-":
	case d.Remote:
		return wrong("no file can be named here: "+quote(name),
			"type - for standard input or output and let your own machine keep the file: ssh ... > file")
	case address.Looks(name):
		return wrong("a file is wanted, and this reads like a server's address", "name a file; such a name as ./NAME")
	}
	return nil
}

// wholeFile refuses standard input and output for a file that is read or written as a whole, and every file to a user
// at another machine.
func (d *Deps) wholeFile(name string) error {
	switch {
	case name == "-" && d.Remote:
		return wrong("no file can be named here",
			"book export - gives everything and book import - takes it: ssh ... book export - > file")
	case name == "-":
		return wrong("standard input and output cannot be used here",
			"name a file, such as ./copy.db; book export - writes to standard output")
	case d.Remote:
		return d.fileName(name)
	}
	return nil
}

func (d *Deps) readFrom(name, hint string) (io.Reader, func() error, error) {
	if name == "-" {
		return d.In, func() error { return nil }, nil
	}
	f, err := d.openFile(name, os.O_RDONLY, hint)
	if err != nil {
		return nil, nil, err
	}
	return f, f.Close, nil
}

// openFile opens a file; how may allow to make it. It refuses pipes, which could block for ever, and the book's own
// files: opening and closing them in any other way than the book does releases the locks that keep two programs from
// writing at once.
func (d *Deps) openFile(name string, how int, hint string) (*os.File, error) {
	if err := d.fileName(name); err != nil {
		return nil, err
	}
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		return nil, wrong(quote(name)+" is a folder", hint)
	case err == nil && !info.Mode().IsRegular():
		return nil, wrong(quote(name)+" is not a file: it is a pipe or a device",
			"name a file; what a pipe holds is read from standard input: ... - < "+plain.Line(name, 100))
	case book.IsPart(d.Book, name):
		return nil, wrong(quote(name)+" is the book itself",
			"brazebooth book export - gives what is in it; brazebooth book merge takes in another book")
	}
	f, err := os.OpenFile(name, how, 0o600)
	if err != nil {
		return nil, wrong(plain.Line(err.Error(), 200), hint)
	}
	return f, nil
}

// free refuses the name of an existing file before anything is computed for it; "" and - are accepted.
func (d *Deps) free(name string) error {
	if name == "" || name == "-" {
		return nil
	}
	if err := d.fileName(name); err != nil {
		return err
	}
	return unmade(newfile.Check(name))
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

func (d *Deps) save(name string, mode fs.FileMode, b []byte) error {
	return d.write(name, mode, func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	})
}

// picture is an answer's picture, which can be drawn as SVG and PNG.
type picture interface {
	SVG() ([]byte, error)
	PNG(dpi int) ([]byte, error)
}

func bindPictures(cmd *cobra.Command, of string) {
	cmd.Flags().String("png", "", "write the "+of+" as a PNG picture into a new file; - is standard output")
	cmd.Flags().String("svg", "", "write the "+of+" as an SVG picture into a new file; - is standard output")
}

// pictures writes an answer's table and picture into the files that were asked for. alone reports that one went to
// standard output, where the answer itself must then not be printed.
func (d *Deps) pictures(cmd *cobra.Command, of picture, table func() ([]byte, error)) (alone bool, err error) {
	for _, p := range [...]struct {
		flag string
		make func() ([]byte, error)
	}{{"csv", table}, {"svg", of.SVG}, {"png", func() ([]byte, error) { return of.PNG(dotsPerInch) }}} {
		name := flagText(cmd, p.flag)
		if name == "" {
			continue
		}
		b, err := p.make()
		if err == nil {
			err = d.save(name, 0o644, b)
		}
		if err != nil {
			return false, err
		}
		alone = alone || name == "-"
	}
	return alone, nil
}

// unmade turns an error of making a file into one that says what to type instead.
func unmade(err error) error {
	var taken *newfile.Taken
	var path *fs.PathError
	switch {
	case err == nil, mistake.Of(err) != nil:
		return err
	case errors.As(err, &taken):
		return takenName(taken)
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrPermission):
		return wrong(plain.Line(err.Error(), 200), "name a file in a folder that is there and that you may write to")
	case errors.As(err, &path):
		return failed(plain.Line(err.Error(), 200),
			"nothing was left there: make room on that disk, or name a file on another", err)
	}
	return err
}

func takenName(t *newfile.Taken) error {
	name := plain.Line(t.Name, 200)
	if t.Folder {
		return wrong(name+" is a folder", "name a file in it")
	}
	hint := "name another file"
	if t.Free != "" {
		hint += ", such as " + plain.Line(t.Free, 200)
	}
	return wrong(name+" is there already", hint+"; nothing is overwritten")
}

// rows opens standard output, or a new file that is written row by row and kept even if the batch stops. A file without
// a row is removed.
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
	return f, func() error {
		info, err := f.Stat()
		if err = errors.Join(err, f.Sync(), f.Close()); err == nil && info.Size() == 0 {
			return os.Remove(name)
		}
		return err
	}, nil
}
