//go:build ignore

// Archive packs a release: go run .ci/archive.go -out FILE -time UNIX PROGRAM [FILE ...]. The kind is FILE's ending, zip or
// tar.gz. The same files give the same bytes: names in order, one time, nobody's user.
package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

func main() {
	out := flag.String("out", "", "the archive to write")
	unix := flag.Int64("time", 0, "time of everything in it, seconds since 1970")
	flag.Parse()
	if err := pack(*out, time.Unix(*unix, 0).UTC(), flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "archive:", err)
		os.Exit(1)
	}
}

// pack writes the files below one folder, which is called like the archive.
func pack(out string, at time.Time, names []string) (err error) {
	f, err := os.Create(out)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	base, add, done := filepath.Base(out), func(string, fs.FileMode, []byte) error { return nil }, func() error { return nil }
	switch {
	case strings.HasSuffix(base, ".zip"):
		base = strings.TrimSuffix(base, ".zip")
		z := zip.NewWriter(f)
		add, done = zipped(z, at), z.Close
	case strings.HasSuffix(base, ".tar.gz"):
		base = strings.TrimSuffix(base, ".tar.gz")
		g := gzip.NewWriter(f)
		t := tar.NewWriter(g)
		add, done = tarred(t, at), func() error { return errors.Join(t.Close(), g.Close()) }
	default:
		return fmt.Errorf("%q is neither a zip nor a tar.gz", out)
	}
	slices.SortFunc(names, func(a, b string) int { return strings.Compare(filepath.Base(a), filepath.Base(b)) })
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		mode := fs.FileMode(0o644)
		if first := filepath.Base(name); first == "brazebooth" || first == "brazebooth.exe" {
			mode = 0o755
		}
		if err := add(path.Join(base, inside(name)), mode, b); err != nil {
			return err
		}
	}
	return done()
}

// inside is where a file lies in the archive: the manual in a folder of its own.
func inside(name string) string {
	if strings.HasSuffix(name, ".1") {
		return path.Join("man", filepath.Base(name))
	}
	return filepath.Base(name)
}

func zipped(z *zip.Writer, at time.Time) func(string, fs.FileMode, []byte) error {
	return func(name string, mode fs.FileMode, b []byte) error {
		h := &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: at}
		h.SetMode(mode)
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = w.Write(b)
		}
		return err
	}
}

func tarred(t *tar.Writer, at time.Time) func(string, fs.FileMode, []byte) error {
	return func(name string, mode fs.FileMode, b []byte) error {
		err := t.WriteHeader(&tar.Header{Name: name, Mode: int64(mode), Size: int64(len(b)), ModTime: at, Format: tar.FormatPAX})
		if err == nil {
			_, err = t.Write(b)
		}
		return err
	}
}
