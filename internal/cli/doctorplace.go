package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/book"
)

// A book's server that does not answer within this time counts as away.
const lookWithin = 5 * time.Second

// lookTerminal checks the terminal, and asks it if it can be asked; nil if it was not asked.
func (d *Deps) lookTerminal(ctx context.Context, f *findings) (asked *Answers) {
	f.area = "terminal"
	if d.Terminal == nil {
		f.add("terminal", note, "nothing is known of it here", "")
		return nil
	}
	t := d.Terminal()
	if !t.In || !t.Out {
		f.add("terminal", note, "standard input or output is not a terminal: the commands work, the screens need one",
			"run brazebooth in a terminal window for the screens")
	}
	lookSize(f, &t)
	lookName(f, &t)
	colours := t.Colours
	if t.NoColour {
		colours = "none: NO_COLOR is set; every mark also has its sign"
	}
	f.ok("colours", colours)
	lookLetters(f, &t)
	if d.Asking != nil && t.In && t.Out && t.Places {
		a := d.Asking.Ask(ctx)
		asked = &a
		t.Background = cmp.Or(a.Background, t.Background)
		d.lookSigns(f, a.Columns)
	}
	if t.Background == "" {
		f.add("background", note, "not known before the screens ask for it",
			"if colours are hard to see there: brazebooth config set theme light, or dark")
	} else {
		f.ok("background", t.Background)
	}
	return asked
}

func lookSize(f *findings, t *Terminal) {
	size := strconv.Itoa(t.Width) + " x " + strconv.Itoa(t.Height)
	switch {
	case t.Width == 0:
		f.add("size", note, "not known", "")
	case t.Width < t.LeastWidth || t.Height < t.LeastHeight:
		f.add("size", mend, size+" is too small for the screens",
			fmt.Sprintf("make the window at least %d x %d, or the letters smaller", t.LeastWidth, t.LeastHeight))
	case t.Width < 80 || t.Height < 24:
		f.ok("size", size+"; from 80 x 24 on more is shown side by side")
	default:
		f.ok("size", size)
	}
}

func lookName(f *findings, t *Terminal) {
	switch {
	case t.In && t.Out && !t.Places && t.Name != "" && t.Name != "dumb",
		!t.Places && t.Out && runtime.GOOS == "windows":
		f.add("TERM", mend, "this console shows escape sequences as letters: instead of the screens come questions, "+
			"line by line", "open brazebooth in a newer terminal window, such as that of Windows 10 and later")
	case t.Name == "" && runtime.GOOS == "windows":
		f.ok("TERM", "not set, as is usual here")
	case (t.Name == "" || t.Name == "dumb") && t.Out:
		f.add("TERM", mend, "is "+strconv.Quote(t.Name)+": this terminal says that it cannot place text, and the "+
			"screens do not open", "export TERM=xterm-256color")
	case t.Name == "":
		f.add("TERM", note, "not set", "")
	default:
		f.ok("TERM", t.Name)
	}
}

func lookLetters(f *findings, t *Terminal) {
	switch {
	case !t.UTF8:
		f.add("letters", mend, "the locale "+strconv.Quote(t.Locale)+" is not UTF-8: signs like ▸ ° ² come out wrong",
			"export LC_ALL=C.UTF-8, or another locale in UTF-8")
	case t.Name == "linux":
		f.add("letters", note, "UTF-8, but the console's own font may lack signs like ▸ ▲ ²",
			"use a terminal window, or a console font with them: setfont Lat15-Terminus16")
	default:
		f.ok("letters", "UTF-8")
	}
}

func (d *Deps) lookBook(cmd *cobra.Command, f *findings) {
	f.area = "book"
	where, err := d.place(cmd)
	if err != nil {
		f.wrong("place", err)
		return
	}
	ctx, stop := context.WithTimeout(cmd.Context(), lookWithin)
	defer stop()
	a, err := book.Look(ctx, where)
	f.ok("place", a.Place+", "+a.Engine)
	if a.Network != "" {
		f.add("disk", mend, "it lies on a network share ("+a.Network+"), whose locks cannot be trusted",
			"keep it on this machine's own disk, or share one by PostgreSQL: brazebooth config set book "+
				"postgres://user@host/database")
	}
	switch {
	case err != nil:
		f.add("reading", mend, err.Error(), howToMend(where))
		return
	case a.There:
		f.ok("reading", "opens; brazebooth book check reads it whole")
		lookVersion(f, a.Version)
	default:
		f.ok("reading", "nothing kept yet: the first save makes it")
	}
	lookWriting(f, &a)
	if d.Beside == "" {
		return
	}
	if _, err := os.Stat(d.Beside); err == nil {
		f.add("beside", note, "what was saved while a server was away is in "+d.Beside,
			"when it is back: brazebooth book merge "+d.Beside)
	}
}

func lookWriting(f *findings, a *book.About) {
	if a.Names > 1 {
		f.add("names", mend, fmt.Sprintf("the file has %d names (hard links): two programs that open it by different "+
			"ones damage it", a.Names), "open it by one name everywhere, and make copies with brazebooth book "+
			"backup FILE")
	}
	if a.Writable {
		f.ok("writing", "can be written")
	} else {
		f.add("writing", mend, "cannot be written: nothing can be kept", "give this user the right to write the file "+
			"and its folder, or name another: brazebooth config set book FILE")
	}
}

func howToMend(where string) string {
	if address.Server(where) {
		return "make sure that the server runs and lets this user in; until then saves go into a file of this machine"
	}
	return "keep a copy of the file as it is; then name another book: brazebooth config set book FILE"
}

func lookVersion(f *findings, v int) {
	switch {
	case v > book.Version:
		f.add("tables", mend, fmt.Sprintf("version %d, this program knows %d: it can only be read", v, book.Version),
			"use the newer program")
	case v < book.Version:
		f.add("tables", note, fmt.Sprintf("version %d of %d: the next save makes a copy beside it and updates it", v,
			book.Version), "")
	default:
		f.ok("tables", fmt.Sprintf("version %d", v))
	}
}

// lookKeys checks the server's own key: anybody who can read it can pretend to be the server.
func (d *Deps) lookKeys(f *findings) {
	f.area = "keys"
	if d.HostKey == "" {
		return
	}
	if m, there := f.stat("host key", d.HostKey, "none yet: serve makes one"); there {
		if !m.IsRegular() || runtime.GOOS != "windows" && m.Perm()&0o077 != 0 {
			f.add("host key", mend, fmt.Sprintf("others can read %s (mode %o)", d.HostKey, m.Perm()),
				"chmod 600 "+d.HostKey)
		} else {
			f.ok("host key", d.HostKey)
		}
	}
}

func (d *Deps) lookFolders(f *findings) {
	f.area = "folders"
	for _, x := range [...]struct{ name, file string }{{"settings", d.Config}, {"data", d.Beside}} {
		dir := filepath.Dir(x.file)
		if x.file == "" {
			f.add(x.name, mend, "no folder was found",
				"set HOME, or XDG_CONFIG_HOME and XDG_DATA_HOME, to folders that are there")
		} else if m, there := f.stat(x.name, dir, dir+", made when it is needed"); there && !m.IsDir() {
			f.add(x.name, mend, dir+" is not a folder", "move the file away")
		} else if there {
			f.ok(x.name, dir)
		}
	}
}

// stat looks at a file or folder; missing is the text of the finding when it is not there.
func (f *findings) stat(name, path, missing string) (m fs.FileMode, there bool) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f.ok(name, missing)
	case err != nil:
		f.add(name, mend, err.Error(), "make the folder readable")
	default:
		return info.Mode(), true
	}
	return 0, false
}
