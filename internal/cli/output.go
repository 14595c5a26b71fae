package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"syscall"

	"github.com/spf13/cobra"

	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// outlet is standard output that remembers its first error, because the library that prints help and completion scripts
// ignores errors. After an error nothing more is written, so that no piece is missing from the middle.
type outlet struct {
	w      io.Writer
	failed func() // called at the first error; may be nil
	err    error
}

func (o *outlet) Write(p []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.w.Write(p)
	if err == nil && n < len(p) {
		err = io.ErrShortWrite
	}
	if o.err = err; err != nil && o.failed != nil {
		o.failed()
	}
	return n, err
}

// unwritten says why an answer could not be written in full. It is errUnread where the reader has closed the pipe, as
// head does.
func unwritten(err error) error {
	if errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) {
		return errUnread
	}
	if at, ok := errors.AsType[*fs.PathError](err); ok {
		err = at.Err
	}
	return failed("the answer could not be written whole: "+plain.Line(err.Error(), 100),
		"send it to a file on a disk with room, or to a reader that stays until its end", err)
}

// errUnread means that the reader left: only the exit code reports it.
var errUnread = errors.New("nobody reads the answer")

// say writes to the answer. The outlet remembers a failed write and ends the command.
func (d *Deps) say(format string, args ...any) { _, _ = fmt.Fprintf(d.Out, format, args...) }

// tell is say with the decimal mark that was asked for.
func (d *Deps) tell(format string, args ...any) {
	d.say("%s", quantity.Marked(fmt.Sprintf(format, args...), d.comma))
}

// note writes to standard error.
func (d *Deps) note(format string, args ...any) { _, _ = fmt.Fprintf(d.Err, format, args...) }

func withJSON(cmd *cobra.Command) *cobra.Command {
	cmd.Flags().Bool("json", false, "JSON")
	return cmd
}

func asJSON(cmd *cobra.Command) bool { return flagOn(cmd, "json") }

// document writes an answer as JSON: its parts, the version of their schema, and that of the program.
func (d *Deps) document(schema int, parts map[string]any) error {
	parts["schema"], parts["version"] = schema, Version
	return d.encode(parts)
}

// encode writes JSON in the same layout as the card's.
func (d *Deps) encode(v any) error {
	doc, err := report.Encode(v)
	if err == nil {
		_, err = d.Out.Write(doc)
	}
	return err
}
