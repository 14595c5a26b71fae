package cli

import (
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/plain"
)

type build struct {
	Schema   int               `json:"schema"`
	Version  string            `json:"version"`
	Commit   string            `json:"commit,omitempty"`
	Time     string            `json:"time,omitempty"`     // of the commit
	Modified bool              `json:"modified,omitempty"` // files differed from the commit
	Go       string            `json:"go"`
	OS       string            `json:"os"`
	Arch     string            `json:"arch"`
	Settings map[string]string `json:"settings"` // of the build: CGO_ENABLED, -trimpath ...
}

// commit is set at link time for a release, which is built without the repository's information; "" otherwise.
var commit string

func thisBuild() build {
	b := build{Schema: 1, Version: Version, Go: runtime.Version(), OS: runtime.GOOS, Arch: runtime.GOARCH,
		Commit: commit, Settings: map[string]string{}}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Commit = plain.Line(s.Value, 64)
		case "vcs.time":
			b.Time = plain.Line(s.Value, 40)
		case "vcs.modified":
			b.Modified = s.Value == "true"
		case "vcs", "GOOS", "GOARCH":
		default:
			b.Settings[plain.Line(s.Key, 40)] = plain.Line(s.Value, 200)
		}
	}
	return b
}

func (b *build) line() string {
	parts := []string{b.Version}
	if b.Commit != "" {
		commit := "commit " + b.Commit[:min(12, len(b.Commit))]
		if b.Modified {
			commit += " and changes"
		}
		parts = append(parts, commit)
	}
	return strings.Join(append(parts, b.Go, b.OS+"/"+b.Arch), ", ")
}

func (d *Deps) versionCommand() *cobra.Command {
	cmd := withJSON(&cobra.Command{
		Use:   "version",
		Short: "The program's version, its commit, and how it was built",
		Args:  noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			b := thisBuild()
			if d.Remote { // the settings may contain paths of the builder's machine
				b.Settings = map[string]string{}
			}
			if asJSON(cmd) {
				return d.encode(b)
			}
			d.say("brazebooth %s\n", b.line())
			return nil
		},
	})
	cmd.Flags().Lookup("json").Usage += ", with the settings of the build"
	return cmd
}
