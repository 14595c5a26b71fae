package program

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/adrg/xdg"
)

// A user without a home folder gets none of the machine's: no book, no settings and no mark are in the root folder.
func TestNobodyLivesInTheRootFolder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("HOME means nothing there")
	}
	t.Cleanup(xdg.Reload) // as it was: runs after Setenv's own cleanup
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	none := "\x00" // not set at all
	for _, c := range []struct {
		home, folder string // HOME, and every XDG_..._HOME
		want         string // beginning of the paths; "" for no path
	}{
		{dir, none, dir}, {dir, "", dir}, {dir, dir + "/own", dir + "/own"}, {dir + "/", none, dir},
		{none, none, ""}, {"", none, ""}, {"/", none, ""}, {"//", "", ""}, {"/.", "", ""}, {"relative", none, ""},
		{".", none, ""}, {dir + "/gone", none, ""}, {file, none, ""},
		{none, "relative", ""}, {"/", "~/data", ""}, {none, "$HOME/data", ""}, {none, "~", ""},
		{none, dir + "/own", dir + "/own"}, {"/", dir + "/own", dir + "/own"},
	} {
		for name, value := range map[string]string{"HOME": c.home, "XDG_DATA_HOME": c.folder,
			"XDG_CONFIG_HOME": c.folder, "XDG_STATE_HOME": c.folder} {
			t.Setenv(name, strings.Trim(value, none)) // restored at the end
			if value == none {
				_ = os.Unsetenv(name)
			}
		}
		xdg.Reload()
		for _, path := range []string{inData("book.db"), inData("offline.db"), inData(""), configFile(),
			inState("walked")} {
			if c.want == "" && path != "" || c.want != "" && !strings.HasPrefix(path, c.want+"/") {
				t.Errorf("HOME %q, XDG %q: %q", c.home, c.folder, path)
			}
		}
		if c.want == "" && firstWalk("") {
			t.Errorf("HOME %q, XDG %q: the walk comes", c.home, c.folder)
		}
	}
}
