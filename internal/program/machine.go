package program

import (
	"os"
	"os/user"
	"path/filepath"
	"runtime"

	"github.com/adrg/xdg"
)

// inData is the path of a file in the user's data folder: book.db is their own book, offline.db takes saves while a
// book's server cannot be reached.
func inData(name string) string { return inFolder("XDG_DATA_HOME", xdg.DataHome, name) }

func inState(name string) string { return inFolder("XDG_STATE_HOME", xdg.StateHome, name) }

func configFile() string { return inFolder("XDG_CONFIG_HOME", xdg.ConfigHome, "config.toml") }

// inFolder is the path of a file of this program in one of the user's folders; "" for a user without a home, for whom
// the library would use the root folder.
func inFolder(variable, folder, name string) string {
	if folder == "" || !filepath.IsAbs(os.Getenv(variable)) && homeless() {
		return ""
	}
	return filepath.Join(folder, "brazebooth", name)
}

// homeless reports whether the user has no home folder: HOME is not set, is the root folder, or does not exist. Windows
// does not use HOME.
func homeless() bool {
	if runtime.GOOS == "windows" {
		return false
	}
	home := os.Getenv("HOME")
	info, err := os.Stat(home)
	return !filepath.IsAbs(home) || filepath.Clean(home) == "/" || err != nil || !info.IsDir()
}

func shortName() string {
	u, err := user.Current()
	if err != nil {
		return ""
	}
	return u.Username
}

func hostName() string {
	name, _ := os.Hostname() // "" if there is none
	return name
}
