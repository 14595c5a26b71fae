package program

import (
	"os"
	"os/user"
	"path/filepath"
	"runtime"

	"github.com/adrg/xdg"
)

// inData names a file in the user's folder for a program's data: book.db is their own book, offline.db takes what a
// book's server cannot while it is away.
func inData(name string) string { return inFolder("XDG_DATA_HOME", xdg.DataHome, name) }

// inState names a file in the user's folder for what a program remembers.
func inState(name string) string { return inFolder("XDG_STATE_HOME", xdg.StateHome, name) }

// configFile holds the user's settings.
func configFile() string { return inFolder("XDG_CONFIG_HOME", xdg.ConfigHome, "config.toml") }

// inFolder names a file of this program in one of the user's folders, "" where there is no such folder: the library
// takes the root folder for the home of who has none.
func inFolder(variable, folder, name string) string {
	if folder == "" || !filepath.IsAbs(os.Getenv(variable)) && homeless() {
		return ""
	}
	return filepath.Join(folder, "brazebooth", name)
}

// homeless reports a user without a folder of their own: HOME is not set, is the root folder, or is not there. Windows
// has other ways to tell.
func homeless() bool {
	if runtime.GOOS == "windows" {
		return false
	}
	home := os.Getenv("HOME")
	info, err := os.Stat(home)
	return !filepath.IsAbs(home) || filepath.Clean(home) == "/" || err != nil || !info.IsDir()
}

// shortName is who works here, by the name of the login.
func shortName() string {
	u, err := user.Current()
	if err != nil {
		return ""
	}
	return u.Username
}

func hostName() string {
	name, _ := os.Hostname() // "" where there is none
	return name
}
