//go:build ignore

// Archive packs a folder of a release: go run .ci/archive.go FOLDER UNIX FILE ... makes each FILE, a zip or a tar.gz by
// its ending. The same folder gives the same bytes on every machine: names in order, one time, nobody's user. Only
// what is called like a program may be run.
package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

func main() {
	unix, err := strconv.ParseInt(os.Args[2], 10, 64)
	for _, out := range os.Args[3:] {
		err = errors.Join(err, pack(os.Args[1], out, time.Unix(unix, 0).UTC()))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "archive:", err)
		os.Exit(1)
	}
}

// pack writes a folder, under its own name, into one archive.
func pack(folder, out string, at time.Time) (err error) {
	f, err := os.Create(out)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	files := os.DirFS(folder)
	each := func(add func(name string, mode fs.FileMode, size int64) (io.Writer, error)) error {
		return fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			b, err := fs.ReadFile(files, name)
			if err != nil {
				return err
			}
			mode := fs.FileMode(0o644)
			if strings.TrimSuffix(name, ".exe") == "brazebooth" {
				mode = 0o755
			}
			w, err := add(path.Join(filepath.Base(folder), name), mode, int64(len(b)))
			if err == nil {
				_, err = w.Write(b)
			}
			return err
		})
	}
	if strings.HasSuffix(out, ".zip") {
		z := zip.NewWriter(f)
		return errors.Join(each(func(name string, mode fs.FileMode, _ int64) (io.Writer, error) {
			h := &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: at}
			h.SetMode(mode)
			return z.CreateHeader(h)
		}), z.Close())
	}
	g, _ := gzip.NewWriterLevel(f, gzip.BestCompression)
	t := tar.NewWriter(g)
	return errors.Join(each(func(name string, mode fs.FileMode, size int64) (io.Writer, error) {
		return t, t.WriteHeader(&tar.Header{Name: name, Mode: int64(mode), Size: size, ModTime: at,
			Format: tar.FormatPAX})
	}), t.Close(), g.Close())
}
