package cli

import (
	"errors"
	"io"
	"os"

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

// readFrom opens a file, or standard input.
func (d *Deps) readFrom(name, hint string) (io.Reader, func() error, error) {
	if err := d.local(name); err != nil {
		return nil, nil, err
	}
	if name == "-" {
		return d.In, func() error { return nil }, nil
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, nil, wrong(plain.Line(err.Error(), 200), hint)
	}
	return f, f.Close, nil
}

// writeTo opens a file that is not there yet, or standard output.
func (d *Deps) writeTo(name string) (io.Writer, func() error, error) {
	return d.create(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
}

// picture writes a file anew, or standard output.
func (d *Deps) picture(name string, b []byte) error {
	out, done, err := d.create(name, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = out.Write(b)
	return errors.Join(err, done())
}

func (d *Deps) create(name string, how int, mode os.FileMode) (io.Writer, func() error, error) {
	if err := d.local(name); err != nil {
		return nil, nil, err
	}
	if name == "-" {
		return d.Out, func() error { return nil }, nil
	}
	f, err := os.OpenFile(name, how, mode)
	if errors.Is(err, os.ErrExist) {
		return nil, nil, wrong(plain.Line(name, 200)+" is there already", "name another file; nothing is overwritten")
	}
	if err != nil {
		return nil, nil, err
	}
	return f, func() error { return errors.Join(f.Sync(), f.Close()) }, nil
}
