package program

import (
	"os"
	"os/user"
	"path/filepath"

	"github.com/adrg/xdg"
)

// inData names a file in the user's folder for a program's data: book.db is their own book, offline.db takes what a book's
// server cannot while it is away.
func inData(name string) string { return inFolder(xdg.DataHome, name) }

// configFile holds the user's settings.
func configFile() string { return inFolder(xdg.ConfigHome, "config.toml") }

// inFolder names a file of this program in one of the user's folders, "" where there is no such folder.
func inFolder(home, name string) string {
	if home == "" {
		return ""
	}
	return filepath.Join(home, "brazebooth", name)
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
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}
